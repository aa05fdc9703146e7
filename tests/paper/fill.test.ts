import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fillSheets, type Laid } from "../../core/paper/fill.ts";
import { type Block, gapBlock } from "../../core/paper/grid.ts";

const RUNS = { numRuns: 300, seed: 41 };
const PAGE = { firstTop: 37, laterTop: 15, bottom: 247, first: gapBlock(40), later: gapBlock(6) };
const EMPTY_ROOM = 247 - 15 - 6;
const ENDING = 60;

interface Heights {
  readonly bar: number;
  readonly rows: readonly number[];
}

const places: fc.Arbitrary<readonly Heights[]> = fc.array(
  fc.record({
    bar: fc.integer({ min: 9, max: 30 }),
    rows: fc.array(fc.integer({ min: 24, max: 150 }), { minLength: 1, maxLength: 12 }),
  }),
  { maxLength: 8 },
);

/** The places laid out, with the blocks to find them by. */
function filled(heights: readonly Heights[]) {
  const blocks = heights.map(({ bar, rows }) => ({
    bar: gapBlock(bar),
    again: gapBlock(bar),
    rows: rows.map((height) => gapBlock(height)),
  }));
  const sheets = fillSheets({
    ...PAGE,
    places: blocks,
    endingHeight: ENDING,
    ending: (room) => gapBlock(Math.max(ENDING, room)),
  });
  return { blocks, sheets };
}

describe("cutting places into sheets", () => {
  test("lays blocks one below the other, none beyond the bottom", () => {
    fc.assert(
      fc.property(places, (heights) => {
        for (const sheet of filled(heights).sheets) {
          sheet.forEach(({ block, top }, i) => {
            const next = sheet[i + 1];
            if (next) expect(next.top).toBeCloseTo(top + block.height, 9);
            expect(top + block.height).toBeLessThanOrEqual(PAGE.bottom + 1e-6);
          });
        }
      }),
      RUNS,
    );
  });

  test("lays every row once, in its order, and the ending last", () => {
    fc.assert(
      fc.property(places, (heights) => {
        const { blocks, sheets } = filled(heights);
        const rows = sheets.flat().filter(({ is }) => is === "row");
        expect(rows.length).toBe(heights.reduce((sum, place) => sum + place.rows.length, 0));
        const wanted = blocks.flatMap((place) => place.rows);
        expect(rows.every(({ block }, i) => block === wanted[i])).toBe(true);
        expect(sheets.map((sheet) => sheet.filter(({ is }) => is === "ending").length)).toEqual([
          ...sheets.slice(1).map(() => 0),
          1,
        ]);
        expect(sheets.at(-1)!.at(-1)!.is).toBe("ending");
      }),
      RUNS,
    );
  });

  test("two rows follow a place's bar, or all it has; one only where two never go on a sheet", () => {
    fc.assert(
      fc.property(places, (heights) => {
        const { blocks, sheets } = filled(heights);
        blocks.forEach(({ bar, rows }) => {
          const sheet = sheets.find((each) => each.some(({ block }) => block === bar))!;
          const index = sheet.findIndex(({ block }) => block === bar);
          const following = rowsFrom(sheet, index + 1);
          const two = bar.height + rows[0]!.height + (rows[1]?.height ?? 0);
          const wanted = two <= EMPTY_ROOM ? Math.min(2, rows.length) : 1;
          expect(following).toBeGreaterThanOrEqual(wanted);
        });
      }),
      RUNS,
    );
  });

  test("a place that goes on repeats its bar at the head of the next sheet, and only there", () => {
    fc.assert(
      fc.property(places, (heights) => {
        const { blocks, sheets } = filled(heights);
        const placeOf = (row: Block) => blocks.find(({ rows }) => rows.includes(row))!;
        for (const [i, sheet] of sheets.entries()) {
          sheet.forEach(({ block, is }, at) => {
            if (is !== "bar") return;
            const place = placeOf(sheet[at + 1]!.block);
            const isFirst = place.rows[0] === sheet[at + 1]!.block;
            expect(block).toBe(isFirst ? place.bar : place.again);
            if (!isFirst) expect([i > 0, at]).toEqual([true, 1]);
          });
          const first = sheet.find(({ is }) => is !== "front");
          expect(first?.is).not.toBe("row");
        }
      }),
      RUNS,
    );
  });

  test("turns the sheet only where what must stay together does not fit", () => {
    fc.assert(
      fc.property(places, (heights) => {
        const { sheets } = filled(heights);
        for (const [i, sheet] of sheets.slice(1).entries()) {
          const before = sheets[i]!.at(-1)!;
          const left = PAGE.bottom - before.top - before.block.height;
          const [bar, one, two] = sheet.filter(({ is }) => is !== "front");
          const together =
            bar!.is === "ending"
              ? ENDING
              : bar!.block.height + one!.block.height + (two?.is === "row" ? two.block.height : 0);
          expect(left).toBeLessThan(Math.max(together, ENDING));
        }
      }),
      RUNS,
    );
  });

  test("parts a bar from a row only where no sheet holds both", () => {
    expect(filled([{ bar: 30, rows: [220, 24] }]).sheets.map((sheet) => sheet.map(({ is }) => is))).toEqual([
      ["front", "bar"],
      ["front", "row"],
      ["front", "bar", "row", "ending"],
    ]);
  });

  test("refuses a row that no sheet holds", () => {
    expect(() => filled([{ bar: 10, rows: [EMPTY_ROOM + 1] }])).toThrow();
  });
});

function rowsFrom(sheet: readonly Laid[], start: number): number {
  const end = sheet.slice(start).findIndex(({ is }) => is !== "row");
  return end < 0 ? sheet.length - start : end;
}
