import type { PartId } from "../base/ids.ts";
import { remember } from "../base/memo.ts";
import type { Ohms } from "../base/units.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import type { Attachment } from "../live/attachment.ts";
import { doingIn } from "../live/doing.ts";
import type { Fault } from "../live/fault.ts";
import { judge, WORKS_FROM } from "../live/judge.ts";
import { levelOf } from "../live/live.ts";
import { Rig } from "../live/rig.ts";
import { reach } from "../live/settle.ts";
import type { Doing } from "../parts/kind.ts";
import { type Feeding, feedingOf } from "./feeding.ts";
import type { Act } from "./step.ts";

/** Ohms of a jumper with its clips and its fuse (a guess). */
const JUMPER_OHMS: Ohms = 0.05;
/** Times its running amps from which a load melts the jumper's fuse: motors held still draw up to six times (a guess). */
const MELTS_FROM = 8;

/** What an act is done to, and what is wrong. */
export interface Acted {
  readonly act: Act;
  /** The load that is fed, or the relay that is swapped. */
  readonly thing: PartId;
  readonly faults: readonly Fault[];
  /** Fuses that melted while the complaint was tried: they stay so, whatever relay is put in. */
  readonly melted: readonly PartId[];
  readonly condition: Condition;
}

/**
 * What an act shows. Of a load fed by itself: "works", "weak", "dead", or "melts the fuse" of the jumper. Of a like relay
 * put in: "helps" or "no change" of anything that works in that condition.
 */
export function actShows(circuit: Circuit, acted: Acted): string {
  return acted.act === "like relay" ? swapped(circuit, acted) : fed(circuit, acted);
}

function fed(circuit: Circuit, { act, thing, faults }: Acted): string {
  const feeding = feedingOf(circuit)(thing);
  if (!feeding) return "dead";
  const left = act === "fed loose" ? faults.filter((fault) => !isJam(fault, thing)) : faults;
  const good = goodWhenFed(circuit, feeding);
  const now = doingFed(circuit, feeding, left);
  if (Math.abs(now.amps) > MELTS_FROM * Math.abs(good.amps)) return "melts the fuse";
  return judge({ expect: "on" }, { doing: now.doing, level: levelOf(now, good) });
}

/** What holds the load from outside: off its mechanism it is gone. */
function isJam({ target, mode }: Fault, load: PartId): boolean {
  return target === load && mode === "jammed";
}

const known = remember((_: Circuit) => new Map<PartId, Doing>());

function goodWhenFed(circuit: Circuit, feeding: Feeding): Doing {
  const before = known(circuit).get(feeding.load);
  if (before) return before;
  const good = doingFed(circuit, feeding, []);
  known(circuit).set(feeding.load, good);
  return good;
}

/** What a load does, its plug apart, with jumpers from the battery to both its places. */
function doingFed(circuit: Circuit, { load, plug, plus, minus }: Feeding, faults: readonly Fault[]): Doing {
  const law = { law: "resistor", ohms: JUMPER_OHMS } as const;
  const jumpers: readonly Attachment[] = [
    { red: "battery +", black: plus, law, isMeter: false },
    { red: minus, black: "battery -", law, isMeter: false },
  ];
  const rig = new Rig(circuit, faults, jumpers);
  reach(rig, { apart: [plug] });
  return doingIn(rig, load);
}

function swapped(circuit: Circuit, { thing, faults, melted, condition }: Acted): string {
  const others = faults.filter(({ target }) => target !== thing);
  if (others.length === faults.length) return "no change";
  const loads = circuit.parts.filter(({ id }) => id !== thing);
  const worked = (wrong: readonly Fault[]): readonly Doing[] => {
    const rig = new Rig(circuit, wrong);
    reach(rig, condition, undefined, melted);
    return loads.map(({ id }) => doingIn(rig, id));
  };
  const before = worked(faults);
  const after = worked(others);
  const helps = after.some(
    (now, index) => now.doing !== before[index]!.doing || levelOf(before[index]!, now) < WORKS_FROM,
  );
  return helps ? "helps" : "no change";
}
