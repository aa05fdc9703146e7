import type { GridUnits } from "../base/units.ts";
import type { Anchor, Mark, Spot, TextMark } from "../drawing/mark.ts";
import { boundsOf } from "../drawing/measure.ts";
import type { Kind, Side } from "../parts/kind.ts";
import { isInLine } from "./points.ts";
import { terminalKey } from "./sheetPage.ts";
import { cavityTexts } from "./sheetPlugs.ts";
import type { SheetRoom } from "./sheetRoom.ts";
import type { SheetPart, SheetSetup } from "./sheetSetup.ts";
import { rise, words } from "./sheetType.ts";

/** Roles of parts whose terminals tell little: left out where words are few. */
const OBVIOUS: readonly Kind["role"][] = ["join", "protection", "source"];

type Where = "inside" | "outside";

/** From the line to a name inside, and to a plug's name outside, where strokes across the wire may stand. */
const ASIDE: Readonly<Record<Where, GridUnits>> = { inside: 0.65, outside: 0.82 };
/** The letter of a half may stand this much closer to other things than names do. */
const CLOSER: GridUnits = 0.15;
/** A symbol's own text this near to a terminal and with its name is its name. */
const NEAR: GridUnits = 5;
const FARTHEST: GridUnits = 5;

/**
 * Names of the terminals, inside beside their leads, as far as the symbols do not carry them; and the plug and cavity
 * at each plugged terminal, outside beside its wire. An in-line joint has its places inside and gets a letter at each
 * half. On a screen what finds no room is left out. What is set is taken in the room.
 */
export function terminalMarks(setup: SheetSetup, room: SheetRoom): readonly Mark[] {
  if (!setup.sight.hasWords) return [];
  return setup.parts.flatMap((part) => {
    const cavities = cavityTexts(setup.circuit, part);
    const halves = setup.sight.hasLabels && isInLine(part.part) ? halfMarks(setup, part, room) : [];
    const names = Object.entries(part.shape.terminals).flatMap(([terminal, spot]) => {
      const of = part.part.id;
      const isWired = setup.wiresAt.has(terminalKey(of, terminal));
      const isOnly = Object.keys(part.shape.terminals).length === 1;
      const isTelling = setup.sight.hasLabels || !OBVIOUS.includes(part.kind.role);
      const isShown = !isInLine(part.part) && !isOnly && isTelling && (isWired || part.kind.role !== "join");
      const isNamed = isShown && !drawsName(part, terminal, spot);
      const cavity = cavities.get(terminal);
      return [
        ...(isNamed ? set(setup, room, terminal, spot, of, "inside") : []),
        ...(cavity === undefined ? [] : set(setup, room, cavity, spot, of, "outside")),
      ];
    });
    return [...halves, ...names];
  });
}

/** The letters of the halves of an in-line joint, each beside the end of the body on the side where it begins. */
function halfMarks({ types, sight }: SheetSetup, { part, shape }: SheetPart, room: SheetRoom): readonly Mark[] {
  const { left, top, bottom, right } = shape.outline;
  const sides = Object.entries(shape.terminals).map(([name, { side }]) => [name.slice(-1), side] as const);
  const up = rise(types.terminal.points);
  return [...new Map(sides)].flatMap(([half, side]): readonly Mark[] => {
    const y = side === "up" ? (top + bottom) / 2 - 0.3 : side === "down" ? (top + bottom) / 2 + 0.3 + up : top - 0.3;
    const x = side === "left" ? left + 0.6 : side === "right" ? right - 0.6 : left - 0.3;
    const mark = words(half, { x, y }, types.terminal, side === "left" || side === "right" ? "middle" : "end", part.id);
    if (sight.isScreen && !room.isFree(boundsOf(mark), -CLOSER)) return [];
    room.take(boundsOf(mark), 0.15);
    return [mark];
  });
}

function drawsName(part: SheetPart, terminal: string, spot: Spot): boolean {
  return part.shape.marks.some(
    (mark) =>
      mark.mark === "text" &&
      sameName(mark.text, terminal) &&
      Math.hypot(mark.at.x - spot.x, mark.at.y - spot.y) <= NEAR,
  );
}

/** A symbol may set the minus of a post as a true minus sign. */
function sameName(text: string, terminal: string): boolean {
  return text.replace("−", "-") === terminal.replace("−", "-");
}

function set(
  { types: { terminal: type }, sight }: SheetSetup,
  room: SheetRoom,
  text: string,
  spot: Spot & { readonly side: Side },
  of: string,
  first: Where,
): readonly Mark[] {
  let last: TextMark | null = null;
  for (const [at, anchor] of places(spot, rise(type.points), first)) {
    const mark = words(text, at, type, anchor, of);
    last ??= mark;
    if (!room.isFree(boundsOf(mark))) continue;
    room.takeWord(mark, sight.besideWords);
    return [mark];
  }
  return last === null || sight.isScreen ? [] : [last];
}

/** Places beside the lead inside and beside the wire outside, both sides of it, farther and farther from the outline. */
function* places(
  spot: Spot & { readonly side: Side },
  up: GridUnits,
  first: Where,
): Generator<readonly [Spot, Anchor]> {
  const { x, y, side } = spot;
  const outward = side === "up" || side === "left" ? -1 : 1;
  for (let away = 0.6; away <= FARTHEST; away += 0.5) {
    const ways = first === "inside" ? [-outward, outward] : [outward, -outward];
    for (const way of ways) {
      if (side === "up" || side === "down") {
        const baseline = way < 0 ? y - away : y + away + up;
        yield [{ x: x + ASIDE[first], y: baseline }, "start"];
        yield [{ x: x - ASIDE[first], y: baseline }, "end"];
      } else {
        const anchor = way < 0 ? "end" : "start";
        yield [{ x: x + way * away, y: y - ASIDE[first] }, anchor];
        yield [{ x: x + way * away, y: y + ASIDE[first] + up }, anchor];
      }
    }
  }
}
