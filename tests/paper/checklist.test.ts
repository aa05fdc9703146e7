import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { gridUnitsOf } from "../../core/drawing/scale.ts";
import { checklistSheets } from "../../core/paper/checklist.ts";
import { SHEET, type Sheet } from "../../core/paper/page.ts";
import { PAPERS, placingOn } from "../../core/paper/placing.ts";
import { orders } from "./arbitraries.ts";
import { COMPLAINT, step, VENT_CIRCUIT, VENT_ORDER } from "./fixtures.ts";
import { allWords, faultsOf, millimetreBounds, wordsIn } from "./geometry.ts";

const SAMPLES = fc
  .sample(orders, { numRuns: 40, seed: 20160614 })
  .map((input) => ({ input, sheets: checklistSheets(input) }));
const VENT = { circuit: VENT_CIRCUIT, order: VENT_ORDER, complaintLabel: COMPLAINT, restVolts: 12.6 };

/** Bars and rows of a sheet from the top down, with what else is laid out. */
function bandsOf(sheet: Sheet): readonly { readonly is: string; readonly y: number; readonly words: string }[] {
  const names = ["place letter", "row", "pattern", "sign-off", "column titles", "notes title"];
  return sheet.cells
    .filter(({ name }) => names.includes(name))
    .map(({ name, box, marks }) => ({
      is: name,
      y: box.y,
      words: marks.flatMap((mark) => (mark.mark === "text" ? [mark.text] : [])).join(" "),
    }))
    .sort((one, other) => one.y - other.y);
}

describe("the pictured checklist", () => {
  const sheets = checklistSheets(VENT);

  test("fills two sheets: the places at hand on the first, the joint and the motor on the second", () => {
    expect(sheets.map((sheet) => wordsIn(sheet, "row"))).toEqual([
      ["1", "2", "3", "4", "5"],
      ["6", "7", "8", "9", "10", "11"],
    ]);
    expect(sheets.map((sheet) => wordsIn(sheet, "place letter"))).toEqual([["A"], ["B", "C"]]);
  });

  test("says what is left in place of rows where no row tells more", () => {
    const done = checklistSheets({ ...VENT, order: { ...VENT_ORDER, steps: [] } });
    expect(done.flatMap(faultsOf)).toEqual([]);
    const words = done.map(allWords).join(" ");
    expect(words).toContain(`Left: ${VENT_ORDER.suspects[0]!.title}`);
    expect(done.flatMap((sheet) => wordsIn(sheet, "column titles"))).toEqual([]);
  });

  test("is laid out without a fault", () => {
    expect(sheets.flatMap(faultsOf)).toEqual([]);
  });

  test("gives a plain row 24 mm and a sweep of three positions 36 mm", () => {
    const heights = sheets.flatMap((sheet) =>
      sheet.cells.filter(({ name }) => name === "probe").map(({ box }) => box.height),
    );
    expect(heights).toEqual([36, 36, 24, 24, 24, 24, 24, 24, 24, 24, 24]);
  });

  test("gives the minutes of each place once", () => {
    const minutes = sheets.flatMap((sheet) => wordsIn(sheet, "place minutes"));
    expect(minutes.map((words) => Number.parseFloat(words))).toEqual([2, 6, 8]);
  });

  test("says in words what to hold, and that a second person holds it", () => {
    const [, second] = sheets;
    expect(wordsIn(second!, "set")[0]).toMatch(/^Key ON .*hold OPEN .*2nd person .*X32-1b to battery −$/);
    expect(wordsIn(second!, "set")[4]).toMatch(/Key OFF .*X32 apart/);
  });

  test("asks for a field of 27 x 11 mm for every reading", () => {
    const fields = sheets.flatMap((sheet) =>
      sheet.marks.filter((mark) => mark.mark === "box" && mark.role === "field").map(millimetreBounds),
    );
    const large = fields.filter(
      ({ left, top, right, bottom }) => right - left >= 27 - 0.01 && bottom - top >= 11 - 0.01 && bottom - top < 11.5,
    );
    expect(large.length).toBe(2 * 3 + 9);
  });
});

describe("the cutting of any order into sheets", () => {
  test("keeps all type inside its cell, off every edge, and off the foot", () => {
    for (const { sheets } of SAMPLES) expect(sheets.flatMap(faultsOf)).toEqual([]);
  });

  test("keeps every row once and in order, and never ends a sheet with a bar", () => {
    for (const { input, sheets } of SAMPLES) {
      const rows = sheets.flatMap((sheet) => wordsIn(sheet, "row").map((words) => Number.parseInt(words, 10)));
      expect([...new Set(rows)]).toEqual(input.order.steps.map(({ number }) => number));
      expect(rows).toEqual([...rows].sort((one, other) => one - other));
      for (const sheet of sheets) {
        const bands = bandsOf(sheet);
        bands.forEach(({ is }, i) => {
          if (is === "place letter") expect(bands[i + 1]?.is).toBe("row");
          if (is === "pattern") expect(bands[i - 1]?.is).toBe("row");
        });
      }
    }
  });

  test("repeats a bar with its place marked as open wherever rows go on from an earlier sheet", () => {
    for (const { sheets } of SAMPLES) {
      let letter = "";
      const seen = new Set<string>();
      for (const sheet of sheets) {
        expect(bandsOf(sheet)[0]?.is).toBe("column titles");
        const first = bandsOf(sheet)[1];
        expect(first?.is === "row" || first?.is === "pattern").toBe(false);
        for (const band of bandsOf(sheet)) {
          if (band.is !== "place letter") continue;
          letter = band.words;
          const minutes = minutesBeside(sheet, band.y);
          expect(/^(open|free|\d)/.test(minutes)).toBe(true);
          if (seen.has(letter)) expect(minutes).toMatch(/^(open|free)$/);
          seen.add(letter);
        }
      }
    }
  });

  test("never splits the sign-off, and ends with at least three lines to write on", () => {
    for (const { sheets } of SAMPLES) {
      expect(sheets.map((sheet) => wordsIn(sheet, "sign-off").length)).toEqual([...sheets.slice(1).map(() => 0), 6]);
      const last = sheets.at(-1)!;
      const title = last.cells.find(({ name }) => name === "notes title")!;
      const rules = last.marks.filter((mark) => mark.mark === "line" && mark.role === "rule").map(millimetreBounds);
      const below = rules.filter(
        ({ top, left, right }) => top > title.box.y + title.box.height && right - left > SHEET.width - 1,
      );
      expect(below.length).toBeGreaterThanOrEqual(3);
    }
  });

  test("numbers the sheets n of m and gives all of them one code", () => {
    for (const { sheets } of SAMPLES) {
      const codes = sheets.map((sheet) => /code (\S{4}) Back|code (\S{4}) Cautions/.exec(wordsIn(sheet, "foot")[0]!));
      expect(new Set(codes.map((code) => code?.[1] ?? code?.[2])).size).toBe(1);
      sheets.forEach((sheet, i) => {
        expect(wordsIn(sheet, "foot")[0]).toMatch(new RegExp(`${i + 1} of ${sheets.length}$`));
        expect(allWords(sheet).split(`${i + 1} of ${sheets.length}`).length).toBeGreaterThanOrEqual(3);
      });
    }
  });
});

function minutesBeside(sheet: Sheet, y: number): string {
  const cell = sheet.cells.find(({ name, box }) => name === "place minutes" && box.y === y)!;
  return cell.marks.flatMap((mark) => (mark.mark === "text" ? [mark.text] : []))[0] ?? "";
}

describe("a checklist's code and paper", () => {
  test("the same order gives the same sheets, mark for mark", () => {
    expect(checklistSheets(VENT)).toEqual(checklistSheets(structuredClone(VENT)));
  });

  test("the date does not change the code, another range does", () => {
    const code = (input: typeof VENT & { date?: string }) => wordsIn(checklistSheets(input)[0]!, "Sheet code")[0];
    expect(code({ ...VENT, date: "4 May" })).toBe(code(VENT));
    const changed = {
      ...VENT_ORDER,
      steps: VENT_ORDER.steps.map((each, i) => (i === 4 ? { ...each, why: "Other words." } : each)),
    };
    expect(code({ ...VENT, order: changed })).not.toBe(code(VENT));
  });

  test("every sheet is 186 x 254 mm and goes on A4 and Letter at full size, so both break alike", () => {
    for (const sheet of checklistSheets(VENT)) {
      expect([sheet.width, sheet.height]).toEqual([gridUnitsOf(186), gridUnitsOf(254)]);
      for (const paper of ["a4", "letter"] as const) {
        expect(PAPERS[paper]).toBeDefined();
        expect(placingOn(sheet, paper)).toMatchObject({ scale: 1, top: 15 });
      }
    }
  });

  test("an order without rows still prints its head, cautions and sign-off", () => {
    const [sheet, ...more] = checklistSheets({ circuit: VENT_CIRCUIT, order: { ...VENT_ORDER, steps: [] } });
    expect(more).toEqual([]);
    expect(faultsOf(sheet!)).toEqual([]);
    expect(wordsIn(sheet!, "sign-off").length).toBe(6);
  });

  test("a sweep of more positions than a sheet holds goes on in further rows of the same number", () => {
    const settings = Array.from({ length: 40 }, (_, i) => ({
      condition: {},
      position: `step ${i + 1}`,
      expect: { low: 1, high: 2, unit: "V" as const, lamp: null, word: null },
    }));
    const order = { ...VENT_ORDER, steps: [step(7, "X5-4", { sweepOf: "S5", settings })] };
    const sheets = checklistSheets({ circuit: VENT_CIRCUIT, order });
    expect(sheets.flatMap(faultsOf)).toEqual([]);
    const positions = sheets
      .flatMap((sheet) => wordsIn(sheet, "sweep"))
      .join(" ")
      .match(/step \d+/g);
    expect(positions).toEqual(settings.map(({ position }) => position));
  });
});
