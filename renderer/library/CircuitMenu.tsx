import type { CircuitRow } from "../../schemas/calls.ts";
import { Icon, type IconName } from "../panels/Icon.tsx";
import { Popover } from "../panels/Popover.tsx";
import { useAppStore } from "../state/AppContext.tsx";
import type { Action } from "../state/action.ts";
import { shownTitle } from "../words/library.ts";

/** What can be done with a circuit of the library beside opening it. */
export function CircuitMenu({ row }: { readonly row: CircuitRow }) {
  const { dispatch } = useAppStore();
  const { id } = row;
  const items: readonly { readonly icon: IconName; readonly words: string; readonly action: Action }[] = [
    { icon: "rename", words: "Rename", action: { do: "begin-rename", id } },
    { icon: "copy", words: "Duplicate", action: { do: "duplicate", id } },
    { icon: "bin", words: "Delete", action: { do: "remove", id } },
  ];
  return (
    <Popover
      label={`More for ${shownTitle(row.title)}`}
      className="icon-button"
      place="below"
      button={<Icon name="more" />}
    >
      {(close) => (
        <ul className="menu is-right">
          {items.map(({ icon, words, action }) => (
            <li key={words}>
              <button
                type="button"
                className="menu-item"
                onClick={() => {
                  close();
                  dispatch(action);
                }}
              >
                <Icon name={icon} size={16} />
                {words}
              </button>
            </li>
          ))}
        </ul>
      )}
    </Popover>
  );
}
