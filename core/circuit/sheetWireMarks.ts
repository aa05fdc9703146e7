import type { WireState } from "../base/states.ts";
import type { Amps, GridUnits } from "../base/units.ts";
import { chevronMarks } from "../drawing/glyph.ts";
import type { LineMark, Mark, Role, Spot } from "../drawing/mark.ts";
import { spotAlong } from "../drawing/path.ts";
import { isPlugApart } from "./sheetPlugs.ts";
import type { SheetRoom } from "./sheetRoom.ts";
import type { SheetSetup } from "./sheetSetup.ts";
import { HALF_CUT, piecesOf, type SheetWire, stretchOf } from "./sheetWire.ts";

const DOT: GridUnits = 0.42;
/** Half the length of the strokes at a cut, and at a plug, beside which its name stands. */
const HALF_STROKE: GridUnits = 0.75;
const HALF_PLUG: GridUnits = 0.45;
/** How far from the terminal a plug that is apart is drawn open. */
const PLUG_GAP: GridUnits = 1;
/** One chevron for each stretch of about this length, clear of corners and joins. */
const CHEVRON_EVERY: GridUnits = 14;
const CHEVRON_CLEAR: GridUnits = 1.4;
/** Half the width of a chevron with its edge of paper. */
const CHEVRON_REACH: GridUnits = 0.58;
const SHORTEST_WITH_CHEVRON: GridUnits = 3.4;
/** Less current than this is not shown. */
const LEAST_AMPS: Amps = 0.005;

/** The lines of all wires, each end in its state, open where the ends differ or a plug is apart. */
export function lineMarks(setup: SheetSetup, wires: readonly SheetWire[]): readonly Mark[] {
  return wires.flatMap((wire) => {
    const { corners, from, to, cut } = wire;
    const id = wire.wire.id;
    const isApart = [from === 0 && isPlugApart(setup, wire.wire.from), isPlugApart(setup, wire.wire.to)];
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
            ...piece(start, cut - HALF_CUT, roleAt(wire, 0)),
            ...strokes(corners, cut, HALF_STROKE, id),
            ...piece(cut + HALF_CUT, end, roleAt(wire, 1)),
          ];
    return [
      ...(isApart[0] ? plugMarks(corners, from, from + PLUG_GAP, id) : []),
      ...halves,
      ...(isApart[1] ? plugMarks(corners, to, to - PLUG_GAP, id) : []),
    ];
  });
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
  const dots = new Map<string, { at: Spot; state: WireState | null }>();
  for (const dot of wires.flatMap(({ dots: each }) => each)) dots.set(`${dot.at.x} ${dot.at.y}`, dot);
  return [...dots.values()].map(({ at, state }) => ({
    mark: "circle",
    at,
    radius: DOT,
    role: state === null ? "joint" : `glyph-${state}`,
    filled: true,
  }));
}

/** Chevrons of current, + to -, on every longer straight piece, clear of the words taken in the room. */
export function currentMarks(wires: readonly SheetWire[], room: SheetRoom): readonly Mark[] {
  const busy = busySpots(wires);
  return wires.flatMap(({ live, corners, from, to, cut, wire }) => {
    if (live === null || cut !== null || Math.abs(live.amps) < LEAST_AMPS) return [];
    return piecesOf(corners, from, to).flatMap(({ start, length }) => {
      if (length < SHORTEST_WITH_CHEVRON) return [];
      const count = Math.max(1, Math.round(length / CHEVRON_EVERY));
      return Array.from({ length: count }, (_, i) => start + (length * (i + 0.5)) / count).flatMap((wanted) => {
        const place = clearPlace(corners, wanted, Math.min(length / count / 2, 4), busy, room);
        if (place === null) return [];
        const { at, degrees } = spotAlong(corners, place);
        return chevronMarks(at, live.amps > 0 ? degrees : degrees + 180, live.state[0], wire.id);
      });
    });
  });
}

/** The place nearest to the wanted length that is clear of corners, ends, joins and crossings. */
function clearPlace(
  corners: readonly Spot[],
  wanted: GridUnits,
  most: GridUnits,
  busy: readonly Spot[],
  room: SheetRoom,
): GridUnits | null {
  for (let shift = 0; shift <= most; shift += 0.5) {
    for (const place of [wanted + shift, wanted - shift]) {
      const { at } = spotAlong(corners, place);
      const isClear = busy.every(({ x, y }) => Math.hypot(at.x - x, at.y - y) >= CHEVRON_CLEAR);
      const box = { left: at.x, top: at.y, right: at.x, bottom: at.y };
      if (isClear && room.isFree(box, CHEVRON_REACH)) return place;
    }
  }
  return null;
}

/** Corners, ends, joins and crossings of all wires. */
function busySpots(wires: readonly SheetWire[]): readonly Spot[] {
  const spots = wires.flatMap(({ corners, dots }) => [...corners, ...dots.map(({ at }) => at)]);
  const passed = new Map<string, { at: Spot; count: number }>();
  for (const { corners, from, to } of wires) {
    for (const { a, b, length } of piecesOf(corners, from, to)) {
      for (let n = 1; n < length; n++) {
        const at = { x: a.x + ((b.x - a.x) * n) / length, y: a.y + ((b.y - a.y) * n) / length };
        const key = `${at.x} ${at.y}`;
        passed.set(key, { at, count: (passed.get(key)?.count ?? 0) + 1 });
      }
    }
  }
  return [...spots, ...[...passed.values()].filter(({ count }) => count > 1).map(({ at }) => at)];
}
