import { describe, expect, test } from "vitest";
import { cardPlace, LEADER, type PixelBox } from "../../renderer/canvas/cardPlace.ts";
import { dockPlace } from "../../renderer/canvas/dockPlace.ts";
import { fittedFor } from "../../renderer/canvas/fitting.ts";
import {
  FULL_SIZE,
  fitted,
  fullSize,
  inWindow,
  keptInSight,
  middleOf,
  NO_MARGINS,
  onSheet,
  type PaperBox,
  panned,
  seenBox,
  showing,
  type Viewport,
  zoomed,
  zoomOf,
} from "../../renderer/canvas/viewport.ts";
import { levelOf } from "../../renderer/canvas/zoomLevel.ts";

const WINDOW = { width: 800, height: 600 };
const A3 = { left: 0, top: 0, right: 420, bottom: 297 };
const VIEW: Viewport = { scale: 2, x: 30, y: -20 };

describe("a drawing fitted with its words", () => {
  const margins = { top: 64, right: 24, bottom: 24, left: 24 };

  test("lies within the margins as it is drawn, even where each of two sizes of words asks for the other", () => {
    // Where words are larger, a name finds its place lower down.
    const content = (level: number) =>
      level > 0.5 ? { left: 13, top: 11, right: 399, bottom: 269.5 } : { left: 11, top: 17, right: 404, bottom: 272 };
    const window = { width: 880, height: 624 };
    const [large, small] = [0.55, 0.48].map((level) => fitted(content(level), window, margins));
    expect([large!, small!].map((view) => levelOf(zoomOf(view)))).toEqual([0.48, 0.55]);
    const view = fittedFor(content, window, margins);
    const box = content(levelOf(zoomOf(view)));
    expect(inWindow(view, { x: 0, y: box.top }).y).toBeGreaterThanOrEqual(margins.top);
    expect(inWindow(view, { x: box.right, y: 0 }).x).toBeLessThanOrEqual(880 - margins.right);
  });

  test("is measured again only while the words change", () => {
    let asked = 0;
    const view = fittedFor(
      () => {
        asked++;
        return A3;
      },
      WINDOW,
      margins,
    );
    expect(view).toEqual(fitted(A3, WINDOW, margins));
    expect(asked).toBeLessThanOrEqual(2);
  });

  test("is never measured for words that its parts leave no room to show, and for those of 100 % where they do", () => {
    const asked = (places: PaperBox): readonly number[] => {
      const levels: number[] = [];
      fittedFor(
        (level) => {
          levels.push(level);
          return { ...places, bottom: places.bottom + 4 / level };
        },
        WINDOW,
        margins,
        places,
      );
      return levels;
    };
    expect(asked({ left: 0, top: 0, right: 2_000, bottom: 1_600 })[0]).toBeLessThan(0.2);
    expect(asked({ left: 40, top: 40, right: 40, bottom: 40 })[0]).toBe(1);
  });
});

describe("the viewport", () => {
  test("100 % is 96 pixels to the inch", () => {
    expect(FULL_SIZE * 25.4).toBeCloseTo(96, 10);
    expect(zoomOf(fullSize(VIEW, WINDOW))).toBeCloseTo(1, 10);
  });

  test("places of the window and of the sheet are two ways to say the same", () => {
    const spot = onSheet(VIEW, { x: 130, y: 80 });
    expect(spot).toEqual({ x: 50, y: 50 });
    expect(inWindow(VIEW, spot)).toEqual({ x: 130, y: 80 });
  });

  test("a fitted box lies whole within the margins, in their middle, and touches them one way", () => {
    const margins = { top: 60, right: 10, bottom: 20, left: 30 };
    const view = fitted(A3, WINDOW, margins);
    const [from, to] = [inWindow(view, { x: 0, y: 0 }), inWindow(view, { x: 420, y: 297 })];
    expect(from.y).toBeCloseTo(60, 6);
    expect(to.y).toBeCloseTo(580, 6);
    expect(from.x).toBeGreaterThan(30);
    expect(to.x).toBeLessThan(790);
    expect(from.x - 30).toBeCloseTo(790 - to.x, 6);
  });

  test("a small drawing is not blown up, and a window without size is no trouble", () => {
    expect(zoomOf(fitted({ left: 0, top: 0, right: 10, bottom: 10 }, WINDOW))).toBeCloseTo(1.5, 10);
    const none = fitted(A3, { width: 0, height: 0 });
    expect(Object.values(none).every(Number.isFinite)).toBe(true);
    expect(zoomOf(none)).toBeCloseTo(0.1, 10);
  });

  test("zooming keeps the place under the pointer, also at both ends", () => {
    const at = { x: 200, y: 150 };
    for (const factor of [1.3, 0.7, 1000, 0.0001]) {
      const view = zoomed(VIEW, factor, at);
      const [was, is] = [onSheet(VIEW, at), onSheet(view, at)];
      expect(is.x).toBeCloseTo(was.x, 8);
      expect(is.y).toBeCloseTo(was.y, 8);
      expect(zoomOf(view)).toBeGreaterThanOrEqual(0.1 - 1e-9);
      expect(zoomOf(view)).toBeLessThanOrEqual(8 + 1e-9);
    }
  });

  test("what is to be shown comes into the window at the same zoom, and what is in it does not move", () => {
    const seen = onSheet(VIEW, middleOf(WINDOW));
    expect(showing(VIEW, seen, WINDOW)).toEqual(VIEW);
    for (const spot of [
      { x: -500, y: 40 },
      { x: 5000, y: 5000 },
    ]) {
      const view = showing(VIEW, spot, WINDOW);
      const { x, y } = inWindow(view, spot);
      expect(view.scale).toBe(VIEW.scale);
      expect(x).toBeGreaterThanOrEqual(120);
      expect(x).toBeLessThanOrEqual(680);
      expect(y).toBeGreaterThanOrEqual(120);
      expect(y).toBeLessThanOrEqual(480);
    }
  });

  test("some of the drawing stays in sight, however far it is moved", () => {
    for (const [dx, dy] of [
      [10_000, 0],
      [-10_000, -10_000],
      [0, 10_000],
    ] as const) {
      const view = keptInSight(panned(VIEW, dx, dy), A3, WINDOW);
      const seen = seenBox(view, WINDOW);
      const width = Math.min(seen.right, A3.right) - Math.max(seen.left, A3.left);
      const height = Math.min(seen.bottom, A3.bottom) - Math.max(seen.top, A3.top);
      expect(width * view.scale).toBeGreaterThanOrEqual(64 - 1e-6);
      expect(height * view.scale).toBeGreaterThanOrEqual(64 - 1e-6);
    }
    expect(keptInSight(VIEW, A3, WINDOW)).toBe(VIEW);
  });

  test("without margins that are told there is room all round", () => {
    expect(fitted(A3, WINDOW)).toEqual(fitted(A3, WINDOW, NO_MARGINS));
  });
});

describe("levels of zoom for words", () => {
  test.each([
    [8, 1],
    [1, 1],
    [0.9999999, 1],
    [0.95, 0.9],
    [0.62, 0.62],
    [0.5, 0.48],
    [0.01, 0.1],
  ])("at %s words are set for %s", (zoom, level) => expect(levelOf(zoom)).toBe(level));

  test("never more than the zoom, down to the least", () => {
    for (let zoom = 0.1; zoom < 2; zoom += 0.013) expect(levelOf(zoom)).toBeLessThanOrEqual(zoom + 1e-6);
  });
});

describe("the place of a card", () => {
  const CARD = { width: 200, height: 120 };
  const boxOf = ({ left, top }: { left: number; top: number }): PixelBox => ({
    left,
    top,
    right: left + CARD.width,
    bottom: top + CARD.height,
  });
  const isIn = ({ left, top, right, bottom }: PixelBox): boolean =>
    left >= 0 && top >= 0 && right <= WINDOW.width && bottom <= WINDOW.height;

  test("lies in the window wherever there is room, and off the spot by the leader's length", () => {
    for (let x = 0; x <= WINDOW.width; x += 80) {
      for (let y = 0; y <= WINDOW.height; y += 60) {
        const place = cardPlace({ x, y }, CARD, WINDOW, []);
        const box = boxOf(place);
        expect(isIn(box)).toBe(true);
        const off = Math.max(box.left - x, x - box.right, box.top - y, y - box.bottom);
        expect(off).toBeCloseTo(LEADER, 6);
      }
    }
  });

  test("covers least of what it speaks of", () => {
    const anchor = { x: 400, y: 300 };
    const left = { box: { left: 0, top: 0, right: 380, bottom: 600 }, weight: 1 };
    expect(cardPlace(anchor, CARD, WINDOW, []).leader).toBe("right");
    expect(cardPlace(anchor, CARD, WINDOW, [left]).leader).toBe("left");
    const right = { box: { left: 420, top: 0, right: 800, bottom: 600 }, weight: 1 };
    const under = { box: { left: 0, top: 320, right: 800, bottom: 600 }, weight: 5 };
    const place = cardPlace(anchor, CARD, WINDOW, [left, right, under]);
    expect(place.top + CARD.height).toBeLessThanOrEqual(320);
  });

  test("the leader leaves the card where the spot is, clear of its corners", () => {
    for (const y of [0, 90, 300, 590]) {
      const { along, leader, top } = cardPlace({ x: 400, y }, CARD, WINDOW, []);
      expect(["left", "right"]).toContain(leader);
      expect(along).toBeGreaterThanOrEqual(20);
      expect(along).toBeLessThanOrEqual(CARD.height - 20);
      if (y === 300) expect(top + along).toBeCloseTo(y, 6);
    }
  });

  test("a window smaller than the card still gives a place", () => {
    const place = cardPlace({ x: 10, y: 10 }, CARD, { width: 50, height: 50 }, []);
    expect([place.left, place.top, place.along].every(Number.isFinite)).toBe(true);
  });
});

describe("a card that stays while wires are drawn", () => {
  const SIZE = { width: 300, height: 220 };
  const ROOM = { width: 900, height: 620 };
  const covers = (place: { x: number; y: number }, at: { x: number; y: number }) =>
    at.x > place.x && at.x < place.x + SIZE.width && at.y > place.y && at.y < place.y + SIZE.height;

  test("stands in the window, below the tools, and never on the hand", () => {
    for (let x = 0; x <= ROOM.width; x += 50) {
      for (let y = 0; y <= ROOM.height; y += 50) {
        const place = dockPlace({ x, y }, SIZE, ROOM, [], 1);
        expect(covers(place, { x, y })).toBe(false);
        expect(place.x).toBeGreaterThanOrEqual(0);
        expect(place.y).toBeGreaterThanOrEqual(60);
        expect(place.x + SIZE.width).toBeLessThanOrEqual(ROOM.width);
        expect(place.y + SIZE.height).toBeLessThanOrEqual(ROOM.height);
      }
    }
  });

  test("covers no terminal while an edge is free, though it is nearer to the hand", () => {
    const hand = { x: 100, y: 120 };
    const far = [500, 650, 800].flatMap((x) => [150, 300, 450, 550].map((y) => ({ at: { x, y }, weight: 1 })));
    const place = dockPlace(hand, SIZE, ROOM, far, 1);
    expect(far.some(({ at }) => covers(place, at))).toBe(false);
    expect(covers(place, hand)).toBe(false);
  });

  test("with no free edge it covers what is wired before what still waits for its wire", () => {
    const everywhere = [100, 300, 450, 600, 800].flatMap((x) => [120, 300, 500].map((y) => ({ x, y })));
    const wanted = everywhere.map((at) => ({ at, weight: at.x < 400 && at.y > 400 ? 1 : 3 }));
    expect(dockPlace({ x: 860, y: 80 }, SIZE, ROOM, wanted, 1)).toEqual({ x: 12, y: 388 });
  });
});
