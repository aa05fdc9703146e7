import type { Circuit } from "../circuit/circuit.ts";
import { explaining } from "./clash.ts";
import { weighed } from "./evidence.ts";
import type { Reading } from "./reading.ts";
import type { Clash } from "./step.ts";
import { type Observation, pairsFor, type Suspected } from "./suspects.ts";

/** Pairs that stand beside the singles at most. */
const MOST_PAIRS = 12;

/** What pairs are asked for: the complaint, what else was seen, what was read and how far it is scaled. */
export interface Asked {
  readonly circuit: Circuit;
  readonly complaint: Observation;
  readonly others: readonly Observation[];
  readonly readings: readonly Reading[];
  readonly scale: number;
}

/**
 * Pairs that share a cause, likeliest first, where they are needed: those that fewer checks speak against than against any
 * single fault, or that none does at all; and, where readings clash, those that explain every reading.
 */
export function pairsNeeded(
  { circuit, complaint, others, readings, scale }: Asked,
  singles: readonly Suspected[],
  clashes: readonly Clash[],
): { readonly pairs: readonly Suspected[]; readonly explaining: readonly Suspected[] } {
  const least = Math.min(...singles.map(({ against }) => against.length));
  if (least === 0 && clashes.length === 0) return { pairs: [], explaining: [] };
  const all = [...pairsFor(circuit, complaint, others)].sort((one, other) => other.weight - one.weight);
  const better = all.filter(({ against }) => against.length < least);
  const explain =
    clashes.length === 0
      ? []
      : explaining(weighed(circuit, complaint.check.condition, all, readings, scale), readings).map(
          (index) => all[index]!,
        );
  return { pairs: [...new Set([...explain, ...better])].slice(0, MOST_PAIRS), explaining: explain };
}
