import { describe, expect, test } from "vitest";
import { probeOrder } from "../../core/diagnose/order.ts";
import { chooseComplaint } from "../../core/edit/commands/chooseComplaint.ts";
import { removeThings } from "../../core/edit/commands/removeThings.ts";
import { liveNow } from "../../core/edit/liveNow.ts";
import type { Action } from "../../renderer/state/action.ts";
import { liveOnSheet, suspectMarks, suspectOnSheet } from "../../renderer/state/suspectNow.ts";
import { suspectNow, withSuspectNow } from "../../renderer/state/views.ts";
import { sample } from "../samples/onTheBench.ts";
import { openIn, stateAfter } from "./stage.ts";

const vents = sample("1-roof-vents");
const check = vents.checks.find(({ id }) => id === "middle-open-own")!;
const order = probeOrder(vents, { check, word: "dead" });
const BROKEN = "W13:open";

const OPENED: readonly Action[] = [
  { do: "throw", control: "S1", position: "on" },
  { do: "make", command: (bench) => chooseComplaint(bench, check.id) },
  { do: "ordered", answer: { order, states: [], wiggle: null } },
  { do: "open-panel", panel: "suspects" },
];
const shown = stateAfter(vents, ...OPENED, { do: "show-suspect", id: BROKEN });

describe("a suspect on the drawing", () => {
  test("is the likeliest until a row is open, and none while another view is", () => {
    expect(suspectNow(stateAfter(vents, ...OPENED))).toBe(order.suspects[0]);
    expect(suspectNow(shown)?.id).toBe(BROKEN);
    expect(suspectNow(stateAfter(vents, ...OPENED, { do: "open-panel", panel: "list" }))).toBeNull();
  });

  test("shows the wires as they would be with it, and says what that changes; the bench stays as it is", () => {
    const open = openIn(shown);
    expect(open.page).toBe("p2");
    expect(liveOnSheet(open).shown.wires.get("W13")).toMatchObject({ state: ["powered", "floating"], isBroken: true });
    expect(liveNow(open.desk.bench).shown.wires.get("W13")?.isBroken).toBe(false);
    expect(shown.said).toMatch(/^Wires with W13 broken\. 1 wire changed: W13 /);
    expect(open.desk.bench.faults).toEqual([]);
  });

  test("is left by the switch, and by closing its row", () => {
    for (const action of [
      { do: "with-suspect", isWith: false },
      { do: "show-suspect", id: null },
    ] satisfies Action[]) {
      const state = stateAfter(vents, ...OPENED, { do: "show-suspect", id: BROKEN }, action);
      expect(withSuspectNow(state)).toBe(false);
      expect(liveOnSheet(openIn(state)).shown).toBe(liveNow(openIn(state).desk.bench).shown);
    }
  });

  test("that is no more in the circuit breaks nothing", () => {
    const command: Action = { do: "make", command: (bench) => removeThings(bench, ["W13"]) };
    const state = stateAfter(vents, ...OPENED, { do: "show-suspect", id: BROKEN }, command);
    expect(liveOnSheet(openIn(state)).shown.wires.has("W13")).toBe(false);
  });

  test("is marked over all others that are likely", () => {
    const suspects = order.suspects.map((each, index) => ({ ...each, probability: index < 3 ? 0.3 : 0.01 }));
    const marks = suspectMarks(suspects, suspects[7]!);
    expect(marks.map(({ suspect, isShown }) => [suspect.id, isShown])).toEqual([
      ...suspects.slice(0, 3).map(({ id }) => [id, false]),
      [suspects[7]!.id, true],
    ]);
    expect(suspectOnSheet({ ...openIn(shown), suspect: "gone" })).toBe(order.suspects[0]);
  });
});
