import { describe, expect, test } from "vitest";
import { liveNow } from "../../core/edit/liveNow.ts";
import { played } from "../../core/lesson/play.ts";
import { liveOf } from "../../core/live/live.ts";
import { atScene, type Desk, deskFor, later, lengthsOf, pressed, sceneShown } from "../../renderer/takehome/desk.ts";
import { drawnInFull } from "../../renderer/takehome/full.ts";
import { sample } from "../samples/onTheBench.ts";

const VENTS = sample("1-roof-vents");
const BOARD = sample("10-power-and-ground");
const open = (circuit = VENTS): Desk => deskFor(circuit, { palette: "light", isStill: false });

describe("a take-home page", () => {
  test("throws and lets go by presses, and says what changed", () => {
    const on = pressed(open(), "S1", "on");
    const held = pressed(on, "S5", "open");
    expect(held.bench.condition).toEqual({ set: { S1: "on", S5: "open" } });
    expect(held.said).toContain("M3 runs forward");
    expect(liveNow(held.bench).shown.wires).toEqual(liveOf(VENTS, held.bench.condition).wires);
    expect(pressed(held, "S5", "open").bench.condition).toEqual({ set: { S1: "on" } });
    expect(pressed(held, "S9", "open")).toBe(held);
  });

  test("turns to the page on which a scene is to be seen, and says its name", () => {
    const desk = atScene(atScene(open(), 1), 2);
    expect(desk.page).toBe("p2");
    expect(desk.said).toMatch(/^Middle vent opens\. /);
    expect(sceneShown(desk)?.label).toBe("Middle vent opens");
    expect(sceneShown(pressed(desk, "S1", "off"))).toBeNull();
  });

  test("plays its scenes as time passes, and stands still at the end", () => {
    const lengths = lengthsOf(open());
    const begun = { ...open(), play: played(open().play, lengths) };
    const second = later(begun, lengths[0]! + 0.1);
    expect([second.play.at, second.bench.condition]).toEqual([1, VENTS.scenes[1]!.condition]);
    const end = later(second, 10_000);
    expect([end.play.at, end.play.isPlaying]).toEqual([VENTS.scenes.length - 1, false]);
  });

  test("draws in full what changed where that is asked for, else what a scene is about, else all", () => {
    const held = pressed(pressed(open(), "S1", "on"), "S5", "open");
    expect(drawnInFull(held)).toBeNull();
    const changed = drawnInFull({ ...held, showsChanged: true })!;
    expect([changed.has("M3"), changed.has("M1")]).toEqual([true, false]);
    const left = atScene(open(BOARD), 1);
    for (const showsChanged of [false, true]) {
      const focus = drawnInFull({ ...left, showsChanged })!;
      expect([focus.has("W5"), focus.has("W9")]).toEqual([true, false]);
    }
  });
});
