import { type Outcome, refuse } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import type { Reading } from "../../diagnose/reading.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf } from "../editOf.ts";

/** Doubts a reading, strikes it out, or takes it as right again; numbers count from 1. Refuses `reading-none`, `already-so`. */
export function markReading(bench: Bench, number: number, standing: Reading["standing"]): Outcome<Edit> {
  const reading = bench.readings[number - 1];
  if (!reading) return refuse("reading-none", { number });
  if (reading.standing === standing) return alreadySo(`reading ${number}`);
  const readings = bench.readings.map((each) => (each === reading ? { ...each, standing } : each));
  return editOf(bench, EDIT_NAMES.markReading[standing](number, reading.red), [
    { change: "bench", field: "readings", value: readings },
  ]);
}
