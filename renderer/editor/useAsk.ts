import { useCallback, useState } from "react";
import { sentence } from "../../core/base/words.ts";
import { useAppStore } from "../state/AppContext.tsx";
import type { Command } from "../state/action.ts";
import { isToldOf } from "../state/reduceBench.ts";
import { benchOf } from "../state/state.ts";

/** Makes an edit; gives back why it was refused, in a sentence to stand beside what asked for it, else null. */
export type Ask = (command: Command) => string | null;

/** A way to make edits whose refusals are said where they were asked for. */
export function useAsk(): Ask {
  const { dispatch, getState } = useAppStore();
  return useCallback(
    (command) => {
      const bench = benchOf(getState());
      if (!bench) return null;
      const edit = command(bench);
      if (edit.ok) dispatch({ do: "make", command: () => edit });
      return edit.ok || !isToldOf(edit.refusal) ? null : sentence(edit.refusal);
    },
    [dispatch, getState],
  );
}

/** The same for a group of buttons and choices: the last refusal, until something else is asked. */
export function useAsked(): { readonly ask: Ask; readonly trouble: string | null } {
  const plain = useAsk();
  const [trouble, setTrouble] = useState<string | null>(null);
  const ask = useCallback<Ask>(
    (command) => {
      const said = plain(command);
      setTrouble(said);
      return said;
    },
    [plain],
  );
  return { ask, trouble };
}
