import { describe, expect, test } from "vitest";
import type { Mark } from "../../core/drawing/mark.ts";
import { type Face, faceOf } from "../../core/paper/face.ts";
import { blockOf } from "../../core/paper/faceBlock.ts";
import { facePiece } from "../../core/paper/facePiece.ts";
import { VENT_CIRCUIT } from "./fixtures.ts";
import { millimetreBounds } from "./geometry.ts";

const names = (face: Face) => face.rows.map((row) => row.map((place) => place?.name ?? ""));

/** A plug with so many places in one row. */
function wide(columns: number): Face {
  const place = (i: number) => ({ name: `${i}`, point: `X9-${i}`, colour: null, isWired: true });
  return { rows: [Array.from({ length: columns }, (_, i) => place(i + 1))], caption: "X9", hasLatch: true };
}

describe("the face of a point", () => {
  test("of a plug is its rows as they are written, and its unwired places are known", () => {
    const face = faceOf(VENT_CIRCUIT, "X5-4");
    expect(names(face)).toEqual([
      ["1", "2", "3"],
      ["4", "5", "6"],
    ]);
    expect(
      face.rows
        .flat()
        .filter((place) => !place!.isWired)
        .map((place) => place!.name),
    ).toEqual(["3"]);
  });

  test("of the two halves of a joint mirrors, each as its own wire side shows it", () => {
    expect(names(faceOf(VENT_CIRCUIT, "X32-1a"))).toEqual([["1", "2"]]);
    expect(names(faceOf(VENT_CIRCUIT, "X32-1b"))).toEqual([["2", "1"]]);
    expect(faceOf(VENT_CIRCUIT, "X32-1b").rows[0]![0]!.point).toBe("X32-2b");
    expect(faceOf(VENT_CIRCUIT, "X32-1b").caption).toBe("X32b");
  });

  test("of a terminal is the part's terminals, without a latch", () => {
    const face = faceOf(VENT_CIRCUIT, "M3.2");
    expect(names(face)).toEqual([["1", "2"]]);
    expect(face.hasLatch).toBe(false);
  });

  test("of what the circuit does not have is one place of that name", () => {
    expect(names(faceOf(VENT_CIRCUIT, "Z1-9"))).toEqual([["Z1-9"]]);
  });
});

describe("the block of a face that is drawn", () => {
  test("is the whole face up to four columns, without a cut", () => {
    const block = blockOf(wide(4), 4, 3, "X9-1", "battery -");
    expect(block.rows[0]!.length).toBe(4);
    expect([block.cutLeft, block.cutRight, block.cutTop, block.cutBottom]).toEqual([false, false, false, false]);
  });

  test("of a wider plug is four columns with the pin among them, cut where places are left out", () => {
    for (let pin = 1; pin <= 20; pin++) {
      const block = blockOf(wide(20), 4, 3, `X9-${pin}`, "battery -");
      const shown = block.rows[0]!.map((place) => Number(place!.name));
      expect(shown).toHaveLength(4);
      expect(shown).toContain(pin);
      expect(block.cutLeft).toBe(shown[0] !== 1);
      expect(block.cutRight).toBe(shown[3] !== 20);
    }
  });

  test("holds the black lead's place too where it is near enough", () => {
    const shown = (black: string) => blockOf(wide(20), 4, 3, "X9-10", black).rows[0]!.map((place) => place!.point);
    expect(shown("X9-13")).toContain("X9-13");
    expect(shown("X9-7")).toContain("X9-7");
    expect(shown("X9-15")).not.toContain("X9-15");
  });
});

describe("the face as drawn", () => {
  const marks = facePiece(faceOf(VENT_CIRCUIT, "X32-1b"), "X32-1b", "X32-2b", 25).at(0, 0);
  const sizeOf = (mark: Mark) => {
    const { left, top, right, bottom } = millimetreBounds(mark);
    return [right - left, bottom - top].map((each) => Math.round(each * 100) / 100);
  };

  test("has the red pin solid with a white number, the black pin in a heavy ring, both 5 x 5 mm", () => {
    const solid = marks.filter((mark) => mark.mark === "box" && mark.role === "solid");
    const ringed = marks.filter((mark) => mark.mark === "box" && mark.role === "caution");
    expect([...solid, ...ringed].map(sizeOf)).toEqual([
      [5, 5],
      [5, 5],
    ]);
    const white = marks.filter((mark) => mark.mark === "text" && mark.role === "paper");
    expect(white.map((mark) => mark.mark === "text" && mark.text)).toEqual(["1"]);
  });

  test("has its latch on top", () => {
    const top = (mark: Mark) => millimetreBounds(mark).top;
    const latch = marks.find((mark) => mark.mark === "line")!;
    expect(Math.min(...marks.map(top))).toBe(top(latch));
  });
});
