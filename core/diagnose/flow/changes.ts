import type { PartId } from "../../base/ids.ts";
import type { Amps, Share } from "../../base/units.ts";
import type { Circuit, Condition } from "../../circuit/circuit.ts";
import type { Fault } from "../../live/fault.ts";
import { WEAK_FROM, WORKS_FROM } from "../../live/judge.ts";
import { isIdle } from "../../live/live.ts";
import { Rig } from "../../live/rig.ts";
import { reach } from "../../live/settle.ts";
import { kindOf } from "../../parts/catalogue.ts";
import type { Doing } from "../../parts/kind.ts";
import { type Healthy, healthyOf, type Moment, momentOf, shareOfWork } from "./moments.ts";

/** More work than this share of what it should do is no longer right: a lamp at 1.13 of its volts (our own number). */
export const STRONG_FROM: Share = 1.5;

/** What a part does wrong in a condition, judged as function checks are. */
export interface Change {
  readonly part: PartId;
  /** Dead and weak as checks judge; wrong where it runs when it should not or the other way; strong above 1.5 times. */
  readonly verdict: "dead" | "weak" | "wrong" | "strong";
  readonly doing: Doing["doing"];
  /** What it would do with nothing wrong. */
  readonly healthy: Doing["doing"];
  /** Work over what it does there with nothing wrong; over its most anywhere, where it should be idle. */
  readonly level: Share;
  readonly amps: Amps;
  readonly condition: Condition;
}

/** A change in the condition where it is worst, and in how many of the distinct positions it is. */
export interface Effect extends Change {
  readonly positions: number;
}

/** What every part does otherwise than in the good circuit in the same condition; sources and fuses are not judged. */
export function changesIn(circuit: Circuit, healthy: Healthy, good: Moment, now: Moment): readonly Change[] {
  return circuit.parts.flatMap(({ id, kind }): readonly Change[] => {
    const role = kindOf(kind)?.role;
    const [does, should] = [now.doing.get(id), good.doing.get(id)];
    if (!does || !should || role === "source" || role === "protection" || role === "join") return [];
    const judged = verdictOf(healthy, id, should, does);
    if (!judged) return [];
    const about = { doing: does.doing, healthy: should.doing, amps: Math.abs(does.amps), condition: now.condition };
    return [{ part: id, ...judged, ...about }];
  });
}

function verdictOf(healthy: Healthy, id: PartId, should: Doing, does: Doing): Pick<Change, "verdict" | "level"> | null {
  if (isIdle(should) || shareOfWork(healthy, id, should) < WEAK_FROM) {
    const level = shareOfWork(healthy, id, does);
    return level >= WEAK_FROM ? { verdict: "wrong", level } : null;
  }
  const level = isIdle(does) || should.work === 0 ? 0 : Math.abs(does.work / should.work);
  if (level >= WEAK_FROM && isOtherWay(should, does)) return { verdict: "wrong", level };
  if (level < WEAK_FROM) return { verdict: "dead", level };
  if (level < WORKS_FROM) return { verdict: "weak", level };
  return level >= STRONG_FROM ? { verdict: "strong", level } : null;
}

function isOtherWay(should: Doing, does: Doing): boolean {
  const ways = [should.doing, does.doing];
  return ways.includes("forward") && ways.includes("reverse");
}

const WORST = ["wrong", "strong", "dead", "weak"] as const;

/**
 * What goes dead, weak or odd with some faults in, by solving every distinct position. Each part once for each verdict, in
 * the position where it is worst; the odd first, then the dead, then the weak.
 */
export function effectsOf(circuit: Circuit, faults: readonly Fault[]): readonly Effect[] {
  const healthy = healthyOf(circuit);
  const rig = new Rig(circuit, faults);
  const found = new Map<string, Effect>();
  for (const good of healthy.moments) {
    reach(rig, good.condition);
    for (const change of changesIn(circuit, healthy, good, momentOf(rig, good.condition))) {
      const key = `${change.part} ${change.verdict}`;
      const known = found.get(key);
      const isWorse = !known || worse(change, known);
      found.set(key, { ...(isWorse ? change : known), positions: (known?.positions ?? 0) + 1 });
    }
  }
  const rank = ({ verdict }: Effect): number => WORST.indexOf(verdict);
  return [...found.values()].sort((one, other) => rank(one) - rank(other));
}

function worse(one: Change, other: Change): boolean {
  const isMore = one.verdict === "wrong" || one.verdict === "strong";
  return isMore ? one.level > other.level + 1e-6 : one.level < other.level - 1e-6;
}
