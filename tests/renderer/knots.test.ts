import { expect, test } from "vitest";
import { type Knot, placedKnots } from "../../renderer/canvas/knots.ts";
import { standingOn } from "../../renderer/canvas/standing.ts";
import type { Viewport } from "../../renderer/canvas/viewport.ts";
import { SMALL } from "../edit/given.ts";

const standing = standingOn(SMALL, SMALL.pages[0]!.id, "iec");
const points = [...standing.points.keys()];
const knots = points.flatMap((point, at): readonly Knot[] => [
  { point, number: 2 * at + 1, is: "waiting" },
  { point, number: 2 * at + 2, is: at === 1 ? "next" : "done" },
]);

test.each([4, 1.5, 0.4])(
  "no knot covers another at %s pixels to the millimetre, and the next one is on its wire",
  (scale) => {
    const view: Viewport = { scale, x: 0, y: 0 };
    const placed = placedKnots({ view, standing }, knots);
    expect(placed).toHaveLength(knots.length);
    for (const [index, { at }] of placed.entries()) {
      const near = placed.filter(({ at: other }) => Math.abs(other.x - at.x) < 20 && Math.abs(other.y - at.y) < 20);
      expect(near, `knot ${placed[index]!.knot.number}`).toHaveLength(1);
    }
    expect(placed[0]!.knot.is).toBe("next");
    const [alone] = placedKnots({ view, standing }, [placed[0]!.knot]);
    expect(placed[0]).toEqual(alone);
  },
);

test("what stands on another page has no knot here", () => {
  const view: Viewport = { scale: 2, x: 0, y: 0 };
  expect(placedKnots({ view, standing }, [{ point: "X99-9" as Knot["point"], number: 1, is: "next" }])).toEqual([]);
});
