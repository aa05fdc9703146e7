import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { ClassRow } from "../../core/lesson/classRows.ts";
import { classSheets } from "../../core/paper/classTable.ts";
import { allWords, faultsOf } from "./geometry.ts";

const words = fc.string({ unit: "grapheme", maxLength: 160 });
const row: fc.Arbitrary<ClassRow> = fc.record({
  learner: words,
  exercise: words,
  result: words,
  named: fc.array(words, { maxLength: 2 }),
  minutes: fc.array(fc.constantFrom("37.4 min", "of 35.0 min", "2 hints"), { maxLength: 3 }),
  readings: fc.array(fc.constantFrom("12", "told nothing: move 3, 5, 18"), { maxLength: 2 }),
  remark: words,
});
const tasks = fc.array(
  fc.record({ learner: words, done: fc.array(words, { maxLength: 4 }), tried: fc.array(words, { maxLength: 4 }) }),
  { maxLength: 12 },
);

const plain = (learner: string): ClassRow => ({
  learner,
  exercise: "Horns",
  result: "Right, proven",
  named: ["W15 broken"],
  minutes: ["37.0 min", "of 35.0 min"],
  readings: ["12"],
  remark: "",
});

describe("the table of a class", () => {
  test("is laid out without a fault, whatever the words", () => {
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 30 }), tasks, (rows, list) => {
        for (const sheet of classSheets({ rows, tasks: list })) expect(faultsOf(sheet)).toEqual([]);
      }),
      { numRuns: 25 },
    );
  });

  test("names everybody once, in the order given, over as many sheets as it takes, and repeats its head", () => {
    const names = Array.from({ length: 70 }, (_, index) => `Learner-${index + 1}`);
    const sheets = classSheets({ rows: names.map(plain), tasks: [] });
    expect(sheets.length).toBeGreaterThan(2);
    const said = sheets.flatMap((sheet) => allWords(sheet).match(/Learner-\d+/g) ?? []);
    expect(said).toEqual(names);
    for (const sheet of sheets) expect(allWords(sheet)).toContain("First wrong turn, remark");
    expect(new Set(sheets.map(({ code }) => code)).size).toBe(1);
  });

  test("says why a hand-in was not graded, and how far each learner is with the task list", () => {
    const refused = { ...plain("Dan"), result: "", named: [], minutes: [], readings: [], remark: "Edited by hand." };
    const done = { learner: "Ann", done: ["Find an open feed"], tried: [] };
    const said = classSheets({ rows: [plain("Ann"), refused], tasks: [done] })
      .map(allWords)
      .join(" ");
    for (const words of ["Edited by hand.", "2 hand-ins, 1 of them graded", "Find an open feed", "none"])
      expect(said).toContain(words);
  });
});
