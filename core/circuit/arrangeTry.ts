import type { Lots } from "../base/seed.ts";
import type { ArrangeCost, Moved } from "./arrangeCost.ts";
import type { Spread } from "./arrangeSpread.ts";

/** Most parts that move as one branch. */
const BRANCH = 5;

/** One try by lot, mostly a part into line with another; none where the lot falls on what would change nothing. */
export function tryOf(cost: ArrangeCost, free: readonly number[], lots: Lots): readonly Moved[] {
  const one = <T>(list: readonly T[]): T | undefined => list[Math.floor(lots() * list.length)];
  const index = one(free)!;
  const from = cost.spread[index]!;
  const lot = lots();
  if (lot < 0.38) return inLine(cost, index, one(cost.wiresOf(index)), lots);
  if (lot < 0.5) {
    const [move] = inLine(cost, index, one(cost.wiresOf(index)), lots);
    return move ? alongWith(cost, move, lots() < 0.7 ? "ground" : "feeds") : [];
  }
  if (lot < 0.62) {
    const other = one(free)!;
    return other === index ? [] : exchanged(cost, index, other);
  }
  if (lot < 0.74) {
    const pose = one(from.node.poses)!;
    return pose === from.pose ? [] : [{ index, to: { ...from, pose } }];
  }
  if (lot < 0.77) return pushedAll(cost, free, from, lots);
  const far = lot < 0.9 ? 6 : 30;
  const [dx, dy] = [step(lots, far), step(lots, far)];
  return [{ index, to: { ...from, x: from.x + dx, y: from.y + dy } }];
}

function step(lots: Lots, far: number): number {
  return Math.round((lots() * 2 - 1) * far);
}

/** The part so that one of its wires runs straight; by lot along with it to the other side of the wire's far end. */
function inLine(cost: ArrangeCost, index: number, wire: number | undefined, lots: Lots): readonly Moved[] {
  if (wire === undefined) return [];
  const { own, far } = cost.endsOf(wire, index);
  const from = cost.spread[index]!;
  const isLevel = own.side === "left" || own.side === "right";
  const near = 3 + Math.floor(lots() * 12);
  const isMovedAlong = lots() < 0.4;
  if (isLevel) {
    const along = isMovedAlong ? far.x + (own.side === "left" ? near : -near) - own.x : 0;
    return [{ index, to: { ...from, x: from.x + along, y: from.y + far.y - own.y } }];
  }
  const along = isMovedAlong ? far.y + (own.side === "up" ? near : -near) - own.y : 0;
  return [{ index, to: { ...from, x: from.x + far.x - own.x, y: from.y + along } }];
}

/** A part with what hangs from it, all by as much: a branch stays straight while it moves. */
function alongWith(cost: ArrangeCost, { index, to }: Moved, way: "ground" | "feeds"): readonly Moved[] {
  const from = cost.spread[index]!;
  return cost.hangingFrom(index, way, BRANCH).map((each) => {
    const standing = cost.spread[each]!;
    return { index: each, to: { ...standing, x: standing.x + to.x - from.x, y: standing.y + to.y - from.y } };
  });
}

/** Two parts in each other's places, middle on middle. */
function exchanged(cost: ArrangeCost, one: number, other: number): readonly Moved[] {
  const [a, b] = [cost.spread[one]!, cost.spread[other]!];
  const dx = Math.round((a.pose.width - b.pose.width) / 2);
  const dy = Math.round((a.pose.height - b.pose.height) / 2);
  return [
    { index: one, to: { ...a, x: b.x - dx, y: b.y - dy } },
    { index: other, to: { ...b, x: a.x + dx, y: a.y + dy } },
  ];
}

/** All parts on one side of this one, itself among them, a few units to one side: room is made, or given up. */
function pushedAll(cost: ArrangeCost, free: readonly number[], from: Spread, lots: Lots): readonly Moved[] {
  const by = step(lots, 4);
  const isAcross = lots() < 0.5;
  return free.flatMap((index) => {
    const each = cost.spread[index]!;
    if (isAcross) return each.x >= from.x ? [{ index, to: { ...each, x: each.x + by } }] : [];
    return each.y >= from.y ? [{ index, to: { ...each, y: each.y + by } }] : [];
  });
}
