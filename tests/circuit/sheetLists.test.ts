import fc from "fast-check";
import { expect, test } from "vitest";
import { ListsAgain } from "../../core/circuit/sheetLists.ts";
import { SheetRoom } from "../../core/circuit/sheetRoom.ts";
import { Written } from "../../core/circuit/sheetWritten.ts";
import type { Bounds } from "../../core/drawing/measure.ts";

interface Row {
  readonly values: readonly number[];
}

const row = fc.array(fc.nat(9), { maxLength: 3 }).map((values): Row => ({ values }));
const change = fc.record({ at: fc.nat(39), row, removes: fc.nat(1) });

test("lists are joined again to what they are joined to at once", () => {
  fc.assert(
    fc.property(
      fc.array(row, { minLength: 30, maxLength: 40 }),
      fc.array(change, { maxLength: 9 }),
      (rows, changes) => {
        const again = new ListsAgain<Row, number>();
        let now: readonly Row[] = rows;
        for (const { at, row: other, removes } of changes) {
          now = now.toSpliced(at, removes, other);
          expect(again.join(now, ({ values }) => values)).toEqual(now.flatMap(({ values }) => values));
        }
      },
    ),
    { seed: 7 },
  );
});

test("a list that is joined again of the same things is the same object", () => {
  const again = new ListsAgain<Row, number>();
  const things = [{ values: [1] }, { values: [2, 3] }];
  const all = again.join(things, ({ values }) => values);
  expect(again.join([...things], ({ values }) => values)).toBe(all);
});

const PAGE: Bounds = { left: 0, top: 0, right: 40, bottom: 40 };
const box = fc
  .tuple(fc.nat(34), fc.nat(34), fc.integer({ min: 1, max: 6 }), fc.integer({ min: 1, max: 6 }))
  .map(([left, top, width, height]): Bounds => ({ left, top, right: left + width, bottom: top + height }));
const boxes = fc.array(box, { maxLength: 2 });

test("where boxes were exchanged in a room it is free as if they had never been there", () => {
  const under = new SheetRoom(PAGE);
  under.take({ left: 0, top: 0, right: 3, bottom: 3 });
  fc.assert(
    fc.property(
      fc.array(boxes, { minLength: 4, maxLength: 8 }),
      fc.array(fc.tuple(fc.nat(3), boxes), { maxLength: 12 }),
      fc.array(box, { maxLength: 9 }),
      (lists, exchanges, asked) => {
        const written = new Written<readonly Bounds[]>();
        let now: readonly (readonly Bounds[])[] = lists;
        written.with(under, now, (each) => each);
        for (const [at, other] of exchanges) {
          now = now.with(at, other);
          const fresh = under.copy();
          for (const each of now.flat()) fresh.take(each);
          const kept = written.with(under, now, (each) => each);
          for (const each of asked) expect(kept.isFree(each)).toBe(fresh.isFree(each));
        }
      },
    ),
    { seed: 7 },
  );
});
