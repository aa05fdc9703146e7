import { describe, expect, test } from "vitest";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { type SheetFar, sheetOf } from "../../core/circuit/sheet.ts";
import { inkBoxes, overlaps } from "../../core/circuit/sheetRoom.ts";
import { depth, hangs } from "../../core/circuit/sheetType.ts";
import type { Mark, TextMark } from "../../core/drawing/mark.ts";
import { type Bounds, boundsOf } from "../../core/drawing/measure.ts";
import { liveOf } from "../../core/live/live.ts";
import { linesIn, PAGES, textsIn } from "./sheetMarks.ts";

/** Pixels of a word, and points of a pixel at 100 %. */
const PIXELS = 48;
const PIXEL_POINTS = 0.75;
/** Letters within symbols, as the M of a motor or the plus of a post, are part of them. */
const SIGN = /^[^\d]$/;

function far(circuit: Circuit, page: string, zoom: number, about: Partial<SheetFar> = {}): readonly Mark[] {
  const whole = circuit.pages.find(({ id }) => id === page)!;
  const seen = { left: 0, top: 0, right: whole.widthMm / 2.5, bottom: whole.heightMm / 2.5 };
  const live = liveOf(circuit, circuit.scenes[1]?.condition ?? {});
  const drawn = sheetOf({ circuit, page, live, zoom, far: { pixels: PIXELS, named: null, seen, ...about } });
  if (!drawn.ok) throw new Error(drawn.refusal.code);
  return drawn.value.marks;
}

/** The letters of a word, without the room that most of them leave below the line. */
function lettersOf(word: TextMark): Bounds {
  return { ...boundsOf(word), bottom: word.at.y + (hangs(word.text) ? depth(word.points) : 0) };
}

/** Pairs of words that lie on each other, and words that lie on a wire. */
function clashes(circuit: Circuit, marks: readonly Mark[]): readonly unknown[] {
  const wires = new Set(circuit.wires.map(({ id }) => id));
  const lines = linesIn(marks).filter(({ of, role }) => wires.has(of ?? "") && role.startsWith("wire-"));
  const words = textsIn(marks).map((mark) => ({ mark, box: lettersOf(mark) }));
  const onWords = words.flatMap((one, at) =>
    words
      .slice(at + 1)
      .filter(({ box }) => overlaps(one.box, box))
      .map(({ mark }) => [one.mark.text, mark.text]),
  );
  const onWires = words.flatMap(({ mark, box }) =>
    lines.flatMap((line) => (inkBoxes(line).some((ink) => overlaps(ink, box)) ? [[mark.text, line.of]] : [])),
  );
  return [...onWords, ...onWires];
}

describe.each(PAGES)("%s from afar", (_name, circuit, page) => {
  test("says little, as high as asked at any zoom, each word clear of the others and of all wires", () => {
    for (const zoom of [0.7, 1.3]) {
      const marks = far(circuit, page, zoom);
      const words = textsIn(marks).filter(({ text }) => !SIGN.test(text));
      for (const { points } of words) expect((points * zoom) / PIXEL_POINTS).toBeGreaterThanOrEqual(PIXELS - 0.01);
      expect(clashes(circuit, marks)).toEqual([]);
    }
  });

  test("gives words only to what is in focus, inside what is seen, and leaves its wires where they lie", () => {
    const here = circuit.parts.filter(({ id }) => circuit.placement.parts[id]?.page === page).map(({ id }) => id);
    const named = new Set(here.slice(0, 4));
    const places = here.slice(0, 4).map((id) => circuit.placement.parts[id]!);
    const [x, y] = [places[0]!.x, places[0]!.y];
    const seen = { left: x - 25, top: y - 25, right: x + 25, bottom: y + 25 };
    const marks = far(circuit, page, 1, { named, seen });
    for (const text of textsIn(marks).filter(({ text }) => !SIGN.test(text))) {
      expect(named).toContain(text.of);
      const { left, top, right, bottom } = boundsOf(text);
      expect([left >= seen.left, top >= seen.top, right <= seen.right, bottom <= seen.bottom]).not.toContain(false);
    }
    const near = sheetOf({ circuit, page, live: liveOf(circuit, circuit.scenes[1]?.condition ?? {}), zoom: 1 });
    const wires = new Set(circuit.wires.map(({ id }) => id));
    const isWire = ({ role, of }: { role: string; of?: string }): boolean =>
      role.startsWith("wire-") && wires.has(of ?? "");
    expect(linesIn(marks).filter(isWire)).toEqual(near.ok && linesIn(near.value.marks).filter(isWire));
  });
});
