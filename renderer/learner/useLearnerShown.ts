import { useMemo } from "react";
import { asDrawn } from "../../core/lesson/asDrawn.ts";
import { type Attempt, costOf, loadsNow, readingsIn } from "../../core/lesson/attempt.ts";
import type { LeadHere } from "../canvas/leadTags.ts";
import { readHere } from "../canvas/readingFlags.ts";
import type { Shown } from "../canvas/shown.ts";
import { HAND } from "../canvas/tool.ts";
import { useApp } from "../state/AppContext.tsx";
import { minutesText } from "../words/figures.ts";
import { useLearning } from "./useLearning.ts";

const NONE = {
  also: [],
  knots: [],
  papers: [],
  faults: [],
  flagged: [],
  suspects: [],
  full: null,
  different: new Set<string>(),
};
const MARGINS = { top: 24, right: 24, bottom: 24, left: 24 };

/** What the learner's drawing shows: controls as set, loads as seen, what was read as things stand; no state of any wire. */
export function useLearnerShown(): Shown {
  const attempt = useLearning((learning) => learning.attempt);
  const sight = useLearning((learning) => learning.sight);
  const palette = useApp((state) => state.theme);
  const look = useApp((state) => state.settings.look);
  const keys = useApp((state) => state.settings.keys);
  const { circuit } = attempt.exercise;
  const { condition } = attempt;
  const loads = loadsNow(attempt);
  const live = useMemo(() => asDrawn(circuit, condition, loads), [circuit, condition, loads]);
  const readings = useMemo(() => flagsOf(attempt), [attempt]);
  const price = useMemo(() => throwPrice(attempt), [attempt]);
  return useMemo((): Shown => {
    const { page, viewports, chosen, hovered, wish, black } = sight;
    const blackLead: LeadHere = { sign: "B", number: "", at: black, isWire: false, words: "" };
    return {
      ...NONE,
      circuit,
      page,
      live,
      palette,
      look,
      keys,
      viewport: viewports[page] ?? null,
      selection: chosen,
      tool: HAND,
      hover: hovered,
      readings,
      leads: black === "battery -" ? [] : [blackLead],
      wish,
      margins: MARGINS,
      vehicle: { price },
    };
  }, [circuit, live, palette, look, keys, sight, readings, price]);
}

function flagsOf(attempt: Attempt): Shown["readings"] {
  const { exercise, condition } = attempt;
  return readHere({ circuit: exercise.circuit, condition, readings: readingsIn(attempt) });
}

/** What one throw costs, whichever it is. */
function throwPrice(attempt: Attempt): string {
  return minutesText(costOf(attempt, { do: "throw", control: "", position: "" }));
}
