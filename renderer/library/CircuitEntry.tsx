import type { CircuitRow } from "../../schemas/calls.ts";
import { Icon } from "../panels/Icon.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { circuitKey } from "../state/shelf.ts";
import { circuitFacts, sinceWords } from "../words/library.ts";
import { CircuitMenu } from "./CircuitMenu.tsx";
import { CircuitPicture } from "./CircuitPicture.tsx";
import { RenameField } from "./RenameField.tsx";

/** One circuit of the library: its picture, title, vehicle and how far it is drawn. */
export function CircuitEntry({ row }: { readonly row: CircuitRow }) {
  const { dispatch } = useAppStore();
  const isRenaming = useApp(({ shelf }) => shelf.renaming === row.id);
  const open = (): void => dispatch({ do: "open-circuit", id: row.id });
  return (
    <li className="entry">
      <button type="button" className="entry-open" tabIndex={isRenaming ? -1 : 0} onClick={open}>
        <CircuitPicture picture={circuitKey(row)} />
        <span className="entry-words">
          {!isRenaming && (
            <b title={row.title}>
              <bdi>{row.title}</bdi>
            </b>
          )}
          <span className="small entry-vehicle" title={row.vehicle}>
            <bdi>{row.vehicle}</bdi>
          </span>
          <span className="caption figures">{circuitFacts(row)}</span>
        </span>
        <span className="entry-since caption">{sinceWords(row.edited, Date.now())}</span>
        <Icon name="onward" />
      </button>
      {isRenaming && <RenameField row={row} />}
      <CircuitMenu row={row} />
    </li>
  );
}
