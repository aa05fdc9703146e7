import { describe, expect, test } from "vitest";
import { changedBetween } from "../../core/lesson/changed.ts";
import { darkMoment, flashing, flashSeconds, isLit, MOST_FLASHES } from "../../core/lesson/flash.ts";
import { inFocus, SCENE_SECONDS, secondsOf } from "../../core/lesson/scene.ts";

import { sample, stand } from "../samples/onTheBench.ts";

const VENTS = sample("1-roof-vents");
const TRAILER = sample("6-truck-trailer");

describe("the focus of a scene", () => {
  test("is its parts and the wires between them, told by the cavities they end on too", () => {
    const shown = inFocus(VENTS, { label: "", condition: {}, focus: ["S5", "SP1"] })!;
    const between = VENTS.wires.filter(({ id }) => shown.has(id)).map(({ from, to }) => [from, to].toSorted());
    expect(between).toEqual([["SP1.3", "X5-6"]]);
    expect([...shown].slice(0, 2)).toEqual(["S5", "SP1"]);
  });

  test("is everything where a scene names none, and a scene stands as long as it says", () => {
    expect(inFocus(VENTS, VENTS.scenes[0]!)).toBeNull();
    expect(secondsOf({ label: "", condition: {} })).toBe(SCENE_SECONDS);
    expect(secondsOf({ label: "", condition: {}, seconds: 3 })).toBe(3);
  });
});

describe("what changed", () => {
  const at = (condition: string) => stand(VENTS, condition);

  test("is nothing between a state and itself", () => {
    expect([...changedBetween(at("S1=on"), at("S1=on"), 12)]).toEqual([]);
  });

  test("by a throw is the branch it throws, and no other motor", () => {
    const changed = changedBetween(at("S1=on"), at("S1=on,S5=open"), 12);
    expect(changed.has("S5") && changed.has("M3")).toBe(true);
    for (const other of ["M1", "M2", "M4", "S3", "K1"]) expect(changed.has(other), other).toBe(false);
    const wires = VENTS.wires.filter(({ id }) => changed.has(id));
    expect(wires.length).toBeGreaterThan(2);
    expect(wires.length).toBeLessThan(VENTS.wires.length / 2);
  });

  test("counts a plug that is pulled, and is the same both ways", () => {
    const [home, apart] = [at("S1=on,S5=open"), at("S1=on,S5=open,apart:X7")];
    const changed = changedBetween(home, apart, 12);
    expect(changed.has("X7")).toBe(true);
    expect([...changedBetween(apart, home, 12)].toSorted()).toEqual([...changed].toSorted());
  });
});

describe("a flasher", () => {
  const lit = stand(TRAILER, "S1=on,S2=left");

  test("is dark between two flashes, and so is what it feeds and nothing else", () => {
    expect(flashing(lit)).toEqual(["K1"]);
    const dark = darkMoment(TRAILER, lit, { condition: {}, states: {} })!;
    const lamps = [...lit.parts].filter(([id, { doing }]) => doing === "on" && id !== "K1").map(([id]) => id);
    const out = lamps.filter((id) => dark.parts.get(id)!.doing === "off");
    expect(out.length).toBeGreaterThan(1);
    const other = stand(TRAILER, "S1=on");
    for (const id of out) expect(other.parts.get(id)!.doing, id).toBe("off");
  });

  test("has no dark moment where nothing flashes", () => {
    expect(darkMoment(TRAILER, stand(TRAILER, "S1=on"), { condition: {}, states: {} })).toBeNull();
  });

  test("never flashes more than three times in any second, and not at all where nothing may move", () => {
    for (const wanted of [0.5, 1.5, 3, 8, 100]) expect(1 / flashSeconds(wanted)).toBeLessThanOrEqual(MOST_FLASHES);
    for (let from = 0; from < 3; from += 0.01) {
      const times = Array.from({ length: 1_000 }, (_, at) => from + at / 1_000);
      const rises = times.filter((time, at) => at > 0 && isLit(time, false) && !isLit(times[at - 1]!, false));
      expect(rises.length).toBeLessThanOrEqual(MOST_FLASHES);
    }
    expect([0, 0.3, 0.5, 0.9].map((time) => isLit(time, true))).toEqual([true, true, true, true]);
  });
});
