import { describe, expect, test } from "vitest";
import { branchSheets } from "../../core/paper/branchSheet.ts";
import { branchesPlanned, firstBranches } from "../diagnose/firstBranches.ts";
import { SAMPLE_NAMES, sample } from "../samples/onTheBench.ts";
import { allWords, faultsOf, wordsIn } from "./geometry.ts";

/** The branch sheet of a sample's first check. */
function sheetsOf(name: string, branches = firstBranches(name)) {
  return { branches, sheets: branchSheets({ circuit: sample(name), branches }) };
}

describe("a printed branch sheet", () => {
  test.each(SAMPLE_NAMES)("of %s has every row and every verdict once, all type inside its cell", (name) => {
    const { branches, sheets } = sheetsOf(name);
    expect(sheets.flatMap(faultsOf)).toEqual([]);
    const rows = sheets.flatMap((sheet) => wordsIn(sheet, "row"));
    expect(rows).toEqual(branches.rows.map(({ step }) => String(step.number)));
    const verdicts = sheets.flatMap((sheet) => wordsIn(sheet, "verdict")).map((words) => words.split(" ")[0]);
    expect(verdicts).toEqual(branches.verdicts.map(({ letter }) => letter));
    const words = sheets.map(allWords).join(" ");
    expect(words).toContain("How to use.");
    expect(words).toMatch(/procedure/);
    expect(words.match(/Prove:/g)).toHaveLength(branches.verdicts.length);
  });

  test("says in every row where each reading leads, and never to a row that is not there", () => {
    const { branches, sheets } = sheetsOf("1-roof-vents");
    const known = new Set([
      ...branches.rows.map(({ step }) => String(step.number)),
      ...branches.verdicts.map(({ letter }) => letter),
    ]);
    const boxes = sheets
      .flatMap((sheet) => sheet.cells.filter(({ name }) => name === "go"))
      .flatMap(({ marks }) => marks.flatMap((mark) => (mark.mark === "text" ? [mark.text] : [])))
      .filter((words) => /^(?:\d+|[A-Z]{1,2})$/.test(words));
    expect(boxes.length).toBeGreaterThanOrEqual(branches.rows.reduce((sum, { lines }) => sum + lines.length, 0));
    for (const box of boxes) expect(known).toContain(box);
  });

  test("has another code for other rows, and the same for the same", () => {
    const [one, again, other] = [
      sheetsOf("4-horn"),
      sheetsOf("4-horn", branchesPlanned("4-horn")),
      sheetsOf("3-starter"),
    ];
    const codeOf = ({ sheets }: typeof one): string => wordsIn(sheets[0]!, "Sheet code").join(" ");
    expect(codeOf(one)).not.toBe("");
    expect(codeOf(again)).toBe(codeOf(one));
    expect(codeOf(other)).not.toBe(codeOf(one));
  });
});
