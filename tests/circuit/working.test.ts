import { describe, expect, test } from "vitest";
import type { Circuit, Condition } from "../../core/circuit/circuit.ts";
import { sheetOf } from "../../core/circuit/sheet.ts";
import { overlaps } from "../../core/circuit/sheetRoom.ts";
import { boundsOf } from "../../core/drawing/measure.ts";
import type { Fault } from "../../core/live/fault.ts";
import { liveOf } from "../../core/live/live.ts";
import { sample } from "../samples/onTheBench.ts";
import { linesIn, textsIn } from "./sheetMarks.ts";

function drawn(circuit: Circuit, page: string, condition: Condition, faults: readonly Fault[] = [], zoom?: number) {
  const live = liveOf(circuit, condition, faults);
  const sheet = sheetOf({ circuit, page, live, ...(zoom !== undefined && { zoom }) });
  if (!sheet.ok) throw new Error(sheet.refusal.code);
  const { marks } = sheet.value;
  const wordsOf = (part: string) => textsIn(marks).flatMap((mark) => (mark.of === part ? [mark.text] : []));
  const raysOf = (part: string) => linesIn(marks).filter(({ of, role }) => of === part && role === "ray");
  return { marks, wordsOf, raysOf };
}

const VENTS = sample("1-roof-vents");
const LIGHTS = sample("2-exterior-lights");
const HELD = { set: { S1: "on", S5: "open" } };

describe("what works", () => {
  test.each([undefined, 1])("is said beside it: which way a motor runs, or that it is held still (zoom %s)", (zoom) => {
    expect(drawn(VENTS, "p2", HELD, [], zoom).wordsOf("M3")).toContain("runs forward");
    const closing = { set: { S1: "on", S5: "close" } };
    expect(drawn(VENTS, "p2", closing, [], zoom).wordsOf("M3")).toContain("runs in reverse");
    expect(drawn(VENTS, "p2", HELD, [{ target: "M3", mode: "seized" }], zoom).wordsOf("M3")).toContain("held still");
  });

  test("has no word while it is off, and a lamp no rays", () => {
    for (const motor of ["M1", "M2", "M3", "M4"]) {
      expect(drawn(VENTS, "p2", {}).wordsOf(motor).join(" ")).not.toMatch(/runs|held/);
    }
    const off = drawn(LIGHTS, "p2", {});
    expect(off.wordsOf("E3")).not.toContain("on");
    const lit = drawn(LIGHTS, "p2", { set: { S1: "parking" } });
    expect(lit.wordsOf("E3")).toContain("on");
    expect(off.raysOf("E3")).toEqual([]);
    expect(lit.raysOf("E3").length).toBeGreaterThanOrEqual(4);
    const texts = textsIn(lit.marks).map(boundsOf);
    expect(lit.raysOf("E3").filter((ray) => texts.some((box) => overlaps(box, boundsOf(ray))))).toEqual([]);
  });
});
