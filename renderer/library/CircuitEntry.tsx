import { useEffect, useRef } from "react";
import type { CircuitRow } from "../../schemas/calls.ts";
import { Icon } from "../panels/Icon.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { circuitKey, opensKey } from "../state/shelf.ts";
import { besideWords, circuitFacts, shownTitle, sinceWords } from "../words/library.ts";
import { CircuitMenu } from "./CircuitMenu.tsx";
import { CircuitPicture } from "./CircuitPicture.tsx";
import { focusOpener } from "./focusOpener.ts";
import { RenameField } from "./RenameField.tsx";

/** One circuit of the library: its picture, title, vehicle and how far it is drawn. */
export function CircuitEntry({ row }: { readonly row: CircuitRow }) {
  const { dispatch } = useAppStore();
  const isRenaming = useApp(({ shelf }) => shelf.renaming === row.id);
  const wasRenaming = useRef(false);
  useEffect(() => {
    // The field is gone, and whoever typed in it has the keys where they were.
    if (wasRenaming.current && !isRenaming && document.activeElement === document.body) focusOpener(opensKey(row));
    wasRenaming.current = isRenaming;
  });
  const beside = besideWords(row);
  const open = (): void => dispatch({ do: "open-circuit", id: row.id });
  return (
    <li className="entry">
      <button
        type="button"
        className="entry-open"
        data-opens={opensKey(row)}
        tabIndex={isRenaming ? -1 : 0}
        onClick={open}
      >
        <CircuitPicture picture={circuitKey(row)} />
        <span className="entry-words">
          {!isRenaming && (
            <b title={row.title}>
              <bdi>{shownTitle(row.title)}</bdi>
            </b>
          )}
          <span className="small entry-vehicle" title={row.vehicle}>
            <bdi>{row.vehicle}</bdi>
          </span>
          <span className="caption figures">{circuitFacts(row)}</span>
          {beside !== null && (
            <span className="caption" title="Two changed this circuit at once, and both are kept">
              <bdi>{beside}</bdi>
            </span>
          )}
        </span>
        <span className="entry-since caption">{sinceWords(row.edited, Date.now())}</span>
        <Icon name="onward" />
      </button>
      {isRenaming && <RenameField row={row} />}
      <CircuitMenu row={row} />
    </li>
  );
}
