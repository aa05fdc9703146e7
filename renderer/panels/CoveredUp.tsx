import { useAppStore } from "../state/AppContext.tsx";
import { Empty } from "./Empty.tsx";

/** Stands in place of what would tell the states while they are covered up in this window; `what` is what is not shown. */
export function CoveredUp({ what }: { readonly what: string }) {
  const { dispatch } = useAppStore();
  return (
    <div>
      <Empty title={`${what} covered up`}>The class is to say first how it stands.</Empty>
      <button
        type="button"
        className="button is-quiet add-check"
        onClick={() => dispatch({ do: "teach", lesson: { isCoveredHere: false } })}
      >
        Show it in this window
      </button>
    </div>
  );
}
