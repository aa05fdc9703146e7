import type { VersionRow } from "../../schemas/calls.ts";
import { CircuitPicture } from "../library/CircuitPicture.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { versionKey } from "../state/shelf.ts";
import { editTitle, savedWords } from "./versionWords.ts";

/** One version: its picture, the edit that made it and when, and a way to bring it back. */
export function VersionItem({ row }: { readonly row: VersionRow }) {
  const { dispatch } = useAppStore();
  const id = useApp(({ open }) => open?.id ?? null);
  const when = savedWords(row);
  return (
    <li className="version">
      {id !== null && <CircuitPicture picture={versionKey(id, row.version)} />}
      <span className="version-words">
        <b className="version-edit">{editTitle(row)}</b>
        <span className="caption figures">{when}</span>
        <button
          type="button"
          className="button is-low"
          aria-label={`Bring this version back: ${editTitle(row)}, ${when}`}
          onClick={() => dispatch({ do: "bring-back", row })}
        >
          Bring this version back
        </button>
      </span>
    </li>
  );
}
