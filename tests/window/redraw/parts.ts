import type { Circuit, PartPlace } from "../../../core/circuit/circuit.ts";
import { sheetOf } from "../../../core/circuit/sheet.ts";
import { restPose } from "../../../core/circuit/sheetPose.ts";
import type { Spot } from "../../../core/drawing/mark.ts";
import { distanceTo } from "../../../core/drawing/measure.ts";
import { firstPart } from "../../../core/edit/newPart.ts";
import { tableWritten } from "../../../core/edit/tableText.ts";
import { kindOf } from "../../../core/parts/catalogue.ts";
import type { Part } from "../../../core/parts/kind.ts";
import { viewOf } from "../../../core/parts/view.ts";

/** A wire to be drawn: the terminals of parts that it leads to, past plugs, and its colour. */
export interface WireToDraw {
  readonly from: string;
  readonly to: string;
  readonly colour: string;
}

/** Where the middle of a part stands on its page, grid units. */
export function middleOf({ parts, placement }: Circuit, id: string): Spot {
  return middleAt(parts.find((part) => part.id === id)!, placement.parts[id]!);
}

/** The same for one that has just been taken from the catalogue. */
export function middleOfNew(kind: string, place: PartPlace): Spot {
  return middleAt(firstPart(kindOf(kind)!, "X1"), place);
}

/** The spot of the wire that was drawn last that is farthest from all else on the page, so that nothing else is met there. */
export function clearOfOthers(circuit: Circuit, page: string): Spot {
  const sheet = sheetOf({ circuit, page, framed: false });
  const last = circuit.wires.at(-1)?.id;
  const marks = sheet.ok ? sheet.value.marks : [];
  const lines = marks.filter((mark) => mark.mark === "line");
  const others = marks.filter((mark) => mark.of !== last && mark.mark !== "text");
  const spots = lines.flatMap((mark) => (mark.of === last ? mark.spots.slice(1).flatMap(alongFrom(mark.spots)) : []));
  const clear = (spot: Spot): number => Math.min(...others.map((mark) => distanceTo(mark, spot)));
  return spots.reduce((best, spot) => (clear(spot) > clear(best) ? spot : best));
}

/** Spots along each piece of a line, a grid unit apart. */
function alongFrom(corners: readonly Spot[]): (to: Spot, index: number) => readonly Spot[] {
  return (to, index) => {
    const from = corners[index]!;
    const steps = Math.max(1, Math.floor(Math.hypot(to.x - from.x, to.y - from.y)));
    return Array.from({ length: steps }, (_, step) => ({
      x: from.x + ((to.x - from.x) * step) / steps,
      y: from.y + ((to.y - from.y) * step) / steps,
    }));
  };
}

/** The table that a new part of a kind has, as text; empty for one without. */
export function firstTable(kind: string): string {
  return tableWritten(firstPart(kindOf(kind)!, "X1"));
}

/** Kinds with those of the parts that are of it, in the order of their numbers. */
export function partsByKind({ parts }: Circuit, ids: readonly string[]): ReadonlyMap<string, readonly string[]> {
  const byKind = new Map<string, string[]>();
  for (const { id, kind } of parts) if (ids.includes(id)) byKind.set(kind, [...(byKind.get(kind) ?? []), id]);
  const number = (id: string): number => Number(id.replace(/\D/g, ""));
  for (const those of byKind.values()) those.sort((a, b) => number(a) - number(b));
  return byKind;
}

/** Wires by the terminals at their ends: where a plug carries a terminal, that. */
export function wiresToDraw({ wires, connectors }: Circuit): readonly WireToDraw[] {
  const carried = new Map<string, string>(
    connectors.flatMap(({ id, cavities }) =>
      Object.entries(cavities ?? {}).map(([cavity, terminal]) => [`${id}-${cavity}`, terminal] as const),
    ),
  );
  const end = (point: string): string => carried.get(point) ?? point;
  return wires.map(({ from, to, colour = "" }) => ({ from: end(from), to: end(to), colour }));
}

/**
 * Wires that meet in a splice, one list a splice: the first goes from the feed past the splice to the first leg, the others
 * lead from the splice to theirs. `plain` are all the rest.
 */
export function splicedAside(wires: readonly WireToDraw[]): {
  readonly plain: readonly WireToDraw[];
  readonly spliced: readonly (readonly WireToDraw[])[];
} {
  const spliceOf = (point: string): string | undefined => /^SP\d+(?=\.)/.exec(point)?.[0];
  const bySplice = new Map<string, WireToDraw[]>();
  for (const wire of wires) {
    const splice = spliceOf(wire.from) ?? spliceOf(wire.to);
    if (splice) bySplice.set(splice, [...(bySplice.get(splice) ?? []), wire]);
  }
  const spliced = [...bySplice.values()].map((those) => {
    const feed = those.find(({ to }) => spliceOf(to))!;
    const [first, ...others] = those.filter((wire) => wire !== feed);
    return [{ ...first!, from: feed.from, colour: feed.colour }, ...others];
  });
  return { plain: wires.filter(({ from, to }) => !spliceOf(from) && !spliceOf(to)), spliced };
}

/** The middle of its symbol, by which the program holds a part that it places. */
function middleAt(part: Part, { x, y, turn }: PartPlace): Spot {
  const kind = kindOf(part.kind)!;
  const view = viewOf(kind, part, 12);
  const { width, height } = kind.symbol(view, restPose(kind, view), "iec");
  const [across, down] = turn === 90 || turn === 270 ? [height, width] : [width, height];
  return { x: x + across / 2, y: y + down / 2 };
}
