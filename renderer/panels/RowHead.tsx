import type { ReactNode } from "react";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import type { Thing } from "../state/state.ts";

/** Whether exactly this is chosen. */
export function useIsChosen({ is, id }: Thing): boolean {
  return useApp(({ open }) => open?.chosen?.is === is && open.chosen.id === id);
}

interface Shown {
  readonly thing: Thing;
  readonly isChosen: boolean;
  readonly children: ReactNode;
}

/** The head of a row of the list: a press finds its thing on the drawing and opens the row, one more lets it go. */
export function RowHead({ thing, isChosen, children }: Shown) {
  const { dispatch } = useAppStore();
  return (
    <button
      type="button"
      className="row-head"
      aria-expanded={isChosen}
      onClick={() => dispatch(isChosen ? { do: "choose", thing: null } : { do: "find", thing })}
    >
      <b className="together">{thing.id}</b>
      {children}
    </button>
  );
}
