import type { CircuitRow } from "../../schemas/calls.ts";
import { Icon } from "../panels/Icon.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { deletedWords, shownTitle } from "../words/library.ts";

/** Circuits that were deleted and can still be brought back; folded, and not there at all where there is none. */
export function Deleted() {
  const deleted = useApp(({ shelf }) => shelf.deleted);
  if (deleted.length === 0) return null;
  return (
    <details className="deleted">
      <summary>
        <Icon name="onward" size={16} />
        Deleted <span className="caption figures">{deleted.length}</span>
      </summary>
      <ul>
        {deleted.map((row) => (
          <DeletedRow key={row.id} row={row} />
        ))}
      </ul>
    </details>
  );
}

function DeletedRow({ row }: { readonly row: CircuitRow }) {
  const { dispatch } = useAppStore();
  const { id } = row;
  const title = shownTitle(row.title);
  return (
    <li className="deleted-row">
      <span className="entry-words">
        <b title={title}>
          <bdi>{title}</bdi>
        </b>
        <span className="caption figures">{deletedWords(row, Date.now())}</span>
      </span>
      <button
        type="button"
        className="button is-quiet is-low"
        aria-label={`Bring ${title} back`}
        onClick={() => dispatch({ do: "restore", id })}
      >
        Bring it back
      </button>
    </li>
  );
}
