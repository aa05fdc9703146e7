import type { BesideRow } from "../../schemas/calls.ts";
import { useAppStore } from "../state/AppContext.tsx";
import { savedWords } from "./versionWords.ts";

/** What was kept beside this circuit because two changed it at once, each with a way to open it. */
export function Besides({ rows }: { readonly rows: readonly BesideRow[] }) {
  const { dispatch } = useAppStore();
  if (rows.length === 0) return null;
  return (
    <ol className="versions" aria-label="Changed at the same time, and kept beside">
      {rows.map(({ id, by, edited, isFirst }) => {
        const what = isFirst ? "The circuit it was kept beside" : "Kept beside this one";
        const when = `${by === "" ? "" : `${by}, `}${savedWords({ saved: edited })}`;
        return (
          <li key={id} className="version is-beside">
            <span className="version-words">
              <b className="version-edit">{what}</b>
              <span className="caption figures">
                <bdi>{when}</bdi>
              </span>
              <button
                type="button"
                className="button is-low"
                aria-label={`Open it: ${what}, ${when}`}
                onClick={() => dispatch({ do: "open-circuit", id })}
              >
                Open it
              </button>
            </span>
          </li>
        );
      })}
    </ol>
  );
}
