import { describe, expect, test } from "vitest";
import { branchOf } from "../../core/live/branch.ts";
import { budgetOf } from "../../core/live/budget.ts";
import { parseFault } from "../../core/live/fault.ts";
import { budgetSheets } from "../../core/paper/budget.ts";
import { SAMPLE_NAMES, sample } from "../samples/onTheBench.ts";
import { faultsOf, wordsIn } from "./geometry.ts";

function budgetFor(name: string, load: string, fault?: string) {
  const circuit = sample(name);
  const faults =
    fault === undefined ? [] : [parseFault(circuit, fault)].flatMap((each) => (each.ok ? [each.value] : []));
  const branch = branchOf(circuit, { load, faults });
  if (!branch.ok) throw new Error(branch.refusal.code);
  return { circuit, faults, branch: branch.value, budget: budgetOf(circuit, branch.value) };
}

describe("the drop budget", () => {
  test("adds up: what the pieces of a side lose is what the side loses", () => {
    const { budget } = budgetFor("3-starter", "M1");
    for (const { side, goodDrop } of budget.sides) {
      const pieces = budget.rows.filter((row) => row.side === side);
      const sum = pieces.reduce((total, { goodDrop: drop }) => total + (drop ?? 0), 0);
      expect(sum).toBeCloseTo(goodDrop, 6);
    }
  });

  test("is battery volts less what the load has", () => {
    const { budget, branch } = budgetFor("4-horn", "H1");
    const rows = branch.lines[0]!.rows;
    const at = rows.findIndex((row) => row.is === "part" && row.isLoad);
    const across = rows[at]!.entry.goodVolts! - rows[at]!.exit.goodVolts!;
    const battery = rows.find((row) => row.is !== "part" || row.part !== "G1")!.entry.goodVolts!;
    const [feed, back] = budget.sides;
    expect(feed!.goodDrop + back!.goodDrop).toBeCloseTo(battery - across, 6);
  });

  test("puts the piece first that spends most of what it is allowed", () => {
    const { budget } = budgetFor("1-roof-vents", "M3", "X32-2:corroded=3");
    expect(budget.rows[0]).toMatchObject({ name: "X32-2", side: "return" });
    expect(Math.abs(budget.rows[0]!.drop!)).toBeGreaterThan(budget.rows[0]!.allowed.volts);
    const shares = budget.rows.map(({ drop, allowed }) => (drop === null ? -1 : Math.abs(drop) / allowed.volts));
    expect(shares).toEqual(shares.toSorted((one, other) => other - one));
  });

  test("says of a good piece that is over its limit that only more is a fault", () => {
    const over = (name: string, load: string) => {
      const { circuit, budget } = budgetFor(name, load);
      const pieces = [...budget.rows, ...budget.sides].filter(
        ({ goodDrop, allowed }) => Math.abs(goodDrop ?? 0) > allowed.volts,
      );
      const texts = budgetSheets({ circuit, budget }).flatMap(({ marks }) =>
        marks.flatMap((mark) => (mark.mark === "text" && mark.text.startsWith("Drawn so") ? [mark.text] : [])),
      );
      return { names: pieces.map((each) => ("name" in each ? each.name : each.side)), said: new Set(texts).size };
    };
    // In the narrow column the same words break over two lines.
    expect(over("1-roof-vents", "M3")).toEqual({ names: ["W15", "feed", "return"], said: 2 });
    expect(over("4-horn", "H1")).toEqual({ names: [], said: 0 });
  });

  test.each(SAMPLE_NAMES)("of the first load of %s is laid out without a fault, every piece once", (name) => {
    const circuit = sample(name);
    const { budget, faults } = budgetFor(name, circuit.checks[0]!.load);
    const sheets = budgetSheets({ circuit, budget, faults });
    expect(sheets.flatMap(faultsOf)).toEqual([]);
    const rows = sheets.flatMap((sheet) => wordsIn(sheet, "row"));
    expect(rows).toEqual(budget.rows.map((_, index) => String(index + 1)));
  });
});
