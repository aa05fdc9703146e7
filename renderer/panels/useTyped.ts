import { useState } from "react";
import { sentence } from "../../core/base/words.ts";
import { useAppStore } from "../state/AppContext.tsx";
import type { Command } from "../state/action.ts";
import { isToldOf } from "../state/reduceBench.ts";
import { benchOf } from "../state/state.ts";

/** A field of something on the bench, as it is being typed. */
export interface Typed {
  readonly typed: string;
  readonly setTyped: (typed: string) => void;
  /** Why what was typed was refused, in a sentence; null where it was not. */
  readonly trouble: string | null;
  /** Makes the edit for what is typed. What is refused stays as it was typed; what says nothing new is as before. */
  readonly take: () => void;
}

/** What is typed in place of a value of the bench, until it is taken. Another value takes the place of what was typed. */
export function useTyped(value: string, change: (typed: string) => Command): Typed {
  const { dispatch, getState } = useAppStore();
  const [typed, setTyped] = useState(value);
  const [trouble, setTrouble] = useState<string | null>(null);
  const [known, setKnown] = useState(value);
  if (known !== value) {
    setKnown(value);
    setTyped(value);
    setTrouble(null);
  }
  const take = (): void => {
    const bench = benchOf(getState());
    if (!bench) return;
    const command = change(typed);
    const edit = typed === value ? null : command(bench);
    setTrouble(edit && !edit.ok && isToldOf(edit.refusal) ? sentence(edit.refusal) : null);
    if (edit?.ok) dispatch({ do: "make", command });
    else if (edit && !isToldOf(edit.refusal)) setTyped(value);
  };
  return { typed, setTyped, trouble, take };
}
