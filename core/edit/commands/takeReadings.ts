import { type Outcome, refuse } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import type { Reading } from "../../diagnose/reading.ts";
import { readingFits } from "../../diagnose/readingFits.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { editOf } from "../editOf.ts";

/** Puts what was read at one place on the list: one reading, or one for every position of a sweep. Refuses `reading-misfit`. */
export function takeReadings(bench: Bench, readings: readonly Reading[]): Outcome<Edit> {
  const [first] = readings;
  if (!first) return refuse("reading-empty");
  const stray = readings.find((reading) => !readingFits(bench.circuit, reading));
  if (stray) return refuse("reading-misfit", { point: stray.red });
  return editOf(bench, EDIT_NAMES.takeReadings(first.red), [
    { change: "bench", field: "readings", value: [...bench.readings, ...readings] },
  ]);
}
