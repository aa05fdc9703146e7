import { Empty } from "../panels/Empty.tsx";
import { Icon } from "../panels/Icon.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { CircuitEntry } from "./CircuitEntry.tsx";
import { Deleted } from "./Deleted.tsx";
import { LibraryPlace } from "./LibraryPlace.tsx";
import { useFollowing } from "./useFollowing.ts";

/** The circuits of the library, newest first; those that a search found, or what keeps the library shut. */
export function CircuitList({ trouble }: { readonly trouble: string | null }) {
  const { dispatch } = useAppStore();
  const circuits = useApp(({ shelf }) => shelf.circuits);
  const search = useApp(({ shelf }) => shelf.search);
  const following = useFollowing(circuits);
  const isSearching = search.trim() !== "";
  return (
    <section className="library-circuits">
      <h2 className="section-title">
        Circuits <span className="caption figures">{isSearching ? `${circuits.length} found` : circuits.length}</span>
        <LibraryPlace />
      </h2>
      {trouble !== null && (
        <div className="error" role="alert">
          <Icon name="note" size={16} />
          <p>
            <b>The library is not open.</b> {trouble} Samples work without it.
            <button type="button" className="button is-quiet is-low" onClick={() => dispatch({ do: "retry" })}>
              Try again
            </button>
          </p>
        </div>
      )}
      {trouble === null && circuits.length === 0 && (
        <Empty title={isSearching ? `Nothing here matches “${search.trim()}”` : "No circuit yet"}>
          {isSearching
            ? "Search by title, vehicle, part, connector or colour, such as X6, horn or OG/RD."
            : "Open a sample, or drop a circuit file anywhere on this page."}
        </Empty>
      )}
      <ul className="entries" {...following}>
        {circuits.map((row) => (
          <CircuitEntry key={row.id} row={row} />
        ))}
      </ul>
      <Deleted />
    </section>
  );
}
