import { useApp, useAppStore } from "../state/AppContext.tsx";
import { deletedWords, shownTitle } from "../words/library.ts";
import { DeletedList } from "./DeletedList.tsx";

/** Circuits that were deleted and can still be brought back. */
export function Deleted() {
  const { dispatch } = useAppStore();
  const deleted = useApp(({ shelf }) => shelf.deleted);
  const things = deleted.map((row) => ({
    key: row.id,
    name: shownTitle(row.title),
    about: deletedWords(row, Date.now()),
    restore: () => dispatch({ do: "restore", id: row.id }),
  }));
  return <DeletedList title="Deleted" things={things} />;
}
