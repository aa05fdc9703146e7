import { type Outcome, refuse } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { editOf } from "../editOf.ts";

/** Takes a reading off the list, as if it had never been typed; numbers count from 1. Refuses `reading-none`. */
export function removeReading(bench: Bench, number: number): Outcome<Edit> {
  const reading = bench.readings[number - 1];
  if (!reading) return refuse("reading-none", { number });
  return editOf(bench, EDIT_NAMES.removeReading(number, reading.red), [
    { change: "bench", field: "readings", value: bench.readings.filter((each) => each !== reading) },
  ]);
}
