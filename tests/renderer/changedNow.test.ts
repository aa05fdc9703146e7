import { describe, expect, test } from "vitest";
import { plantFault } from "../../core/edit/commands/plantFault.ts";
import { setUp } from "../../core/edit/commands/setUp.ts";
import { liveNow } from "../../core/edit/liveNow.ts";
import { inkShare } from "../../renderer/canvas/dimming.ts";
import type { Action } from "../../renderer/state/action.ts";
import { changedSince } from "../../renderer/state/changedNow.ts";
import { sample } from "../samples/onTheBench.ts";
import { openAfter } from "./stage.ts";

const MOTOR = sample("12-reversing-motor");
const scene = (place: number): Action => ({
  do: "make",
  command: (bench) => setUp(bench, MOTOR.scenes[place]!.condition),
});
const full = (...actions: readonly Action[]): readonly string[] | null => {
  const { stoodBefore, desk } = openAfter(MOTOR, ...actions);
  const changed = stoodBefore && changedSince(stoodBefore, liveNow(desk.bench).shown);
  return changed && [...changed].sort();
};

describe("what the last step changed", () => {
  test("is nothing before anything was done", () => {
    expect(openAfter(MOTOR).stoodBefore).toBeNull();
  });

  test("is the switch, the motor and its leads when it is held up, the way back too where it rises by a quarter volt", () => {
    expect(full(scene(1))).toEqual(["M1", "S1", "W11", "W8", "W9"]);
  });

  test("is told from one scene to the next, not from rest", () => {
    expect(full(scene(1), scene(2))).toEqual(["M1", "S1", "W10", "W11", "W8", "W9"]);
    expect(full(scene(1), scene(2), { do: "undo" })).toEqual(full(scene(2), scene(1)));
  });

  test("is what a fault does, when that is put in, and stays while nothing that current feels is done", () => {
    const fault: Action = { do: "make", command: (bench) => plantFault(bench, "W9:open") };
    expect(full(scene(1), fault)).toContain("M1");
    expect(full(scene(1), fault, { do: "hover", thing: null })).toEqual(full(scene(1), fault));
  });

  test("is laid down with all its ink, and everything else with less", () => {
    const line = (of?: string) => ({ mark: "line", spots: [], role: "symbol", ...(of && { of }) }) as const;
    const dimming = { full: new Set(["W8"]), palette: "light" } as const;
    expect(inkShare(line("W8"), dimming)).toBe(1);
    expect(inkShare(line("W4"), null)).toBe(1);
    expect(inkShare(line("W4"), dimming)).toBeLessThan(0.6);
    expect(inkShare(line(), dimming)).toBeLessThan(0.6);
  });
});
