import type { Share } from "../base/units.ts";
import { suspicion } from "../diagnose/order.ts";
import { allLiving, type Living, NOWHERE, type Problem, type Stand } from "../diagnose/plan/problem.ts";
import type { Reading } from "../diagnose/reading.ts";
import { placeNumber } from "../diagnose/rows.ts";
import type { Observation } from "../diagnose/suspects.ts";
import type { Ground } from "./ground.ts";
import type { Mode, Standing } from "./moveMinutes.ts";

/** What a learner knows beside the complaint: other checks that were tried, and what was read. */
export interface Evident {
  readonly others: readonly Observation[];
  readonly readings: readonly Reading[];
}

/** Who is suspected after what was seen and read, as the planner reckons. */
export interface Sight {
  /** The same rows and repairs as the ground's, with the suspects' weights as they are now; with `elsewhere` they add up to 1. */
  readonly problem: Problem;
  /** Share of what is not on the drawing. */
  readonly elsewhere: Share;
  /** Suspects that still count. */
  readonly living: Living;
}

/** Suspects of less than this share are as good as cleared: nobody goes on a way for them (a guess). */
const CLEARED_BELOW: Share = 0.01;

/** What the evidence says of the suspects of a ground. */
export function sightOf(ground: Ground, evident: Evident): Sight {
  const { circuit, complaint, suspects, rows } = ground;
  const { suspects: left, cleared, evidence } = suspicion(circuit, complaint, evident);
  const shares = new Map(
    [...left, ...cleared.map(({ suspect }) => suspect)].map((each) => [each.id, each.probability]),
  );
  const weights = Float64Array.from(suspects, ({ id }) => shares.get(id) ?? 0);
  const problem = { ...rows.problem, weights };
  const best = Math.max(...weights);
  // Sets of suspects are planned for in the order of their repairs.
  const living = allLiving(problem).filter((each) => weights[each]! >= Math.min(CLEARED_BELOW, best));
  return { problem, elsewhere: evidence.elsewhere, living };
}

/** In the order in which `rowsFor` numbers them. */
const MODES: readonly Mode[] = ["volts", "millivolts", "lamp", "ohms", "amps"];

/** How a person stands, as the planner numbers trim, places and what the meter is set to. */
export function standFor({ circuit, rows }: Ground, { open, place, mode }: Standing): Stand {
  const bits = rows.trim.reduce((all, { id }, number) => (open.includes(id) ? all | (1 << number) : all), 0);
  return {
    open: bits,
    place: place === undefined ? NOWHERE : placeNumber(circuit, place),
    mode: mode === null ? NOWHERE : MODES.indexOf(mode),
  };
}
