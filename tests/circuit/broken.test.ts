import { describe, expect, test } from "vitest";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { sheetOf } from "../../core/circuit/sheet.ts";
import type { Mark } from "../../core/drawing/mark.ts";
import type { Fault } from "../../core/live/fault.ts";
import { type Live, liveOf } from "../../core/live/live.ts";
import { sample } from "../samples/onTheBench.ts";
import { linesIn } from "./sheetMarks.ts";

const HORNS = sample("4-horn");
/** A heavy wire across the battery. */
const SHORTED: Circuit = {
  ...HORNS,
  wires: [...HORNS.wires, { id: "W99", from: "G1.+", to: "GP1.stud", mm2: 16, metres: 0.1 }],
};
const PRESSED = { set: { S1: "pressed" } };

function drawn(
  circuit: Circuit,
  faults: readonly Fault[] = [],
  condition = {},
): { readonly live: Live; readonly marks: readonly Mark[] } {
  const live = liveOf(circuit, condition, faults);
  const sheet = sheetOf({ circuit, page: "p1", live });
  if (!sheet.ok) throw new Error(sheet.refusal.code);
  return { live, marks: sheet.value.marks };
}

/** Strokes beside the gap of a wire. */
const gapStrokes = (marks: readonly Mark[], wire: string): number =>
  linesIn(marks).filter(({ of, role }) => of === wire && role === "symbol").length;

describe("the gap of a broken wire", () => {
  test("is drawn where the conductor is open, also where both its ends are in one state", () => {
    const { live, marks } = drawn(HORNS, [{ target: "W16", mode: "open" }]);
    expect(live.wires.get("W16")).toMatchObject({
      isBroken: true,
      state: ["grounded-through-load", "grounded-through-load"],
    });
    expect(gapStrokes(marks, "W16")).toBe(2);
  });

  test("is not drawn in a sound wire whose ends differ: in a dead short it carries the most of all", () => {
    const { live, marks } = drawn(SHORTED);
    const ground = live.wires.get("W2")!;
    expect(ground.state).toEqual(["grounded", "clash"]);
    expect(Math.abs(ground.amps)).toBeGreaterThan(500);
    expect(ground.isBroken).toBe(false);
    expect(gapStrokes(marks, "W2")).toBe(0);
    const roles = linesIn(marks).flatMap(({ of, role }) => (of === "W2" && role.startsWith("wire-") ? [role] : []));
    expect(new Set(roles)).toEqual(new Set(["wire-grounded", "wire-clash"]));
  });

  test("is in no wire of a whole circuit, whatever is pressed", () => {
    const { live } = drawn(HORNS, [], PRESSED);
    expect([...live.wires.values()].filter(({ isBroken }) => isBroken)).toEqual([]);
  });
});

describe("always fed", () => {
  test("is said of powered points and wires alone", () => {
    for (const circuit of [HORNS, SHORTED]) {
      const { live } = drawn(circuit);
      const fed = [...live.wires].filter(([, { alwaysFed }]) => alwaysFed);
      expect(fed.flatMap(([, { state }]) => state).filter((state) => state !== "powered")).toEqual([]);
      expect(fed.some(([id]) => id === "W1")).toBe(circuit === HORNS);
    }
  });
});
