import { type ReactNode, useEffect, useId, useRef, useState } from "react";

/**
 * A button that opens a card below or above itself. Escape and a press outside close it; focus goes back to the button.
 * `children` gets a way to close.
 */
export function Popover({
  label,
  title = label,
  button,
  className,
  place,
  onOpen,
  isWanted = false,
  children,
}: {
  readonly label: string;
  /** What the pointer is told; the label where absent. */
  readonly title?: string;
  readonly button: ReactNode;
  readonly className: string;
  readonly place: "below" | "above";
  /** Told when the card opens and when it closes. */
  readonly onOpen?: (isOpen: boolean) => void;
  /** Opens the card from elsewhere, as long as it is not open. */
  readonly isWanted?: boolean;
  readonly children: (close: () => void) => ReactNode;
}) {
  const [open, setOpen] = useState(false);
  const holder = useRef<HTMLDivElement>(null);
  const id = useId();
  const close = (): void => {
    setOpen(false);
    holder.current?.querySelector("button")?.focus();
  };
  useEffect(() => {
    if (isWanted) setOpen(true);
  }, [isWanted]);
  useEffect(() => {
    if (!open || !onOpen) return;
    onOpen(true);
    return () => onOpen(false);
  }, [open, onOpen]);
  useEffect(() => {
    if (!open) return;
    const away = (event: Event): void => {
      if (!holder.current?.contains(event.target as Node)) setOpen(false);
    };
    const leave = (event: KeyboardEvent): void => {
      if (event.key !== "Escape" || !holder.current?.contains(event.target as Node)) return;
      event.stopPropagation();
      close();
    };
    document.addEventListener("pointerdown", away);
    document.addEventListener("focusin", away);
    document.addEventListener("keydown", leave, true);
    return () => {
      document.removeEventListener("keydown", leave, true);
      document.removeEventListener("pointerdown", away);
      document.removeEventListener("focusin", away);
    };
  }, [open]);
  return (
    <div className="popover" ref={holder}>
      <button
        type="button"
        className={className}
        aria-label={label}
        title={title}
        aria-expanded={open}
        aria-controls={open ? id : undefined}
        onClick={() => setOpen(!open)}
      >
        {button}
      </button>
      {open && (
        <div className={`card popover-card is-${place}`} id={id}>
          {children(close)}
        </div>
      )}
    </div>
  );
}
