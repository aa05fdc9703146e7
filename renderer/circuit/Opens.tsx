import { type ReactNode, useState } from "react";
import { Icon } from "../panels/Icon.tsx";

/** A button whose place a form takes while it is open, and which has the keys again once that is left. */
export function Opens({ words, form }: { readonly words: string; readonly form: (close: () => void) => ReactNode }) {
  const [isOpen, setIsOpen] = useState<boolean | null>(null);
  if (isOpen) return form(() => setIsOpen(false));
  return (
    <button
      type="button"
      // biome-ignore lint/a11y/noAutofocus: it comes back in place of the form that was just left
      autoFocus={isOpen === false}
      className="button is-quiet is-low"
      onClick={() => setIsOpen(true)}
    >
      <Icon name="add" size={16} />
      {words}
    </button>
  );
}
