import { type Outcome, ok } from "../../core/base/outcome.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Seen } from "../../core/diagnose/seen.ts";
import type { SheetAsk } from "../../schemas/calls/print.ts";
import { type KnownNow, knownOf, seenOf } from "../asked.ts";

/** What a search goes by: the complaint, other checks, readings, battery volts and weights. */
export interface Searched extends Seen, KnownNow {}

/** What was asked for in words, of every sheet that follows a search. Refuses as `seenOf` and `knownOf` do. */
export function searchedIn(circuit: Circuit, ask: SheetAsk): Outcome<Searched> {
  const seen = seenOf(circuit, ask.complaint, ask.observed, ask.sleeping);
  if (!seen.ok) return seen;
  const known = knownOf(circuit, ask.read, ask.battery, ask);
  return known.ok ? ok({ ...seen.value, ...known.value }) : known;
}
