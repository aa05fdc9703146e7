import { useEffect, useRef, useState } from "react";
import { Icon } from "../panels/Icon.tsx";
import { useAppStore } from "../state/AppContext.tsx";
import { keyGroups } from "./keySearch.ts";
import { hasCommandKey } from "./press.ts";

/** Every key and command, to be searched by a word or by a key. Escape closes; focus goes back to where it was. */
export function KeySheet() {
  const { dispatch } = useAppStore();
  const dialog = useRef<HTMLDialogElement>(null);
  const field = useRef<HTMLInputElement>(null);
  const [typed, setTyped] = useState("");
  const groups = keyGroups(typed, hasCommandKey());
  const close = (): void => dispatch({ do: "close-keys" });
  useEffect(() => {
    const before = document.activeElement;
    dialog.current?.showModal();
    field.current?.focus();
    return () => {
      if (before instanceof HTMLElement) before.focus({ preventScroll: true });
    };
  }, []);
  return (
    <dialog
      className="card key-sheet"
      ref={dialog}
      aria-label="Keys and commands"
      // As the print dialog: a key right after Escape is not the dialog's.
      onCancel={(event) => {
        event.preventDefault();
        close();
      }}
      onClose={close}
    >
      <header className="print-head">
        <h2>Keys and commands</h2>
        <button type="button" className="icon-button" aria-label="Close" title="Close (Esc)" onClick={close}>
          <Icon name="close" />
        </button>
      </header>
      <label className="field key-search">
        <Icon name="find" size={16} />
        <input
          ref={field}
          type="search"
          value={typed}
          placeholder="turn, fuse, Ctrl D"
          aria-label="A word or a key"
          autoComplete="off"
          spellCheck={false}
          onChange={(event) => setTyped(event.target.value)}
          onKeyDown={(event) => {
            // A search field would keep the first Escape to itself.
            if (event.key !== "Escape") return;
            event.preventDefault();
            close();
          }}
        />
      </label>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys */}
      <section className="key-groups" tabIndex={0} aria-label="Keys">
        {groups.length === 0 && <p className="find-none">No key and no command is called that.</p>}
        {groups.map(({ title, lines }) => (
          <section key={title}>
            <h3 className="place-name">{title}</h3>
            <dl className="key-lines">
              {lines.map(({ id, words, keys }) => (
                <div key={id} className="key-line">
                  <dt>{words}</dt>
                  <dd>
                    {keys.map((key) => (
                      <kbd key={key} className="key-cap">
                        {key}
                      </kbd>
                    ))}
                  </dd>
                </div>
              ))}
            </dl>
          </section>
        ))}
      </section>
    </dialog>
  );
}
