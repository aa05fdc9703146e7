import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { routeWires } from "../../core/circuit/route.ts";
import type { RouteEnd } from "../../core/circuit/routeEnds.ts";
import type { RouteMemory } from "../../core/circuit/routeMemory.ts";
import type { RoutePage } from "../../core/circuit/routePage.ts";
import type { Bounds } from "../../core/drawing/measure.ts";
import type { Side } from "../../core/parts/kind.ts";
import { trials } from "../long.ts";

const BOUNDS: Bounds = { left: 1, top: 1, right: 70, bottom: 56 };
const SIDES: readonly Side[] = ["up", "down", "left", "right"];

/** A drawing to be edited: where parts stand, which of their sides wires join, and words in between. */
interface Plan {
  readonly parts: readonly (readonly [number, number])[];
  readonly wires: readonly WirePlan[];
  readonly words: readonly (readonly [number, number])[];
}

interface WirePlan {
  readonly id: string;
  readonly ends: readonly [EndPlan, EndPlan];
  readonly bends: readonly (readonly [number, number])[];
}

type EndPlan = readonly [part: number, side: number];

const at = fc.tuple(fc.integer({ min: 3, max: 62 }), fc.integer({ min: 3, max: 46 }));
const end = fc.tuple(fc.nat(99), fc.nat(3));
const ends = fc.tuple(end, end);
const edit = fc.oneof(
  fc.record({ is: fc.constant("move" as const), which: fc.nat(99), to: at }),
  fc.record({ is: fc.constant("draw" as const), which: fc.nat(99), ends }),
  fc.record({ is: fc.constant("cut" as const), which: fc.nat(99) }),
  fc.record({ is: fc.constant("bend" as const), which: fc.nat(99), bends: fc.array(at, { maxLength: 2 }) }),
  fc.record({ is: fc.constant("write" as const), which: fc.nat(99), to: at }),
  fc.record({ is: fc.constant("swap" as const), which: fc.nat(99), with: fc.nat(99) }),
);
type Edit = typeof edit extends fc.Arbitrary<infer T> ? T : never;

function edited(plan: Plan, change: Edit, count: number): Plan {
  const { parts, wires, words } = plan;
  const set = <T>(list: readonly T[], made: (before: T) => T): readonly T[] =>
    list.map((each, index) => (index === change.which % list.length ? made(each) : each));
  switch (change.is) {
    case "move":
      return { ...plan, parts: set(parts, () => change.to) };
    case "draw":
      return { ...plan, wires: wires.toSpliced(change.which, 0, { id: `N${count}`, ends: change.ends, bends: [] }) };
    case "cut":
      return { ...plan, wires: wires.toSpliced(change.which % Math.max(1, wires.length), 1) };
    case "bend":
      return { ...plan, wires: set(wires, (wire) => ({ ...wire, bends: change.bends })) };
    case "write":
      return { ...plan, words: set(words, () => change.to) };
    case "swap": {
      const [one, other] = [change.which % Math.max(1, wires.length), change.with % Math.max(1, wires.length)];
      return { ...plan, wires: wires.map((wire, i) => (i === one ? wires[other]! : i === other ? wires[one]! : wire)) };
    }
  }
}

function pageOf({ parts, wires, words }: Plan, bounds = BOUNDS): RoutePage {
  const endAt = ([part, number]: EndPlan): RouteEnd => {
    const body = part % parts.length;
    const [x, y] = parts[body]!;
    const side = SIDES[number]!;
    const spots = { up: [x + 2, y], down: [x + 2, y + 6], left: [x, y + 3], right: [x + 4, y + 3] } as const;
    return { spot: { x: spots[side][0], y: spots[side][1] }, side, body };
  };
  return {
    bounds,
    bodies: parts.map(([x, y]) => ({ left: x, top: y, right: x + 4, bottom: y + 6 })),
    words: words.map(([x, y]) => ({ left: x, top: y, right: x + 6, bottom: y + 1.3 })),
    wires: wires.map(({ id, ends: [from, to], bends }) => ({
      id,
      from: endAt(from),
      to: endAt(to),
      ...(bends.length > 0 && { bends }),
    })),
  };
}

describe("wires laid again", () => {
  test("after any edits they lie as they would, had they been laid from nothing", () => {
    const plans = fc.record({
      parts: fc.array(at, { minLength: 2, maxLength: 9 }),
      wires: fc.array(ends, { maxLength: 14 }),
      words: fc.array(at, { maxLength: 4 }),
    });
    fc.assert(
      fc.property(plans, fc.array(edit, { minLength: 1, maxLength: 8 }), (begun, edits) => {
        let plan: Plan = { ...begun, wires: begun.wires.map((each, i) => ({ id: `W${i}`, ends: each, bends: [] })) };
        let memory: RouteMemory = routeWires(pageOf(plan)).memory;
        edits.forEach((change, count) => {
          plan = edited(plan, change, count);
          const again = routeWires(pageOf(plan), memory);
          expect([...again.corners]).toEqual([...routeWires(pageOf(plan)).corners]);
          memory = again.memory;
        });
      }),
      { numRuns: trials(20, 300), seed: 11 },
    );
  });

  test("what a wire left is free for others, though nothing was edited near them", () => {
    const wire = (id: string, from: EndPlan, to: EndPlan): WirePlan => ({ id, ends: [from, to], bends: [] });
    const [up, down, left, right] = [0, 1, 2, 3];
    const before: Plan = {
      parts: [
        [49, 61],
        [18, 62],
        [11, 34],
      ],
      wires: [
        wire("W2", [0, down], [1, right]),
        wire("W1", [2, right], [1, right]),
        wire("W4", [0, up], [0, left]),
        wire("W10", [2, up], [1, right]),
        wire("W13", [0, right], [1, right]),
      ],
      words: [],
    };
    const after = edited(before, { is: "bend", which: 2, bends: [[68, 24]] }, 0);
    const bounds = { left: 1, top: 1, right: 87, bottom: 73 };
    const { memory } = routeWires(pageOf(before, bounds));
    const again = routeWires(pageOf(after, bounds), memory);
    expect([...again.corners]).toEqual([...routeWires(pageOf(after, bounds)).corners]);
  });

  test("wires far from what was edited keep their corners: the same objects", () => {
    const parts = Array.from({ length: 12 }, (_, i) => [4 + 16 * (i % 4), 4 + 18 * Math.floor(i / 4)] as const);
    const wires = parts.flatMap((_, i): readonly WirePlan[] =>
      i % 4 === 3 ? [] : [{ id: `W${i}`, ends: [[i, 3] as const, [i + 1, 2] as const], bends: [] }],
    );
    const before = routeWires(pageOf({ parts, wires, words: [] }));
    const moved = parts.map((spot, i) => (i === 0 ? ([5, 6] as const) : spot));
    const after = routeWires(pageOf({ parts: moved, wires, words: [] }), before.memory);
    const kept = wires.filter(({ id }) => after.corners.get(id) === before.corners.get(id)).map(({ id }) => id);
    expect(kept).toEqual(wires.map(({ id }) => id).filter((id) => id !== "W0"));
  });
});
