import { useAppStore } from "../state/AppContext.tsx";
import { benchOf } from "../state/state.ts";
import { addNextPage } from "./pages.ts";

/** A way to add a page and show it at once. */
export function useAddPage(): () => void {
  const { dispatch, getState } = useAppStore();
  return () => {
    const before = benchOf(getState())?.circuit.pages.length;
    dispatch({ do: "make", command: addNextPage });
    const pages = benchOf(getState())?.circuit.pages ?? [];
    const added = pages.length === before ? undefined : pages.at(-1);
    if (added) dispatch({ do: "show-page", page: added.id });
  };
}
