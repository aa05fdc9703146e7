import { remember } from "../base/memo.ts";
import { WEIGHING_NOTES as SAY } from "../base/words/weighing.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { connectorAt, partAt } from "../circuit/points.ts";
import { faultModes, parseFault, type Target, targetOf } from "../live/fault.ts";
import { KINDS } from "../parts/catalogue.ts";
import { type Possible, possibleFaults } from "./possible.ts";

/** A factor on the starting weight of what can be wrong, set by a person who says where it comes from. */
export interface WeightFactor {
  /** On a circuit a part, wire, plug, pin or one fault, `M3`, `M3:seized`; in a shop a kind or a way to fail of it, `motor:seized`. */
  readonly of: string;
  /** How many times as likely as the guess in `core/parts/weights.ts` has it. */
  readonly factor: number;
  /** Where that is known from: a bulletin, the shop's own records. */
  readonly source: string;
}

/** What changes the starting weights: factors of this circuit and of the shop, and how often a fault was found here before. */
export interface Weighing {
  readonly circuit: readonly WeightFactor[];
  readonly shop: readonly WeightFactor[];
  /** Verdicts of jobs on this circuit that were filed and done, one for each job: ids of suspects. */
  readonly solved: readonly string[];
}

/** No factors, and nothing found before. */
export const PLAIN_WEIGHING: Weighing = { circuit: [], shop: [], solved: [] };

/** A factor lies between these: nobody's records rule a fault out, and none makes it certain. */
export const FACTOR_LIMITS = { least: 0.05, most: 20, of: 80, source: 200, count: 200 } as const;
/** Found any number of times here, a fault weighs at most so many times its guess (a guess). */
export const MOST_BY_FINDS = 8;

/** A factor with the sentences that say where it comes from. */
export interface Weighed {
  readonly factor: number;
  readonly notes: readonly string[];
}

const UNCHANGED: Weighed = { factor: 1, notes: [] };

/**
 * The factor on one thing's starting weight: the product of all that was set for it, and of its finds. Each repair counts as
 * found once before anything was (Laplace's rule of succession), so n finds make it n + 1 times as likely, 8 times at most.
 */
export function weighedBy(circuit: Circuit, possible: Possible, weighing: Weighing): Weighed {
  const { circuit: own, shop, solved } = weighing;
  if (own.length + shop.length + solved.length === 0) return UNCHANGED;
  const ofOwn = own.filter(({ of }) => namesOf(circuit, possible).includes(of));
  const ofShop = shop.filter(({ of }) => kindNamesOf(circuit, possible).includes(of));
  const repairs = repairOf(circuit);
  const finds = solved.filter((suspect) => repairs.get(withoutValues(suspect)) === possible.repair).length;
  const byFinds = Math.min(MOST_BY_FINDS, finds + 1);
  const factor = [...ofOwn, ...ofShop].reduce((product, each) => product * each.factor, byFinds);
  return {
    factor,
    notes: [
      ...(finds === 0 ? [] : [SAY.found(finds)]),
      ...ofOwn.map((each) => SAY.onCircuit(each.of, each.factor, each.source)),
      ...ofShop.map((each) => SAY.inShop(each.of, each.factor, each.source)),
    ],
  };
}

const repairOf = remember(
  (circuit: Circuit): ReadonlyMap<string, string> =>
    new Map(possibleFaults(circuit).map(({ id, repair }) => [withoutValues(id), repair])),
);

/** A suspect by what fails and how: 5 ohm and 20 ohm of corrosion at one pin are one find. */
function withoutValues(suspect: string): string {
  return suspect
    .split("+")
    .map((fault) => fault.split("=")[0]!)
    .join("+");
}

/** What a factor of the circuit may be set for and concern this: its things, their plugs, and the fault itself. */
function namesOf(circuit: Circuit, { id, faults }: Possible): readonly string[] {
  const targets = faults.map(({ target }) => target);
  const plugs = targets.flatMap((target) => {
    const at = targetOf(circuit, target);
    return at?.is === "cavity" ? [at.connector] : [];
  });
  return [...new Set([id, ...targets, ...plugs, ...faults.map(({ target, mode }) => `${target}:${mode}`)])];
}

function kindNamesOf(circuit: Circuit, { faults }: Possible): readonly string[] {
  const names = faults.flatMap(({ target, mode }) => {
    const kind = kindNameOf(circuit, targetOf(circuit, target));
    return kind === null ? [] : [kind, `${kind}:${mode}`];
  });
  return [...new Set(names)];
}

/** What sort of thing a shop's factor calls a target: a kind of the catalogue, a wire, or a pin; null where it is not there. */
export function kindNameOf(circuit: Circuit, target: Target | null): string | null {
  if (target === null) return null;
  if (target.is === "wire") return "wire";
  return target.is === "cavity" ? "pin" : (partAt(circuit, target.id)?.kind ?? null);
}

/** Whether a circuit has something of this name that a factor can be set for. */
export function mayBeWeighed(circuit: Circuit, of: string): boolean {
  const target = targetOf(circuit, of);
  if (target) return faultModes(circuit, target).length > 0;
  if (connectorAt(circuit, of)) return true;
  const [thing = "", mode = ""] = of.split(":");
  const modes = targetOf(circuit, thing);
  return (modes !== null && faultModes(circuit, modes).some((each) => each.mode === mode)) || isFaults(circuit, of);
}

function isFaults(circuit: Circuit, of: string): boolean {
  return of.split("+").every((fault) => parseFault(circuit, fault).ok);
}

/** Whether a shop's factor can be set for this: a kind of the catalogue, wires or pins, alone or with a way to fail. */
export function mayBeWeighedInShop(of: string): boolean {
  const [kind = ""] = of.split(":");
  return kind === "wire" || kind === "pin" || KINDS.some(({ name }) => name === kind);
}
