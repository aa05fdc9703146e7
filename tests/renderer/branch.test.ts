import { describe, expect, test } from "vitest";
import { PLAIN_WEIGHING } from "../../core/diagnose/weighing.ts";
import { chooseComplaint } from "../../core/edit/commands/chooseComplaint.ts";
import { plantFault } from "../../core/edit/commands/plantFault.ts";
import { setUp } from "../../core/edit/commands/setUp.ts";
import type { BranchControl, BranchPart, BranchRow, BranchWire } from "../../core/live/branch.ts";
import { aboutPart } from "../../core/paper/straightWords.ts";
import { branchNow, loadNow, loadsListed, workingFor } from "../../renderer/branch/branchNow.ts";
import { controlText, dropText, standingText, terminalsText, wireAmpsText } from "../../renderer/branch/branchWords.ts";
import type { Action } from "../../renderer/state/action.ts";
import { pdfArgument, sheetsWanted } from "../../renderer/state/printing.ts";
import { FIRST_SETTINGS } from "../../schemas/settings.ts";
import { SMALL, VENTS } from "../edit/given.ts";
import { openIn, stateAfter } from "./stage.ts";

const OPENING: Action = { do: "make", command: (bench) => setUp(bench, { set: { S1: "on", S5: "open" } }) };
const COMPLAINT: Action = { do: "make", command: (bench) => chooseComplaint(bench, "middle-open-own") };
const M3: Action = { do: "print-what", sheets: { load: "M3" } };

function rowOf(state: ReturnType<typeof stateAfter>, name: string): BranchRow {
  const row = branchNow(state)?.lines[0]?.rows.find((each) => each.name === name);
  if (!row) throw new Error(`${name} is not in the branch`);
  return row;
}

describe("the branch in the side panel", () => {
  test("follows the load picked, else the complaint's, else the first", () => {
    expect(loadNow(stateAfter(VENTS))).toBe("E1");
    expect(loadNow(stateAfter(VENTS, COMPLAINT))).toBe("M3");
    expect(loadNow(stateAfter(VENTS, COMPLAINT, { do: "print-what", sheets: { load: "M1" } }))).toBe("M1");
    expect(loadNow(stateAfter(VENTS, { do: "print-what", sheets: { load: "M99" } }))).toBe("E1");
  });

  test("lists what is chosen on the drawing first, where it is a load", () => {
    expect(loadsListed(VENTS, "M4")[0]).toBe("M4");
    expect(loadsListed(VENTS, "M4")).toHaveLength(loadsListed(VENTS, null).length);
    expect(loadsListed(VENTS, "F1")).toEqual(loadsListed(VENTS, null));
  });

  test("is null where the load carries no current, and there with it; the same object while nothing changed", () => {
    expect(branchNow(stateAfter(VENTS, M3))).toBeNull();
    const state = stateAfter(VENTS, M3, OPENING);
    expect(branchNow(state)?.amps).toBeCloseTo(3, 1);
    expect(branchNow(state)).toBe(branchNow(state));
  });

  test("shows the faults where the drawing shows them, in the same rows", () => {
    const cut: Action = { do: "make", command: (bench) => plantFault(bench, "W16:open") };
    const good = branchNow(stateAfter(VENTS, M3, OPENING));
    const faulty = stateAfter(VENTS, M3, OPENING, cut);
    expect(branchNow(faulty)?.lines[0]?.rows.map(({ id }) => id)).toEqual(good?.lines[0]?.rows.map(({ id }) => id));
    expect(branchNow(faulty)?.amps).toBeLessThan(0.001);
    expect(wireAmpsText(rowOf(faulty, "W16") as BranchWire)).toBe("no current");
  });

  test("offers the complaint's position, else the first check in which the load works, else none", () => {
    expect(workingFor(VENTS, "M3", "middle-close-own")?.condition).toEqual({ set: { S1: "on", S5: "close" } });
    expect(workingFor(VENTS, "M3", "lock-out-lamp")?.label).toBe("Middle vent opens from its own switch");
    expect(workingFor({ ...SMALL, checks: [], scenes: [] }, "M1", null)).toBeNull();
  });
});

describe("words of a branch", () => {
  const state = stateAfter(VENTS, M3, OPENING);

  test("tell what a part is, where it stands, and what is lost over it", () => {
    expect(aboutPart(VENTS, "F4")).toBe("Own switches 25\u00A0A");
    const own = rowOf(state, "S5") as BranchPart;
    expect([terminalsText(VENTS, own), standingText(own), dropText(own)]).toEqual([
      "6 to 4",
      "held open",
      "0.06\u00A0V",
    ]);
    expect(standingText(rowOf(state, "K1") as BranchPart)).toBe("pulled in");
    expect(terminalsText(VENTS, rowOf(state, "SP1") as BranchPart)).toBe("");
  });

  test("say which wire carries more than the load's amps", () => {
    expect(wireAmpsText(rowOf(state, "W1") as BranchWire)).toBe("3.1\u00A0A, shared");
    expect(wireAmpsText(rowOf(state, "W16") as BranchWire)).toBe("");
  });

  test("say how a coil stands, and what an input must see", () => {
    const [coil] = branchNow(state)?.controls ?? [];
    expect(controlText(coil!)).toBe("Coil pulled in, 139\u00A0mA");
    const input: BranchControl = { ...coil!, sort: "input", what: "rain", wanted: "high" };
    expect(controlText(input)).toBe("Input rain must be high: powered");
  });
});

describe("a branch to print", () => {
  test("is of the same load, in the preview and for the host", () => {
    const { desk, printing } = openIn(stateAfter(VENTS, M3, { do: "print-what", sheets: { what: "straight" } }));
    expect(sheetsWanted(desk.bench, printing, FIRST_SETTINGS, PLAIN_WEIGHING)).toMatchObject({
      what: "straight",
      load: "M3",
    });
    expect(pdfArgument(desk.bench, printing, FIRST_SETTINGS, PLAIN_WEIGHING)).toMatchObject({
      what: "straight",
      load: "M3",
    });
  });
});
