import { remember } from "../base/memo.ts";
import { type Fault, faultText, parseFault } from "../live/fault.ts";
import { type Bench, benchFor } from "./bench.ts";
import { type LiveNow, liveNow } from "./liveNow.ts";

const asked = remember((_: Bench) => new Map<readonly Fault[], Bench>());

/**
 * A bench as it would be with these faults and no others, come to from rest as the readings of a suspect are, instruments
 * where they are clipped. A fault of something that the circuit no longer has is let go.
 */
export function benchWith(bench: Bench, faults: readonly Fault[]): Bench {
  const known = asked(bench).get(faults);
  if (known) return known;
  const { circuit, condition, clipped } = bench;
  const isThere = (fault: Fault): boolean => parseFault(circuit, faultText(fault)).ok;
  const there = faults.every(isThere) ? faults : faults.filter(isThere);
  const next = { ...benchFor(circuit), condition, clipped, faults: there };
  asked(bench).set(faults, next);
  return next;
}

/** The live state of a bench as it would be with these faults and no others. */
export function liveWith(bench: Bench, faults: readonly Fault[]): LiveNow {
  return liveNow(benchWith(bench, faults));
}
