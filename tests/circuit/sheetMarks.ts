import { readdirSync, readFileSync } from "node:fs";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { inkBoxes, overlaps } from "../../core/circuit/sheetRoom.ts";
import type { LineMark, Mark, TextMark } from "../../core/drawing/mark.ts";
import { type Bounds, boundsOf } from "../../core/drawing/measure.ts";
import { readCircuit } from "../../schemas/circuit.ts";
import { VENT } from "./ventFixture.ts";

const SAMPLES = new URL("../../samples/", import.meta.url);

function samples(): readonly (readonly [string, Circuit])[] {
  const files = readdirSync(SAMPLES).filter((name) => name.endsWith(".circuit.json"));
  return files.map((name) => {
    const read = readCircuit(readFileSync(new URL(name, SAMPLES), "utf8"));
    if (!read.ok) throw new Error(`${name}: ${read.refusal.code}`);
    return [name, read.value];
  });
}

/** The circuits that sheets are tried with: the fixture and all samples. */
export const CIRCUITS: readonly (readonly [string, Circuit])[] = [["one vent", VENT], ...samples()];

/** Each page of each of them, with a name for the test. */
export const PAGES = CIRCUITS.flatMap(([name, circuit]) =>
  circuit.pages.map(({ id }) => [`${name}, page ${id}`, circuit, id] as const),
);

export const textsIn = (marks: readonly Mark[]) => marks.filter((mark): mark is TextMark => mark.mark === "text");
export const linesIn = (marks: readonly Mark[]) => marks.filter((mark): mark is LineMark => mark.mark === "line");

/** The box, smaller by so much on all sides. */
export function shrunk({ left, top, right, bottom }: Bounds, by: number): Bounds {
  return { left: left + by, top: top + by, right: right - by, bottom: bottom - by };
}

/** Pairs of texts whose boxes share more than a hair. */
export function textClashes(marks: readonly Mark[]) {
  const boxes = textsIn(marks).map((mark) => ({ mark, box: shrunk(boundsOf(mark), 0.03) }));
  return boxes.flatMap((one, i) =>
    boxes
      .slice(i + 1)
      .filter((other) => overlaps(one.box, other.box))
      .map((other) => [one.mark.text, other.mark.text]),
  );
}

/** Texts that lie on a wire, its glyphs or its chevrons. */
export function wireClashes(circuit: Circuit, marks: readonly Mark[]) {
  const ids = new Set(circuit.wires.map(({ id }) => id));
  const wires = linesIn(marks).filter(({ of, role }) => ids.has(of ?? "") && /^(wire-|glyph-|symbol$)/.test(role));
  const boxes = wires.flatMap((mark) => {
    const halfStroke = mark.filled ? 0 : 0.1;
    return inkBoxes(mark).map((box) => ({ of: mark.of, box: shrunk(box, -halfStroke) }));
  });
  return textsIn(marks).flatMap((mark) =>
    boxes.filter(({ box }) => overlaps(box, boundsOf(mark))).map(({ of }) => [mark.text, of]),
  );
}
