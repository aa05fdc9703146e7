import { remember } from "../base/memo.ts";
import type { GridUnits } from "../base/units.ts";
import type { LineMark, Mark, Role, Spot } from "../drawing/mark.ts";
import { spotAlong } from "../drawing/path.ts";
import { ListsAgain } from "./sheetLists.ts";
import { isPlugApart } from "./sheetPlugs.ts";
import type { SheetSetup } from "./sheetSetup.ts";
import { HALF_CUT, type SheetWire, spotKey, stretchOf, type WireDot } from "./sheetWire.ts";

const DOT: GridUnits = 0.42;
/** Half the length of the strokes at a cut, and at a plug, beside which its name stands. */
const HALF_STROKE: GridUnits = 0.75;
const HALF_PLUG: GridUnits = 0.45;
/** How far from the terminal a plug that is apart is drawn open. */
const PLUG_GAP: GridUnits = 1;

/** The lines of all wires, each end in its state, open where a wire is broken or a plug is apart. */
export function lineMarks(setup: SheetSetup, wires: readonly SheetWire[]): readonly Mark[] {
  return wires.flatMap((wire) => linesOf(setup, wire).marks);
}

interface Lines {
  readonly marks: readonly Mark[];
  /** Those in ink: of broken wires, of plugs that are apart, and all where there is no live state. */
  readonly inked: readonly Mark[];
}

/** The lines of one page at one sight as they were last drawn: those of the same wire stay. */
export class LineMemory {
  private circuit: SheetSetup["circuit"] | null = null;
  private apart: readonly string[] = [];
  private readonly marks = new ListsAgain<SheetWire, Mark>();
  private readonly inked = new ListsAgain<SheetWire, Mark>();
  private wires: readonly SheetWire[] = [];
  private dots: readonly Mark[] = [];

  /** The same as `lineMarks`, those in ink apart, and `dotMarks`. */
  draw(setup: SheetSetup, wires: readonly SheetWire[]): Lines & { readonly dots: readonly Mark[] } {
    const { circuit, live } = setup;
    const apart = live?.condition.apart ?? [];
    const isPlugged = apart.length === 0 && this.apart.length === 0;
    const isAnew = !isPlugged && (circuit !== this.circuit || apart !== this.apart);
    if (!isDottedAlike(wires, this.wires)) this.dots = dotMarks(wires);
    this.circuit = circuit;
    this.apart = apart;
    this.wires = wires;
    const marks = this.marks.join(wires, (wire) => linesOf(setup, wire).marks, isAnew);
    return { marks, inked: this.inked.join(wires, (wire) => linesOf(setup, wire).inked, isAnew), dots: this.dots };
  }
}

/** Whether two layings have the same dots: where wires differ, there are none. */
function isDottedAlike(one: readonly SheetWire[], other: readonly SheetWire[]): boolean {
  const isAlike = (wire: SheetWire, index: number) =>
    wire === other[index] || (wire.dots.length === 0 && other[index]!.dots.length === 0);
  return one.length === other.length && one.every(isAlike);
}

/** Lines of a wire: with both plugs in, the first apart, the second, and both. */
const linesKnown = remember((_wire: SheetWire): (Lines | undefined)[] => []);

function linesOf(setup: SheetSetup, sheetWire: SheetWire): Lines {
  const { from, to } = sheetWire.wire;
  const isApart = [sheetWire.from === 0 && isPlugApart(setup, from), isPlugApart(setup, to)] as const;
  const known = linesKnown(sheetWire);
  const key = Number(isApart[0]) + 2 * Number(isApart[1]);
  const lines = known[key] ?? drawLines(sheetWire, isApart);
  known[key] = lines;
  return lines;
}

function drawLines(wire: SheetWire, isApart: readonly [boolean, boolean]): Lines {
  const { corners, from, to, cut, isBroken } = wire;
  const gap = isBroken ? HALF_CUT : 0;
  const id = wire.wire.id;
  const start = isApart[0] ? from + PLUG_GAP + HALF_CUT : from;
  const end = isApart[1] ? to - PLUG_GAP - HALF_CUT : to;
  const piece = (a: GridUnits, b: GridUnits, role: Role): readonly Mark[] => {
    const spots = stretchOf(corners, a, b);
    return spots.length > 1 ? [{ mark: "line", spots, role, of: id }] : [];
  };
  const halves =
    cut === null
      ? piece(start, end, roleAt(wire, 0))
      : [
          ...piece(start, cut - gap, roleAt(wire, 0)),
          ...(isBroken ? strokes(corners, cut, HALF_STROKE, id) : []),
          ...piece(cut + gap, end, roleAt(wire, 1)),
        ];
  const marks = [
    ...(isApart[0] ? plugMarks(corners, from, from + PLUG_GAP, id) : []),
    ...halves,
    ...(isApart[1] ? plugMarks(corners, to, to - PLUG_GAP, id) : []),
  ];
  return { marks, inked: marks.filter((mark) => "role" in mark && mark.role === "symbol") };
}

function roleAt({ live }: SheetWire, end: 0 | 1): Role {
  return live === null ? "symbol" : `wire-${live.state[end]}`;
}

/** A plug that is apart: what is left at the terminal in ink, and the gap. */
function plugMarks(corners: readonly Spot[], terminal: GridUnits, gap: GridUnits, of: string): readonly Mark[] {
  const near = gap - Math.sign(gap - terminal) * HALF_CUT;
  const spots = stretchOf(corners, Math.min(terminal, near), Math.max(terminal, near));
  return [{ mark: "line", spots, role: "symbol", of }, ...strokes(corners, gap, HALF_PLUG, of)];
}

/** Two strokes across the wire, one at each side of the gap. */
function strokes(corners: readonly Spot[], gap: GridUnits, half: GridUnits, of: string): readonly LineMark[] {
  return [gap - HALF_CUT, gap + HALF_CUT].map((length) => {
    const { at, degrees } = spotAlong(corners, length);
    const isLevel = Math.abs(Math.cos((degrees * Math.PI) / 180)) > 0.5;
    const [dx, dy] = isLevel ? [0, half] : [half, 0];
    return {
      mark: "line",
      spots: [
        { x: at.x - dx, y: at.y - dy },
        { x: at.x + dx, y: at.y + dy },
      ],
      role: "symbol",
      of,
    };
  });
}

/** A dot wherever wires of one terminal part. */
export function dotMarks(wires: readonly SheetWire[]): readonly Mark[] {
  const dots = new Map<number, WireDot>();
  for (const { dots: each } of wires) for (const dot of each) dots.set(spotKey(dot.at.x, dot.at.y), dot);
  return [...dots.values()].map(dotMark);
}

const dotMark = remember(({ at, state }: WireDot): Mark => {
  const role = state === null ? "joint" : (`glyph-${state}` as const);
  return { mark: "circle", at, radius: DOT, role, filled: true };
});
