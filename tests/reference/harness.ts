import type { Circuit } from "../../core/circuit/circuit.ts";
import { lotsOf } from "../lots.ts";
import { branches, hangAlternator } from "./branches.ts";
import { Draft } from "./draft.ts";
import { Wiring } from "./wiring.ts";

/** What a harness may be told. */
export interface HarnessOptions {
  readonly nominalVolts?: 12 | 24;
  readonly isLinear?: boolean;
}

/**
 * A vehicle circuit drawn by lot: battery, main fuses, buses, box fuses, runs with in-line joints, switches and relays,
 * splices, loads, ground splices, ground points and straps; 92 % of it near what was drawn before. `size` is the number
 * of unknowns a solver then has, met within about 25.
 */
export function harness(
  seed: number,
  size: number,
  { nominalVolts = 12, isLinear = false }: HarnessOptions = {},
): Circuit {
  const lots = lotsOf(seed);
  const draft = new Draft(`Harness ${seed} of ${size} nodes`, nominalVolts);
  const drawn = new Wiring(draft, lots, isLinear);
  if (!isLinear && lots.happens(0.4)) hangAlternator(drawn);
  const some = branches(isLinear);
  // Never a circuit without a switch.
  some.switched!.draw(drawn);
  while (draft.nodes < size) some[lots.weighted(weightsOf(some))]!.draw(drawn);
  return drawn.finish();
}

function weightsOf(some: Readonly<Record<string, { readonly weight: number }>>): Readonly<Record<string, number>> {
  return Object.fromEntries(Object.entries(some).map(([name, { weight }]) => [name, weight]));
}
