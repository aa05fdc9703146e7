import type { PartId } from "../../base/ids.ts";
import { remember } from "../../base/memo.ts";
import type { Amps, Share } from "../../base/units.ts";
import type { Circuit, Condition } from "../../circuit/circuit.ts";
import { doingsIn } from "../../live/doing.ts";
import { isIdle } from "../../live/live.ts";
import { Rig } from "../../live/rig.ts";
import { reach } from "../../live/settle.ts";
import type { Doing } from "../../parts/kind.ts";
import { conditionsToTry, intendedConditions } from "./positions.ts";

/** A circuit in one condition: the amps of every element, a to b, and what every part that does work does. */
export interface Moment {
  readonly condition: Condition;
  readonly amps: Float64Array;
  readonly doing: ReadonlyMap<PartId, Doing>;
  /** States of the parts that have states. */
  readonly states: ReadonlyMap<PartId, string>;
}

/** What the good circuit does in every distinct position: what anything else is compared with. */
export interface Healthy {
  readonly moments: readonly Moment[];
  /** Per element, whether current runs a to b, and b to a, where the drawing says what should happen. */
  readonly along: Uint8Array;
  readonly against: Uint8Array;
  /** Most amps of every element in any position, without sign. */
  readonly most: Float64Array;
  /** Most work of every part in any position, without sign, in the measure of its kind. */
  readonly work: ReadonlyMap<PartId, number>;
}

/** Less than this along an element is no current that says which way it is meant to run. */
export const LEAST_FLOW: Amps = 0.005;
/**
 * Share of an element's most current below which it is none either (our own number): what leaks backwards through a dark lamp
 * whose ground wire it shares with one that is lit.
 */
export const LEAST_FLOW_SHARE: Share = 0.05;

/** Reads a settled rig out: amps of its elements, and what its parts do. */
export function momentOf(rig: Rig, condition: Condition): Moment {
  const { elements } = rig.network;
  const amps = Float64Array.from(elements, ({ element }, index): Amps => {
    return element.law === "joint" || rig.isOpen[index] ? 0 : rig.solver.amps(index);
  });
  return { condition, amps, doing: doingsIn(rig), states: new Map(rig.states) };
}

/** The good circuit in every distinct position; positions in which the same contacts are closed count once. */
export const healthyOf: (circuit: Circuit) => Healthy = remember((circuit) => {
  const rig = new Rig(circuit);
  const intended = new Set(intendedConditions(circuit));
  const closed = new Set<string>();
  const moments: Moment[] = [];
  const count = rig.network.elements.length;
  const [along, against, most] = [new Uint8Array(count), new Uint8Array(count), new Float64Array(count)];
  const work = new Map<PartId, number>();
  for (const condition of conditionsToTry(circuit)) {
    reach(rig, condition);
    const isOpen = `${condition.running ?? ""} ${rig.isOpen.join("")}`;
    if (closed.has(isOpen)) continue;
    closed.add(isOpen);
    const moment = momentOf(rig, condition);
    moments.push(moment);
    moment.amps.forEach((amps, index) => {
      most[index] = Math.max(most[index]!, Math.abs(amps));
    });
    for (const [part, { work: done }] of moment.doing) work.set(part, Math.max(work.get(part) ?? 0, Math.abs(done)));
  }
  tellWays(
    moments.filter(({ condition }) => intended.has(condition)),
    most,
    { along, against },
  );
  tellWays(moments, most, { along, against });
  return { moments, along, against, most, work };
});

/** Notes which way the elements run of which nothing is known so far. */
function tellWays(
  moments: readonly Moment[],
  most: Float64Array,
  { along, against }: { readonly along: Uint8Array; readonly against: Uint8Array },
): void {
  most.forEach((top, index) => {
    if (along[index] || against[index]) return;
    const least = Math.max(LEAST_FLOW, LEAST_FLOW_SHARE * top);
    for (const { amps } of moments) {
      if (amps[index]! >= least) along[index] = 1;
      else if (amps[index]! <= -least) against[index] = 1;
    }
  });
}

/** Share of a part's most work in the good circuit that it does now; 0 for one that is idle. */
export function shareOfWork({ work }: Healthy, part: PartId, doing: Doing | undefined): Share {
  const most = work.get(part) ?? 0;
  if (!doing || isIdle(doing)) return 0;
  return most === 0 ? 1 : Math.abs(doing.work) / most;
}
