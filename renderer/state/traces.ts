import type { Bench } from "../../core/edit/bench.ts";
import { instrumentsNow } from "../../core/edit/instrumentsNow.ts";
import { wiringOf } from "../../core/edit/wiring.ts";
import type { Clipped } from "../../core/live/instruments/clipped.ts";
import type { Showing } from "../../core/live/instruments/showing.ts";

/** What an instrument showed lately, and its lowest and highest since it was clipped on or begun anew. */
export interface Trace {
  /** The last figures, oldest first, each other than the one before: volts, amps or ohms. */
  readonly values: readonly number[];
  readonly least: number;
  readonly most: number;
}

/** The trace of every instrument that has shown a figure, by its id. */
export type Traces = Readonly<Record<string, Trace>>;

const MOST_VALUES = 32;
/** Figures closer than this are the same on a face. */
const SAME = 0.005;

/**
 * The traces after something was done: what shows another figure has one more. A lead that moved begins anew, and all do where
 * the circuit was redrawn or something undone (`isUndone`): what was shown then was another circuit's.
 */
export function traced(traces: Traces, before: Bench, after: Bench, isUndone = false): Traces {
  if (before === after || (after.clipped.length === 0 && before.clipped.length === 0)) return traces;
  const shown = instrumentsNow(after);
  const isOther = isUndone || wiringOf(before.circuit) !== wiringOf(after.circuit);
  return Object.fromEntries(
    after.clipped.flatMap((each): readonly (readonly [string, Trace])[] => {
      const value = figureOf(shown.get(each.id)!);
      const was = !isOther && isWhereItWas(each, before) ? traces[each.id] : undefined;
      const now = value === null ? was : withValue(was, value);
      return now ? [[each.id, now]] : [];
    }),
  );
}

/** The traces with one begun anew at what it shows now, or for null all of them. */
export function begunAnew(traces: Traces, bench: Bench, id: string | null): Traces {
  if (id === null) return bench.clipped.reduce((begun, each) => begunAnew(begun, bench, each.id), traces);
  const shown = instrumentsNow(bench).get(id);
  const value = shown ? figureOf(shown) : null;
  const { [id]: _, ...others } = traces;
  return value === null ? others : { ...others, [id]: withValue(undefined, value) };
}

function withValue(was: Trace | undefined, value: number): Trace {
  if (!was) return { values: [value], least: value, most: value };
  if (Math.abs(was.values.at(-1)! - value) < SAME) return was;
  return {
    values: [...was.values, value].slice(-MOST_VALUES),
    least: Math.min(was.least, value),
    most: Math.max(was.most, value),
  };
}

function isWhereItWas(each: Clipped, { clipped }: Bench): boolean {
  return clipped.some((one) => one.id === each.id && JSON.stringify(one) === JSON.stringify(each));
}

/** What is traced of what is shown; null where it is no figure. */
function figureOf(showing: Showing): number | null {
  if (showing.shows === "volts") return showing.volts;
  if (showing.shows === "lamp") return Math.abs(showing.volts);
  if (showing.shows === "jumper") return Math.abs(showing.amps);
  if (showing.shows === "amps") return showing.amps;
  return showing.shows === "ohms" ? showing.ohms : null;
}
