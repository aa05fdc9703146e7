import { remember } from "../base/memo.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import { withoutGone } from "../live/comings.ts";
import { type Differs, differencesOf } from "../live/differences.ts";
import type { Fault } from "../live/fault.ts";
import { attachmentsOf, type Clipped, fuseOf } from "../live/instruments/clipped.ts";
import { type Live, liveFrom, type Reached, type Work } from "../live/live.ts";
import { Rig } from "../live/rig.ts";
import type { PartStates, Standing } from "../live/standing.ts";
import type { Bench } from "./bench.ts";
import { wiringOf } from "./wiring.ts";

/** Live state of a bench: with nothing wrong, as it is, and which of the two is shown. */
export interface LiveNow {
  readonly good: Live;
  readonly now: Live;
  readonly shown: Live;
  /** What is not as it would be with nothing wrong. */
  readonly differs: Differs;
  /** The states parts were left in, from which the next condition goes on. */
  readonly after: { readonly good: PartStates; readonly now: PartStates };
}

const NO_FAULTS: readonly Fault[] = [];

/** A rig that is kept, and what it was last asked. */
interface Kept {
  readonly rig: Rig;
  readonly faults: readonly Fault[];
  readonly clipped: readonly Clipped[];
  readonly states: PartStates;
  readonly from: Condition;
  readonly condition: Condition;
  readonly healthyWork: Work | null;
  readonly reached: Reached;
}

/** The rigs of one wiring: one with nothing wrong, one as it is; and the answer that both last gave. */
interface Rigs {
  good: Kept | null;
  now: Kept | null;
  last: Omit<LiveNow, "shown"> | null;
}

const rigsOf = remember((_: Circuit): Rigs => ({ good: null, now: null, last: null }));

/**
 * The live state of a bench, latches and melted fuses kept. A function of circuit, faults, condition and what stood
 * before; the rigs that solved the last one are only used again to be quick.
 */
export const liveNow = remember((bench: Bench): LiveNow => {
  const { before, condition, clipped } = bench;
  const faults = withoutGone(bench.faults, bench.gone);
  const wiring = wiringOf(bench.circuit);
  const rigs = rigsOf(wiring);
  const standing = (states: PartStates): Standing => ({ condition: before.condition, states });
  rigs.good = reached(
    { circuit: wiring, faults: NO_FAULTS, clipped },
    standing(before.good),
    condition,
    null,
    rigs.good,
  );
  const good = rigs.good.reached;
  let now = good;
  if (bench.faults.length > 0 || !areSame(before.good, before.now)) {
    rigs.now = reached({ circuit: wiring, faults, clipped }, standing(before.now), condition, good.work, rigs.now);
    now = rigs.now.reached;
  }
  if (rigs.last?.good !== good.live || rigs.last.now !== now.live) {
    rigs.last = {
      good: good.live,
      now: now.live,
      differs: differencesOf(good.live, now.live, wiring.nominalVolts),
      after: { good: withFree(before.good, good.states, clipped), now: withFree(before.now, now.states, clipped) },
    };
  }
  return { ...rigs.last, shown: bench.showFaults ? now.live : good.live };
});

/** What a rig is made of. */
interface Made {
  readonly circuit: Circuit;
  readonly faults: readonly Fault[];
  readonly clipped: readonly Clipped[];
}

/** What a kept rig answers: the same again, or by going on from where it stands, or from the standing that is given. */
function reached(
  { circuit, faults, clipped }: Made,
  before: Standing,
  condition: Condition,
  healthyWork: Work | null,
  kept: Kept | null,
): Kept {
  const isSame = kept !== null && kept.faults === faults && areClippedAlike(kept.clipped, clipped);
  const asked = { faults, clipped, states: before.states, from: before.condition, condition, healthyWork };
  if (
    isSame &&
    kept.states === before.states &&
    kept.from === before.condition &&
    kept.condition === condition &&
    kept.healthyWork === healthyWork
  )
    return kept;
  const attached = attachmentsOf(clipped, circuit.nominalVolts).map(({ attachment }) => attachment);
  const rig = isSame ? kept.rig : new Rig(circuit, faults, attached, kept?.rig);
  const isThere =
    isSame && kept.reached.isRigThere && kept.reached.states === before.states && kept.condition === before.condition;
  return { rig, ...asked, reached: liveFrom(rig, isThere ? null : before, condition, healthyWork) };
}

function areClippedAlike(one: readonly Clipped[], other: readonly Clipped[]): boolean {
  return one === other || (one.length === 0 && other.length === 0);
}

/** States with those of the fuses of instruments that hang free: what melted stays so while it is in nobody's circuit. */
function withFree(before: PartStates, states: PartStates, clipped: readonly Clipped[]): PartStates {
  const free = clipped.map(({ id }) => fuseOf(id)).filter((fuse) => before[fuse] !== undefined);
  const kept = free.filter((fuse) => states[fuse] === undefined);
  return kept.length === 0 ? states : { ...states, ...Object.fromEntries(kept.map((fuse) => [fuse, before[fuse]!])) };
}

function areSame(one: PartStates, other: PartStates): boolean {
  if (one === other) return true;
  const names = Object.keys(one);
  return names.length === Object.keys(other).length && names.every((name) => one[name] === other[name]);
}
