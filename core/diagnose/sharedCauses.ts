import { remember } from "../base/memo.ts";
import { PAIR_WORDS as WORDS } from "../base/words/pairs.ts";
import type { Circuit, Connector } from "../circuit/circuit.ts";
import { type Fault, faultModes, faultText } from "../live/fault.ts";
import type { FaultMode } from "../parts/kind.ts";
import { WEIGHTS } from "../parts/weights.ts";
import { cavitiesOf, type Possible } from "./possible.ts";
import { wiresAt } from "./testPoint.ts";

/** Likelihood of two at once beside one of them, where they share a cause (a guess). */
const BOTH = 0.1;
/** Ohms that corrosion leaves in neighbouring places at once (guesses). */
const CORRODED_OHMS = [20, 2] as const;
/** Most pairs of one splice or stud that are tried: a bus bar of thirty legs has hundreds. */
const MOST_OF_ONE = 28;

/**
 * Two faults of one cause: corrosion in neighbouring places of a plug, two legs of a splice open, two rings loose on a
 * stud. Whole plugs and whole grounds are single faults already.
 */
export const sharedCauses = remember((circuit: Circuit): readonly Possible[] => [
  ...circuit.connectors.flatMap((connector) => corroded(connector)),
  ...circuit.parts.flatMap(({ id, kind }) => {
    if (kind === "splice") return openLegs(circuit, id);
    return kind === "ground" ? looseRings(circuit, id) : [];
  }),
]);

/** Places side by side or one above the other corrode together. */
function corroded(connector: Connector): readonly Possible[] {
  const { id, rows } = connector;
  const carried = new Set(cavitiesOf(connector).map(({ cavity }) => cavity));
  const isCarried = (cavity: string | undefined): cavity is string => cavity !== undefined && carried.has(cavity);
  const pairs = rows.flatMap((row, y) =>
    row.flatMap((cavity, x) =>
      [row[x + 1], rows[y + 1]?.[x]].flatMap((other) =>
        isCarried(cavity) && isCarried(other) ? [[cavity, other] as const] : [],
      ),
    ),
  );
  return pairs.flatMap((pair) =>
    CORRODED_OHMS.map((value) =>
      both({
        faults: pair.map((cavity) => ({ target: `${id}-${cavity}`, mode: "corroded", value })),
        title: WORDS.corrosion(id, pair[0], pair[1]),
        repair: `${id}|mend the plug`,
        weight: WEIGHTS.pinCorroded / CORRODED_OHMS.length,
      }),
    ),
  );
}

function openLegs(circuit: Circuit, id: string): readonly Possible[] {
  const legs = faultModes(circuit, { is: "part", id }).filter(({ mode }) => OPEN_LEG.test(mode));
  return pairsOf(legs).map(([one, other]) =>
    both({
      faults: [one, other].map(({ mode }) => ({ target: id, mode })),
      title: WORDS.splice(id, legOf(one), legOf(other)),
      repair: `${id}|make the splice again`,
      weight: one.weight,
    }),
  );
}

const OPEN_LEG = /^leg-(.+)-open$/;

function legOf({ mode }: FaultMode): string {
  return OPEN_LEG.exec(mode)?.[1] ?? mode;
}

function looseRings(circuit: Circuit, id: string): readonly Possible[] {
  return pairsOf(wiresAt(circuit, `${id}.stud`)).map(([one, other]) =>
    both({
      faults: [one, other].map((wire) => ({ target: wire.id, mode: "open" })),
      title: WORDS.ground(id, one.id, other.id),
      repair: `${id}|clean and tighten`,
      weight: WEIGHTS.groundOff,
    }),
  );
}

function pairsOf<T>(things: readonly T[]): readonly (readonly [T, T])[] {
  return things
    .flatMap((one, index) => things.slice(index + 1).map((other) => [one, other] as const))
    .slice(0, MOST_OF_ONE);
}

function both(pair: { faults: readonly Fault[]; title: string; repair: string; weight: number }): Possible {
  return { ...pair, id: pair.faults.map(faultText).join("+"), weight: pair.weight * BOTH };
}
