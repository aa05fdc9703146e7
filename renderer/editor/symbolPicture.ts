import type { Condition } from "../../core/circuit/circuit.ts";
import { restPose } from "../../core/circuit/sheetPose.ts";
import type { LineMark, Mark, Spot } from "../../core/drawing/mark.ts";
import { boundsOfAll } from "../../core/drawing/measure.ts";
import { line, text } from "../../core/drawing/shapes.ts";
import type { PartLive } from "../../core/live/live.ts";
import { kindOf } from "../../core/parts/catalogue.ts";
import type { Control, Kind, Look, Part, PartView, Pose, Side, SymbolShape } from "../../core/parts/kind.ts";
import { viewOf } from "../../core/parts/view.ts";

/** How long the leads are drawn that show where wires come in, and how far the sheet goes on round the ink, grid units. */
const LEAD = 2;
const ROOM = 0.6;
const CELSIUS = 20;

/** A symbol by itself: marks below the blades, the blades as they lie, marks above them, and the box round all. */
export interface SymbolPicture {
  readonly under: readonly Mark[];
  readonly blades: readonly LineMark[];
  readonly over: readonly Mark[];
  /** Left, top, width and height in grid units. */
  readonly box: readonly [number, number, number, number];
}

/** How a part is to be drawn. */
export interface Stand {
  readonly now: PartLive | undefined;
  /** Positions of its controls by name; as it stands now where none are given. */
  readonly positions: Readonly<Record<string, string>> | null;
  readonly condition: Condition;
}

/** One control of a panel as a switch by itself, with the terminals that it joins; a part of one control as it is. */
export function withOne(part: Part, control: Control): Part {
  if (!part.controls) return part;
  const { controls: _, ...others } = part;
  const used = new Set(control.positions.flatMap(({ joins }) => joins.flat()));
  const terminals = (part.terminals ?? [...used]).filter((terminal) => used.has(terminal));
  return { ...others, ...(terminals.length > 0 && { terminals }), positions: control.positions };
}

/** The picture of a part as it stands or would stand; null where its kind is not known. */
export function symbolPicture(part: Part, nominalVolts: number, stand: Stand, look: Look): SymbolPicture | null {
  const kind = kindOf(part.kind);
  if (!kind) return null;
  const view = viewOf(kind, part, nominalVolts);
  const shape = kind.symbol(view, poseOf(kind, view, stand), look);
  const leads = Object.values(shape.terminals).map((spot) => line("symbol", spot.x, spot.y, ...farEnd(spot)));
  const isBlade = (mark: Mark): mark is LineMark => mark.mark === "line" && mark.role === "contact-now";
  const first = shape.marks.findIndex(isBlade);
  const split = first < 0 ? shape.marks.length : first;
  const under = [...leads, ...shape.marks.slice(0, split), ...nameMarks(part, shape)];
  const over = shape.marks.slice(split).filter((mark) => !isBlade(mark));
  const { left, top, right, bottom } = boundsOfAll([...under, ...shape.marks])!;
  return {
    under,
    blades: shape.marks.filter(isBlade),
    over,
    box: [left - ROOM, top - ROOM, right - left + 2 * ROOM, bottom - top + 2 * ROOM],
  };
}

function poseOf(kind: Kind, view: PartView, { now, positions, condition }: Stand): Pose {
  const { rest } = restPose(kind, view);
  if (!positions) return { closed: now?.closed ?? rest, rest, state: now?.state ?? kind.start };
  const around = {
    positions,
    drive: {},
    engineRunning: condition.running === true,
    ambientC: condition.ambientC ?? CELSIUS,
    nominalVolts: view.nominalVolts,
  };
  const state = now?.state ?? kind.start;
  return { closed: new Set(kind.closed(view, state, around)), rest, state };
}

function farEnd({ x, y, side }: Spot & { readonly side: Side }): readonly [number, number] {
  const [dx, dy] = { left: [-1, 0], right: [1, 0], up: [0, -1], down: [0, 1] }[side] as [number, number];
  return [x + dx * LEAD, y + dy * LEAD];
}

/** The designator stands in the body where the symbol keeps room for it; else the head of the page says it. */
function nameMarks(part: Part, { nameAt, width, height }: SymbolShape): readonly Mark[] {
  const isInside = nameAt.anchor === "middle" && nameAt.x > 0 && nameAt.x < width && nameAt.y > 0 && nameAt.y < height;
  return isInside ? [text(part.id, nameAt.x, nameAt.y, { anchor: "middle", weight: 600, points: 10.5 })] : [];
}
