import { describe, expect, test } from "vitest";
import { placeSymbol, terminalSpots } from "../../core/circuit/placeSymbol.ts";
import { line, text } from "../../core/drawing/shapes.ts";
import type { SymbolShape } from "../../core/parts/kind.ts";
import { VENT } from "./ventFixture.ts";

/** 4 wide and 8 high: terminal 1 on top, 2 at the right edge. */
const SHAPE: SymbolShape = {
  width: 4,
  height: 8,
  terminals: { "1": { x: 1, y: 0, side: "up" }, "2": { x: 4, y: 6, side: "right" } },
  marks: [line("symbol", 1, 0, 1, 2), text("M", 3, 5, { anchor: "start" })],
  nameAt: { x: 4.6, y: 3, anchor: "start" },
};

const at = { page: "p1", x: 10, y: 20 };

describe("a placed symbol", () => {
  test("stands with its top left at its place", () => {
    const { outline, terminals } = placeSymbol(SHAPE, at);
    expect(outline).toEqual({ left: 10, top: 20, right: 14, bottom: 28 });
    expect(terminals["1"]).toEqual({ x: 11, y: 20, side: "up" });
  });

  test("turned a quarter clockwise has its top at the right", () => {
    const { outline, terminals } = placeSymbol(SHAPE, { ...at, turn: 90 });
    expect(outline).toEqual({ left: 10, top: 20, right: 18, bottom: 24 });
    expect(terminals).toEqual({ "1": { x: 18, y: 21, side: "right" }, "2": { x: 12, y: 24, side: "down" } });
  });

  test("turned a half has left and right, top and foot changed", () => {
    const { terminals } = placeSymbol(SHAPE, { ...at, turn: 180 });
    expect(terminals).toEqual({ "1": { x: 13, y: 28, side: "down" }, "2": { x: 10, y: 22, side: "left" } });
  });

  test("turned three quarters has its top at the left", () => {
    const { terminals } = placeSymbol(SHAPE, { ...at, turn: 270 });
    expect(terminals).toEqual({ "1": { x: 10, y: 23, side: "left" }, "2": { x: 16, y: 20, side: "up" } });
  });

  test("flipped has left and right changed, before it is turned", () => {
    expect(placeSymbol(SHAPE, { ...at, flip: true }).terminals["2"]).toEqual({ x: 10, y: 26, side: "left" });
    expect(placeSymbol(SHAPE, { ...at, flip: true, turn: 90 }).terminals["2"]).toEqual({ x: 12, y: 20, side: "up" });
  });

  test("keeps its type upright whichever way it stands", () => {
    for (const turn of [0, 90, 180, 270] as const) {
      const [mark] = placeSymbol(SHAPE, { ...at, turn, flip: turn === 90 }).marks.filter(({ mark }) => mark === "text");
      expect(mark).toMatchObject({ mark: "text", text: "M" });
      expect(mark).not.toHaveProperty("turn");
    }
  });

  test("mirrors the side on which its name begins", () => {
    expect(placeSymbol(SHAPE, { ...at, flip: true }).nameAt).toEqual({ x: 9.4, y: 23, anchor: "end" });
    expect(placeSymbol(SHAPE, { ...at, turn: 90 }).nameAt.anchor).toBe("middle");
  });
});

describe("terminal spots", () => {
  test("are found by the terminal and by the cavity that carries it", () => {
    const spots = terminalSpots(VENT, "p1");
    expect(spots.get("X5-6")).toEqual(spots.get("S5.6"));
    expect(spots.get("X5-6")).toMatchObject({ part: "S5", terminal: "6", side: "up" });
    expect(spots.has("E1.1")).toBe(false);
  });

  test("lie on whole grid units", () => {
    for (const { x, y } of terminalSpots(VENT, "p1").values()) expect([x % 1, y % 1]).toEqual([0, 0]);
  });
});
