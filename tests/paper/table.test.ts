import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { positionTable } from "../../core/diagnose/tableReading.ts";
import { tableSheets } from "../../core/paper/table.ts";
import { sample } from "../samples/onTheBench.ts";
import { tables } from "./arbitraries.ts";
import { COMPLAINT, tableCell, VENT_CIRCUIT, VENT_TABLE } from "./fixtures.ts";
import { allWords, faultsOf, wordsIn } from "./geometry.ts";

const SAMPLES = fc.sample(tables, { numRuns: 30, seed: 600 }).map((input) => ({ input, sheets: tableSheets(input) }));
const VENT = { circuit: VENT_CIRCUIT, table: VENT_TABLE, complaintLabel: COMPLAINT, restVolts: 12.6 };

/** Words over the columns of a sheet, each once. */
const titlesOf = (sheet: ReturnType<typeof tableSheets>[number]) => wordsIn(sheet, "position title");

describe("the pictured position table", () => {
  const [sheet, ...more] = tableSheets(VENT);

  test("stands on one sheet, without a fault", () => {
    expect(more).toEqual([]);
    expect(faultsOf(sheet!)).toEqual([]);
  });

  test("has a field for the own reading in every cell", () => {
    const fields = sheet!.marks.filter(
      (mark) => mark.mark === "box" && mark.role === "field" && mark.width < 6 && mark.width > 5,
    );
    expect(fields.length).toBe(5 * 10);
  });

  test("gives volts to one decimal from 1 V up and to two below, none as 0.0", () => {
    expect(
      wordsIn(sheet!, "position")
        .slice(0, 6)
        .map((words) => words.split(" ")[0]),
    ).toEqual(["0.0", "0.0", "0.06", "0.32", "12.1", "0.32"]);
  });

  test("marks the two columns that another position reads the same as", () => {
    expect(titlesOf(sheet!).filter((title) => title.includes("*")).length).toBe(2);
    expect(allWords(sheet!)).toMatch(/\* Key OFF .*lock-out ON/);
  });
});

describe("the drift rule", () => {
  test("a pin that reaches neither post is never a number and lights no lamp", () => {
    for (const { input, sheets } of SAMPLES) {
      if (input.table.rows[0]!.cells[0]!.state !== "floating") continue;
      for (const words of sheets.flatMap((sheet) => wordsIn(sheet, "position"))) expect(words).not.toMatch(/\d/);
    }
    const rays = (state: "f" | "p12.6") =>
      tableSheets({
        circuit: VENT_CIRCUIT,
        table: {
          ...VENT_TABLE,
          rows: VENT_TABLE.rows.map((row) => ({ ...row, cells: row.cells.map(() => tableCell(state)) })),
        },
      })
        .flatMap((sheet) => sheet.cells.filter(({ name }) => name === "position"))
        .flatMap(({ marks }) => marks.filter((mark) => mark.mark === "line" && mark.role === "symbol-fine")).length;
    expect(rays("f")).toBe(0);
    expect(rays("p12.6")).toBe(5 * 10 * 8);
  });

  test("a floating cell drifts even where volts are given for it", () => {
    const rows = VENT_TABLE.rows.map((row) => ({
      ...row,
      cells: row.cells.map(() => ({ ...tableCell("f"), volts: 0.2 })),
    }));
    const [sheet] = tableSheets({ circuit: VENT_CIRCUIT, table: { ...VENT_TABLE, rows } });
    for (const words of wordsIn(sheet!, "position")) expect(words).not.toMatch(/\d/);
  });
});

describe("the cutting of any table into sheets", () => {
  test("parts the positions with the plug on from those with it off where they do not go side by side", () => {
    const gate = sample("9-liftgate");
    const sheets = tableSheets({ circuit: gate, table: positionTable(gate, "X1") });
    expect(sheets.map((sheet) => titlesOf(sheet).length)).toEqual([7, 4]);
    expect(allWords(sheets[0]!)).not.toContain("plug X1 off");
    expect(allWords(sheets[1]!)).not.toContain("plug X1 on");
  });

  test("keeps all type inside its cell, off every edge, and off the foot", () => {
    for (const { sheets } of SAMPLES) expect(sheets.flatMap(faultsOf)).toEqual([]);
  });

  test("shows every pin with every position once", () => {
    for (const { input, sheets } of SAMPLES) {
      const cells = sheets.reduce((sum, sheet) => sum + wordsIn(sheet, "position").length, 0);
      expect(cells).toBe(input.table.rows.length * input.table.columns.length);
      for (const sheet of sheets)
        expect(wordsIn(sheet, "position").length).toBe(wordsIn(sheet, "pin").length * titlesOf(sheet).length);
    }
  });

  test("has at most ten positions side by side, and repeats their heads wherever it has rows", () => {
    for (const { sheets } of SAMPLES) {
      for (const sheet of sheets) {
        expect(titlesOf(sheet).length).toBeLessThanOrEqual(10);
        if (wordsIn(sheet, "pin").length > 0) expect(titlesOf(sheet).length).toBeGreaterThan(0);
      }
    }
  });

  test("says on every sheet with rows what its signs mean", () => {
    for (const { sheets } of SAMPLES) {
      for (const sheet of sheets)
        expect(wordsIn(sheet, "legend").length).toBe(wordsIn(sheet, "pin").length > 0 ? 1 : 0);
    }
  });

  test("frames the cautions on the first sheet alone, and says so at the foot of the others", () => {
    for (const { sheets } of SAMPLES) {
      expect(sheets.map((sheet) => wordsIn(sheet, "caution word").length)).toEqual([
        1,
        ...sheets.slice(1).map(() => 0),
      ]);
      for (const sheet of sheets.slice(1)) expect(wordsIn(sheet, "foot")[0]).toMatch(/sheet 1/);
    }
  });

  test("the same table gives the same sheets, mark for mark", () => {
    expect(tableSheets(VENT)).toEqual(tableSheets(structuredClone(VENT)));
  });
});
