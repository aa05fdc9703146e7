import { expect, test } from "vitest";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { pictureOf } from "../../renderer/workers/picture.ts";
import { gridCircuit } from "../bench/window/gridCircuit.ts";
import { VENTS } from "../edit/given.ts";

const elements = (svg: string): number => [...svg.matchAll(/<(?:path|circle|rect)/g)].length;

test("a small picture says of nothing what it is", () => {
  expect(pictureOf(VENTS).light).not.toMatch(/<title>|data-of/);
});

test("what would be dust is left out of a wide drawing, and of no other", () => {
  const close = gridCircuit(200);
  const apart = Object.entries(close.placement.parts).map(([id, { x, y, ...at }]) => [
    id,
    { ...at, x: 4 * x, y: 3 * y },
  ]);
  const wide: Circuit = { ...close, placement: { ...close.placement, parts: Object.fromEntries(apart) } };
  const [all, seen] = [close, wide].map((circuit) => elements(pictureOf(circuit).dark));
  expect(all).toBeGreaterThan(4 * close.wires.length);
  expect(seen).toBeGreaterThan(close.wires.length);
  expect(seen).toBeLessThan(all! / 2);
});
