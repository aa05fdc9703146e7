import fc from "fast-check";
import { expect, test } from "vitest";
import type { Mark } from "../../core/drawing/mark.ts";
import { type Painted, painted } from "../../renderer/canvas/painted.ts";

const mark = fc
  .record({ x: fc.nat(5), y: fc.nat(5), of: fc.constantFrom("K1", "W1", "W2") })
  .map(({ x, y, of }): Mark => ({ mark: "circle", at: { x, y }, radius: 1, role: "joint", filled: true, of }));
const change = fc.record({ at: fc.nat(40), removes: fc.nat(3), puts: fc.array(mark, { maxLength: 2 }) });

const shownIn = ({ marks, boxes }: Painted) => ({ paints: marks.map(({ paints }) => paints), boxes: [...boxes] });

test("a drawing painted after another one is the drawing painted at once, and what is altered is what differs", () => {
  fc.assert(
    fc.property(
      fc.array(mark, { maxLength: 40 }),
      fc.array(change, { minLength: 1, maxLength: 6 }),
      (first, changes) => {
        let marks: readonly Mark[] = first;
        let before = painted(marks, "light", 4);
        for (const { at, removes, puts } of changes) {
          marks = marks.toSpliced(at, removes, ...puts);
          const after = painted(marks, "light", 4, before);
          expect(shownIn(after)).toEqual(shownIn(painted(marks, "light", 4)));
          const { gone, come } = after.altered!;
          const still = before.marks.filter((each) => !gone.includes(each));
          expect([...still, ...come].toSorted(byPlace)).toEqual([...after.marks].toSorted(byPlace));
          before = after;
        }
      },
    ),
    { seed: 3 },
  );
});

function byPlace(one: Painted["marks"][number], other: Painted["marks"][number]): number {
  return JSON.stringify(one).localeCompare(JSON.stringify(other));
}
