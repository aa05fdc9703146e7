import { useRef, useState } from "react";
import { NO_OWN_KEYS, type OwnKeys } from "../../core/edit/keys/ownKeys.ts";
import type { ChangeableId } from "../../core/edit/keys/rows.ts";
import { Icon } from "../panels/Icon.tsx";
import { useModal } from "../panels/useModal.ts";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { KeyRow } from "./KeyRow.tsx";
import { keyGroups } from "./keySearch.ts";
import { hasCommandKey } from "./useKeyOf.ts";

/**
 * Every key and command, to be searched by a word or by a key, and to be given another key. Escape closes; focus goes back to
 * where it was.
 */
export function KeySheet() {
  const { dispatch } = useAppStore();
  const dialog = useRef<HTMLDialogElement>(null);
  const field = useRef<HTMLInputElement>(null);
  const [typed, setTyped] = useState("");
  const own = useApp(({ settings }) => settings.keys);
  const [changed, setChanged] = useState<ChangeableId | null>(null);
  /** The person's keys, once all the given ones have been brought back. */
  const [before, setBefore] = useState<OwnKeys | null>(null);
  const groups = keyGroups(typed, hasCommandKey(), own, changed);
  const take = (keys: OwnKeys): void => dispatch({ do: "set", settings: { keys } });
  const close = (): void => dispatch({ do: "close-keys" });
  useModal(dialog, field);
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
          onChange={(event) => {
            setTyped(event.target.value);
            setChanged(null);
          }}
          onKeyDown={(event) => {
            // A search field would keep the first Escape to itself.
            if (event.key !== "Escape") return;
            event.preventDefault();
            close();
          }}
        />
      </label>
      <div className="key-all small">
        <p>Change gives a command another key, which is kept for the next start.</p>
        {(before !== null || Object.keys(own).length > 0) && (
          <button
            type="button"
            className="button is-low"
            onClick={() => {
              setBefore(before === null ? own : null);
              take(before ?? NO_OWN_KEYS);
            }}
          >
            {before === null ? "All given keys" : "My own keys again"}
          </button>
        )}
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys */}
      <section className="key-groups" tabIndex={0} aria-label="Keys">
        {groups.length === 0 && <p className="find-none">No key and no command is called that.</p>}
        {groups.map(({ title, lines }) => (
          <section key={title}>
            <h3 className="place-name">{title}</h3>
            <dl className="key-lines">
              {lines.map((line) => (
                <KeyRow
                  key={line.id}
                  line={line}
                  onTake={(keys, id) => {
                    setChanged(id);
                    setBefore(null);
                    take(keys);
                  }}
                />
              ))}
            </dl>
          </section>
        ))}
      </section>
    </dialog>
  );
}
