import { goneAt } from "../live/comings.ts";
import type { Bench } from "./bench.ts";
import { goingOn } from "./editOf.ts";

/** The bench when so many steps of time have passed in all; itself where nothing has come or gone. It is no edit: nobody did it. */
export function timePassed(bench: Bench, steps: number): Bench {
  const gone = goneAt(bench.faults, steps);
  const isSame = gone.length === bench.gone.length && gone.every((text, index) => text === bench.gone[index]);
  return isSame ? bench : { ...bench, before: goingOn(bench).value, gone };
}

/** The steps of time after which the next fault has come or gone; null where none of a bench does. */
export function nextComing(bench: Bench, steps: number): number | null {
  if (bench.faults.every(({ pattern }) => pattern === undefined)) return null;
  let next = steps + 1;
  while (timePassed(bench, next) === bench) next++;
  return next;
}

/** Whether two benches differ at most in what time alone has changed. */
export function areButForTime(one: Bench, other: Bench): boolean {
  if (one === other) return true;
  const fields = Object.keys(one) as (keyof Bench)[];
  return fields.every((field) => field === "gone" || field === "before" || one[field] === other[field]);
}
