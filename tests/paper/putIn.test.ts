import { describe, expect, test } from "vitest";
import { positionTable } from "../../core/diagnose/tableReading.ts";
import type { Drawing } from "../../core/drawing/mark.ts";
import { type Fault, faultTitle } from "../../core/live/fault.ts";
import { circuitSheets } from "../../core/paper/circuitSheets.ts";
import { putInWords } from "../../core/paper/faultWords.ts";
import { tableSheets } from "../../core/paper/table.ts";
import { got, VENTS } from "../edit/given.ts";

const BROKEN: Fault = { target: "W46", mode: "open" };
const WORN: Fault = { target: "GP2", mode: "corroded", value: 1.5 };
const KEY_ON = { set: { S1: "on" } };

const wordsOf = (drawing: Drawing | undefined): string =>
  (drawing?.marks ?? []).flatMap((mark) => (mark.mark === "text" ? [mark.text] : [])).join(" ");

const sheets = (faults: readonly Fault[]): readonly Drawing[] =>
  got(circuitSheets({ circuit: VENTS, page: "p2", condition: KEY_ON, faults, look: "iec", paper: "a4" }));

const table = (faults: readonly Fault[]): readonly Drawing[] =>
  tableSheets({ circuit: VENTS, table: positionTable(VENTS, "X6", faults), faults });

describe("a fault that is put in", () => {
  test("is named over every circuit sheet, before the position drawn", () => {
    expect(wordsOf(sheets([BROKEN])[0])).toContain("Position drawn: fault put in: W46 broken · key ON");
  });

  test("is named in the head of every sheet of a position table", () => {
    const printed = table([BROKEN]);
    expect(printed.length).toBeGreaterThan(1);
    for (const sheet of printed) expect(wordsOf(sheet)).toContain("fault put in: W46");
  });

  test("is not spoken of where there is none", () => {
    for (const sheet of [...sheets([]), ...table([])]) expect(wordsOf(sheet)).not.toContain("fault");
    expect(putInWords(VENTS, [])).toBe("");
  });

  test("has its ohms, and of many two are named and the rest counted", () => {
    const words = faultTitle(VENTS, WORN);
    expect(words).toMatch(/^GP2 .*1\.5 /);
    expect(putInWords(VENTS, [BROKEN, WORN, { target: "W47", mode: "open" }])).toBe(
      `fault put in: W46 broken, ${words} and 1 more`,
    );
  });
});
