import { describe, expect, it } from "vitest";
import { type Corner, projected, projectionOf, type Quad, rectangle } from "../../core/drawing/projection.ts";
import { isStraight, layOf, mostPixels } from "../../renderer/printed/lay.ts";
import { halved, laidDown, type Pixels, treat } from "../../renderer/printed/pixels.ts";
import { PHOTO, SHEET } from "../circuit/printed.ts";

type Colour = readonly [number, number, number];

/** A picture whose every pixel is worked out. */
function picture(width: number, height: number, colour: (x: number, y: number) => Colour): Pixels {
  const data = new Uint8ClampedArray(width * height * 4);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) data.set([...colour(x, y), 255], (y * width + x) * 4);
  }
  return { width, height, data };
}

const at = ({ width, data }: Pixels, x: number, y: number): readonly number[] => [
  ...data.subarray((y * width + x) * 4, (y * width + x) * 4 + 4),
];

const plain = { contrast: 1, whiteOut: false, isDark: false };
/** A photograph of ruled paper whose light falls off from the left, a line on every twentieth row and a filled box. */
const shaded = () =>
  picture(400, 300, (x, y) => {
    const light = 250 - (x / 400) * 150;
    const isInk = y % 20 === 10 || (x > 300 && x < 340 && y > 200 && y < 240);
    return isInk ? [light * 0.2, light * 0.2, light * 0.2] : [light, light * 0.97, light * 0.9];
  });

describe("white paper", () => {
  it("is clear everywhere, in light and in shadow, and what is printed is left", () => {
    const pixels = shaded();
    treat(pixels, { ...plain, whiteOut: true });
    for (const x of [3, 200, 396]) {
      for (const y of [3, 155, 285]) expect(at(pixels, x, y)[3], `paper at ${x}, ${y}`).toBeLessThan(12);
      for (const y of [10, 150, 290]) {
        const [red, , , cover] = at(pixels, x, y);
        expect(cover, `ink at ${x}, ${y}`).toBeGreaterThan(240);
        expect(red).toBeLessThan(80);
      }
    }
    expect(at(pixels, 320, 225)[3]).toBeGreaterThan(240);
  });

  it("looks on a white page as even paper would: a red line stays red", () => {
    const pixels = picture(200, 100, (_, y) => (y === 50 ? [200, 30, 30] : [235, 235, 235]));
    treat(pixels, { ...plain, whiteOut: true });
    const [red, green, , cover] = at(pixels, 100, 50);
    expect(cover).toBe(255);
    expect(red! - green!).toBeGreaterThan(150);
  });
});

describe("contrast", () => {
  it("moves values away from middle grey and leaves that where it is", () => {
    const pixels = picture(
      3,
      1,
      (x) => [[64, 64, 64] as const, [128, 128, 128] as const, [192, 192, 192] as const][x]!,
    );
    treat(pixels, { ...plain, contrast: 2 });
    expect([0, 1, 2].map((x) => at(pixels, x, 0)[0])).toEqual([0, 128, 255]);
  });
});

describe("a dark page", () => {
  it("has light ink on paper of its own dark, and hues stay", () => {
    const pixels = picture(3, 1, (x) => [[0, 0, 0] as const, [255, 255, 255] as const, [255, 0, 0] as const][x]!);
    treat(pixels, { ...plain, isDark: true });
    expect(at(pixels, 0, 0)[0]).toBeGreaterThan(245);
    expect(at(pixels, 1, 0)).toEqual([20, 24, 29, 255]);
    const [red, green, blue] = at(pixels, 2, 0);
    expect(red).toBeGreaterThan(Math.max(green!, blue!) + 80);
  });
});

describe("laying down", () => {
  const from: Quad = [
    [40, 30],
    [350, 60],
    [380, 280],
    [20, 250],
  ];

  it("puts what lies at a spot of the photograph where the map says", () => {
    const marks: readonly Corner[] = [
      [120, 120],
      [260, 100],
      [300, 220],
    ];
    const isNear = (x: number, y: number) => marks.some(([mx, my]) => Math.hypot(x - mx, y - my) < 7);
    const source = picture(400, 300, (x, y) => (isNear(x + 0.5, y + 0.5) ? [0, 0, 0] : [255, 255, 255]));
    const onto = rectangle(0, 0, 297, 210);
    const flat = laidDown(source, from, onto, 297, 210);
    const map = projectionOf(from, onto);
    for (const mark of marks) {
      const [x, y] = projected(map, mark);
      expect(at(flat, Math.floor(x), Math.floor(y))[0]).toBeLessThan(10);
      expect(at(flat, Math.floor(x) + 15, Math.floor(y))[0]).toBeGreaterThan(245);
    }
    expect(at(flat, 0, 0)).toEqual([255, 255, 255, 255]);
  });

  it("leaves clear what is outside the corners", () => {
    const flat = laidDown(
      picture(10, 10, () => [9, 9, 9]),
      rectangle(0, 0, 10, 10),
      from,
      400,
      300,
    );
    expect(at(flat, 5, 5)[3]).toBe(0);
    expect(at(flat, 200, 10)[3]).toBe(0);
    expect(at(flat, 200, 150)).toEqual([9, 9, 9, 255]);
  });

  it("is a copy where nothing is turned or stretched", () => {
    const source = picture(31, 17, (x, y) => [x * 8, y * 15, (x * y) % 255]);
    const copy = laidDown(source, rectangle(0, 0, 31, 17), rectangle(0, 0, 31, 17), 31, 17);
    expect(copy.data).toEqual(source.data);
  });

  it("halves a picture by fours, and a clear pixel lends no colour", () => {
    const source = picture(4, 2, (x) => (x < 2 ? [200, 0, 0] : [0, 0, 100]));
    source.data[3] = 0;
    expect(at(halved(source), 0, 0)).toEqual([200, 0, 0, 191]);
    expect(at(halved(source), 1, 0)).toEqual([0, 0, 100, 255]);
  });
});

describe("what is made of a printed page", () => {
  it("is as fine as its picture, within bounds, and the same again wherever it is moved", () => {
    const { lay, box } = layOf(SHEET, false, mostPixels(1, false));
    expect(box).toEqual({ left: 0, top: 0, right: 297, bottom: 210 });
    expect([lay.width, lay.height]).toEqual([2_339, 1_654]);
    expect(isStraight(lay)).toBe(true);
    const moved = { ...SHEET, corners: rectangle(12.34, -5.67, 297, 210) };
    expect(layOf(moved, false, mostPixels(1, false)).lay).toEqual(lay);
    const small = layOf(SHEET, false, 100_000).lay;
    expect(small.width * small.height).toBeLessThan(101_000);
  });

  it("is coarser where many lie under one page, so that all of them have room", () => {
    expect(mostPixels(1, false)).toBe(9_000_000);
    expect(mostPixels(40, false) * 40).toBe(36_000_000);
    expect(mostPixels(1, true)).toBeLessThan(1_000_000);
  });

  it("is straight when it was turned by a quarter, and not when a photograph is laid askew", () => {
    const turned = {
      ...SHEET,
      corners: [
        [210, 0],
        [210, 297],
        [0, 297],
        [0, 0],
      ] as unknown as Quad,
    };
    expect(isStraight(layOf(turned, false, mostPixels(1, false)).lay)).toBe(true);
    const askew = {
      ...PHOTO,
      cut: [
        [9, 9],
        [2_000, 30],
        [1_990, 1_500],
        [40, 1_490],
      ] as unknown as Quad,
    };
    expect(isStraight(layOf(askew, false, mostPixels(1, false)).lay)).toBe(false);
  });
});
