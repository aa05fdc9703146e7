import type { PartId } from "../base/ids.ts";
import type { GridUnits } from "../base/units.ts";
import type { Anchor, Mark, Spot, TextMark } from "../drawing/mark.ts";
import { boundsOf } from "../drawing/measure.ts";
import type { Kind, Side } from "../parts/kind.ts";
import type { Circuit } from "./circuit.ts";
import { isInLine } from "./points.ts";
import type { OwnWords } from "./sheetOwnWords.ts";
import { terminalKey } from "./sheetPage.ts";
import { cavityTexts } from "./sheetPlugs.ts";
import type { SheetRoom } from "./sheetRoom.ts";
import type { SheetPart, SheetSetup } from "./sheetSetup.ts";
import { type Step, type StepRoom, Steps } from "./sheetSteps.ts";
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

/** Names of terminals as they are set, and how, for the next time. */
export interface TerminalMarks {
  readonly marks: readonly Mark[];
  readonly memory: TerminalMemory;
}

/** What was set at the terminals of each part. */
export type TerminalMemory = ReadonlyMap<PartId, Step<readonly Mark[]>>;

/**
 * Names of the terminals, inside beside their leads, as far as the symbols do not carry them; and the plug and cavity
 * at each plugged terminal, outside beside its wire. An in-line joint has its places inside and gets a letter at each
 * half. On a screen what finds no room is left out. What is set is taken in the room. `own` are words set in symbols.
 */
export function terminalMarks(
  setup: SheetSetup,
  place: StepRoom,
  own: ReadonlyMap<PartId, OwnWords>,
  before: TerminalMemory | null,
): TerminalMarks {
  if (!setup.sight.hasWords) return { marks: [], memory: new Map() };
  const steps = new Steps(
    [place],
    before,
    setup.parts.map(({ part }) => part.id),
  );
  const marks = setup.parts.flatMap((part) => {
    const { id } = part.part;
    const joined = joinedAt(setup, part);
    return steps.set(id, [part.placed, own.get(id), joined], () => marksOf(setup, part, place.room, joined));
  });
  return { marks, memory: steps.done() };
}

/** What is joined to a part: the same object as long as it is the same. */
function joinedAt({ circuit, wiresAt }: SheetSetup, part: SheetPart): Joined {
  const { wires, connectors } = circuit;
  const last = joinedLast.get(part.placed);
  if (last && last.wires === wires && last.connectors === connectors) return last.joined;
  const cavities = cavityTexts(circuit, part);
  const wired = Object.keys(part.shape.terminals).filter((name) => wiresAt.has(terminalKey(part.part.id, name)));
  const text = JSON.stringify([wired, [...cavities]]);
  const joined = last?.joined.text === text ? last.joined : { cavities, wired, text };
  joinedLast.set(part.placed, { wires, connectors, joined });
  return joined;
}

interface JoinedLast {
  readonly wires: Circuit["wires"];
  readonly connectors: Circuit["connectors"];
  readonly joined: Joined;
}

const joinedLast = new WeakMap<SheetPart["placed"], JoinedLast>();

interface Joined {
  /** Plug and cavity by terminal. */
  readonly cavities: ReadonlyMap<string, string>;
  readonly wired: readonly string[];
  /** All of it in one text. */
  readonly text: string;
}

function marksOf(setup: SheetSetup, part: SheetPart, room: SheetRoom, { cavities, wired }: Joined): readonly Mark[] {
  const halves = setup.sight.hasLabels && isInLine(part.part) ? halfMarks(setup, part, room) : [];
  const isTelling = setup.sight.hasLabels || !OBVIOUS.includes(part.kind.role);
  const terminals = Object.entries(part.shape.terminals);
  const names = terminals.flatMap(([terminal, spot]) => {
    const of = part.part.id;
    const isOwn = wired.includes(terminal) || part.kind.role !== "join";
    const isShown = !isInLine(part.part) && terminals.length !== 1 && isTelling && isOwn;
    const isNamed = isShown && !drawsName(part, terminal, spot);
    const cavity = cavities.get(terminal);
    return [
      ...(isNamed ? set(setup, room, terminal, spot, of, "inside") : []),
      ...(cavity === undefined ? [] : set(setup, room, cavity, spot, of, "outside")),
    ];
  });
  return [...halves, ...names];
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
