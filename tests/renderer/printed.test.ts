import { describe, expect, it, vi } from "vitest";
import { ok, refuse } from "../../core/base/outcome.ts";
import type { Underlay } from "../../core/circuit/circuit.ts";
import { cutOf, fitted, underlayAt } from "../../core/circuit/underlays.ts";
import { boxAround, mappedQuad, projectionOf, type Quad, rectangle } from "../../core/drawing/projection.ts";
import { benchFor } from "../../core/edit/bench.ts";
import { printedUnder } from "../../core/edit/printedUnder.ts";
import type { Host } from "../../renderer/host/host.ts";
import { allMoved, allScaled, begun, cornerMoved, squareOn, takenBy } from "../../renderer/printed/adjusting.ts";
import { layOf } from "../../renderer/printed/lay.ts";
import { counted, pagesText, pagesTyped } from "../../renderer/printed/pageNumbers.ts";
import { keptSize, stepFor } from "../../renderer/printed/pictureSource.ts";
import type { LayPort } from "../../renderer/printed/pictures.ts";
import { picturesOf } from "../../renderer/printed/pictures.ts";
import { mayBePrinted, titleOf } from "../../renderer/printed/source.ts";
import { PHOTO, printedOn, SHEET } from "../circuit/printed.ts";
import { after, codeOf, got, SMALL } from "../edit/given.ts";

describe("pages typed", () => {
  it.each([
    ["3, 5-8", [3, 5, 6, 7, 8]],
    ["8 3;3", [3, 8]],
    ["", []],
    ["1-9", [1, 2, 3, 4, 5, 6, 7, 8, 9]],
  ])("%s", (text, pages) => expect(got(pagesTyped(text, 9))).toEqual(pages));

  it.each(["0", "10", "5-3", "2-10", "two", "1-2-3", "-4"])("%s names none", (text) =>
    expect(codeOf(pagesTyped(text, 9))).toBe("pages-typed"),
  );

  it("are not too many at once", () => {
    expect(codeOf(pagesTyped("1-41", 500))).toBe("pages-many");
    expect(codeOf(counted(Array.from({ length: 41 }, (_, page) => page)))).toBe("pages-many");
    expect(pagesTyped("1-40", 500).ok).toBe(true);
  });

  it("are written the shortest way", () => expect(pagesText([1, 2, 3, 5, 7, 8])).toBe("1-3, 5, 7-8"));
});

describe("a picture that comes in", () => {
  const head = (widthPx: number, heightPx: number, orientation = 1) =>
    ({ mime: "image/jpeg", widthPx, heightPx, orientation }) as const;

  it.each([
    ["as it is", head(4_000, 3_000), 3_000_000, "keep"],
    ["turned upright", head(4_000, 3_000, 6), 3_000_000, "redraw"],
    ["brought down from 100 million pixels", head(11_500, 8_700), 9_000_000, "redraw"],
    ["brought down from too many bytes", head(4_000, 3_000), 24_000_001, "redraw"],
    ["brought down from too long a side", head(20_000, 100), 1_000, "redraw"],
  ] as const)("%s", (_, picture, bytes, step) => expect(got(stepFor(picture, bytes))).toBe(step));

  it("is not decoded where it is huge", () => expect(codeOf(stepFor(head(20_000, 8_000), 1_000))).toBe("picture-huge"));

  it("keeps its shape and what pixels it may", () => {
    expect(keptSize(4_000, 3_000)).toEqual([4_000, 3_000]);
    const [width, height] = keptSize(11_500, 8_700);
    expect(width * height).toBeLessThanOrEqual(16_000_000);
    expect(width / height).toBeCloseTo(11_500 / 8_700, 2);
    expect(keptSize(30_000, 10)).toEqual([12_000, 4]);
  });

  it("is told by its type or its name, and named by its file", () => {
    expect(mayBePrinted({ name: "scan", type: "image/png" })).toBe(true);
    expect(mayBePrinted({ name: "Manual.PDF", type: "" })).toBe(true);
    expect(mayBePrinted({ name: "vents.circuit.json", type: "application/json" })).toBe(false);
    expect(titleOf({ name: "manual.pdf", pages: 9 }, 3)).toBe("manual.pdf, page 3");
    expect(titleOf({ name: "bench.jpg", pages: 1 }, 1)).toBe("bench.jpg");
  });
});

const circuit = printedOn(SMALL);
const page = circuit.pages[0]!;
const bench = benchFor(circuit);

/** The printed page after an adjustment was taken. */
function taken(
  now: ReturnType<typeof begun>,
  underlay: Underlay,
  paper: readonly [number, number] | null = null,
): Underlay {
  return underlayAt(after(bench, takenBy(now, underlay, page, paper)(bench)).circuit, underlay.id)!.underlay;
}

describe("laying a printed page", () => {
  const start = begun(PHOTO, page, "lay");

  it("moves and scales all of it", () => {
    expect(boxAround(allMoved(start, 5, -3).quad)).toEqual({ left: 25, top: 7, right: 225, bottom: 157 });
    expect(boxAround(allScaled(start, 2).quad)).toEqual({ left: -80, top: -65, right: 320, bottom: 235 });
    expect(taken(allMoved(start, 5, -3), PHOTO).corners[0]).toEqual([25, 7]);
  });

  it("stretches it from the corner across and keeps its shape, or moves one corner alone", () => {
    const larger = cornerMoved(start, PHOTO, page, 2, [240, 175], false);
    const { left, top, right, bottom } = boxAround(larger.quad);
    expect([left, top]).toEqual([20, 10]);
    expect((right - left) / (bottom - top)).toBeCloseTo(200 / 150, 9);
    const alone = cornerMoved(start, PHOTO, page, 2, [240, 175], true);
    expect(alone.quad).toEqual([start.quad[0], start.quad[1], [240, 175], start.quad[3]]);
  });

  it("does not take a fold", () => expect(cornerMoved(start, PHOTO, page, 2, [0, 0], true)).toBe(start));
});

describe("making a photograph square", () => {
  const whole = projectionOf(rectangle(0, 0, 2_048, 1_536), fitted(page, 2_048, 1_536));
  const paper: Quad = [
    [210, 160],
    [1_900, 240],
    [2_000, 1_450],
    [100, 1_380],
  ];

  it("cuts out what lies between the handles and lays it as the paper that it is, lying as in the photograph", () => {
    const quad = mappedQuad(whole, paper);
    const now = quad.reduce(
      (now, corner, at) => cornerMoved(now, PHOTO, page, at, corner, true),
      begun(PHOTO, page, "square"),
    );
    const square = taken(now, PHOTO, [210, 297]);
    for (const [index, [x, y]] of square.cut!.entries()) {
      expect(Math.hypot(x - paper[index]![0], y - paper[index]![1])).toBeLessThan(0.02);
    }
    expect(square.corners).toEqual(rectangle((page.widthMm - 297) / 2, (page.heightMm - 210) / 2, 297, 210));
    expect(squareOn(page, rectangle(0, 0, 600, 900), [210, 297])[1][0]).toBe((page.widthMm + 210) / 2);
  });

  it("keeps the handles in the picture, and begins with those of the last time", () => {
    const now = cornerMoved(begun(PHOTO, page, "square"), PHOTO, page, 0, [-500, -500], true);
    expect(now.quad[0]).toEqual(fitted(page, 2_048, 1_536)[0]);
    const again = begun({ ...PHOTO, cut: paper }, page, "square");
    const [x, y] = mappedQuad(whole, paper)[2];
    expect(again.quad[2][0]).toBeCloseTo(x, 9);
    expect(again.quad[2][1]).toBeCloseTo(y, 9);
  });
});

describe("cropping", () => {
  it("moves the two sides at a corner, within what is shown, and what is left stays where it lies", () => {
    const start = begun(SHEET, page, "crop");
    const now = cornerMoved(start, SHEET, page, 0, [29.7, 21], false);
    expect(now.quad[0].map(Math.round)).toEqual([30, 21]);
    const cropped = taken(now, SHEET);
    expect(boxAround(cutOf(cropped)).left).toBeCloseTo(233.9, 1);
    expect(boxAround(cropped.corners)).toEqual({ left: 29.7, top: 21, right: 297, bottom: 210 });
    expect(cornerMoved(start, SHEET, page, 1, [500, -9], false).quad).toEqual(start.quad);
  });
});

describe("the print under a part or wire", () => {
  it("is the topmost in sight that lies under its middle", () => {
    const part = SMALL.parts.find(({ id }) => SMALL.placement.parts[id]?.page === page.id)!;
    const hit = printedUnder(circuit, part.id)!;
    expect(["u1", "u2"]).toContain(hit.underlay);
    const hidden = printedOn(SMALL, { isHidden: true });
    expect(printedUnder(SMALL, part.id)).toBeNull();
    expect(printedUnder(circuit, "no-such")).toBeNull();
    for (const { id } of SMALL.wires) expect(printedUnder(hidden, id)?.underlay ?? "u2").toBe("u2");
  });
});

describe("pictures made ready", () => {
  /** A worker that answers when it is told to. */
  function port() {
    const asked: number[] = [];
    const made: LayPort = { onmessage: null, onerror: null, postMessage: ({ number }) => void asked.push(number) };
    const answer = (levels: readonly ImageBitmap[], trouble = {}) =>
      made.onmessage?.({ data: { number: asked.at(-1)!, levels, ...trouble } } as MessageEvent);
    return { made, asked, answer };
  }
  const host = (bytes: () => Promise<unknown>): Host => ({ name: "memory", ask: bytes as Host["ask"] });
  const bitmap = { close: () => undefined } as ImageBitmap;
  const lay = (moved: number) => layOf({ ...SHEET, contrast: 1 + moved }, false, 1_000).lay;

  it("are fetched once and made one after another; of those that wait for one page only the newest is", async () => {
    const { made, asked, answer } = port();
    const ask = vi.fn(async () => ok({ mime: "image/png", bytes: "" }));
    const note = vi.fn();
    const pictures = picturesOf(host(ask), () => made, { note });
    const results = [0, 1, 2].map((moved) => pictures.laid(lay(moved), "u1"));
    await vi.waitFor(() => expect(asked).toHaveLength(1));
    answer([bitmap]);
    expect(await results[0]).toEqual([bitmap]);
    expect(await results[1]).toBeNull();
    await vi.waitFor(() => expect(asked).toHaveLength(2));
    answer([]);
    expect(await results[2]).toBeNull();
    expect(ask).toHaveBeenCalledTimes(1);
    expect(note).not.toHaveBeenCalled();
    // The program's own error is one that a report tells of.
    const last = pictures.laid(lay(3), "u1");
    await vi.waitFor(() => expect(asked).toHaveLength(3));
    answer([], { trouble: "no canvas", at: "at contextOf" });
    expect(await last).toBeNull();
    expect(note).toHaveBeenCalledExactlyOnceWith(expect.objectContaining({ message: "no canvas" }), "worker");
  });

  it("that cannot be fetched are none, and are asked for again", async () => {
    const { made, asked } = port();
    const ask = vi.fn(async () => refuse("picture-unknown"));
    const pictures = picturesOf(host(ask), () => made, { note: vi.fn() });
    expect(await pictures.laid(lay(0), "u1")).toBeNull();
    expect(codeOf(await pictures.file(SHEET.image.sha256))).toBe("picture-unknown");
    expect(ask).toHaveBeenCalledTimes(2);
    expect(asked).toEqual([]);
  });
});
