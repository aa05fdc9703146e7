import type { PointId } from "../base/ids.ts";
import { remember } from "../base/memo.ts";
import type { Volts } from "../base/units.ts";
import type { Mark } from "../drawing/mark.ts";
import { kindOf } from "../parts/catalogue.ts";
import type { Kind, Look, Part, PartView, Pose, SymbolShape } from "../parts/kind.ts";
import { viewOf } from "../parts/view.ts";
import type { Circuit, PartPlace, Wire } from "./circuit.ts";
import { type PlacedShape, placeSymbol, type TerminalSpot } from "./placeSymbol.ts";
import { terminalPoint, wireSideOf } from "./points.ts";
import { otherPoses, restPose } from "./sheetPose.ts";

/** A part that stands on a page. */
export interface PagePart {
  readonly part: Part;
  readonly kind: Kind;
  readonly view: PartView;
  readonly rest: Pose;
  /** Its symbol in page coordinates as it stands in a pose: the same object for the same pose. */
  placed(pose: Pose): PlacedShape;
  /** Its blades on the page in every pose but its rest. */
  blades(): readonly Mark[];
}

/** A terminal on a page, with the number of its part among those of the page. */
export type PageSpot = TerminalSpot & { readonly body: number };

/** A wire with its ends on a page; at least one of them is there. */
export interface PageWire {
  readonly wire: Wire;
  readonly ends: readonly [PageSpot | undefined, PageSpot | undefined];
}

/** What of a page is the same in every state and at every size. */
export interface SheetPage {
  readonly parts: readonly PagePart[];
  /** Every placed terminal of the page by the point where its wires end, and by its own name. */
  readonly spots: ReadonlyMap<PointId, PageSpot>;
  readonly wires: readonly PageWire[];
  /** Wires of each terminal, the key being its part and its name, with the end that lies there. */
  readonly wiresAt: ReadonlyMap<string, readonly { readonly wire: Wire; readonly end: 0 | 1 }[]>;
}

const pagesOf = remember((_circuit: Circuit) => new Map<string, SheetPage>());

/** The page of this id in a look, remembered for each circuit. Parts of unknown kind are left out: the check reports them. */
export function sheetPage(circuit: Circuit, page: string, look: Look): SheetPage {
  const pages = pagesOf(circuit);
  const key = `${page} ${look}`;
  const known = pages.get(key);
  if (known !== undefined) return known;
  const made = readPage(circuit, page, look);
  pages.set(key, made);
  return made;
}

function readPage(circuit: Circuit, page: string, look: Look): SheetPage {
  const parts = circuit.parts.flatMap((part): readonly PagePart[] => {
    const place = circuit.placement.parts[part.id];
    const kind = kindOf(part.kind);
    if (place?.page !== page || kind === undefined) return [];
    return [pagePart(part, kind, { place, look, nominalVolts: circuit.nominalVolts })];
  });
  const spots = new Map<PointId, PageSpot>();
  parts.forEach(({ part, rest, placed }, body) => {
    for (const [terminal, spot] of Object.entries(placed(rest).terminals)) {
      const point = terminalPoint(part, terminal);
      const at = { ...spot, part: part.id, terminal, body };
      spots.set(point, at);
      spots.set(wireSideOf(circuit, point), at);
    }
  });
  const wires = circuit.wires.flatMap((wire): readonly PageWire[] => {
    const ends = [spots.get(wire.from), spots.get(wire.to)] as const;
    return ends[0] === undefined && ends[1] === undefined ? [] : [{ wire, ends }];
  });
  return { parts, spots, wires, wiresAt: wiresByTerminal(wires) };
}

/** What a part on a page is made of, beside the part itself. */
interface Stand {
  readonly place: PartPlace;
  readonly look: Look;
  readonly nominalVolts: Volts;
}

/** Parts as they stood last: the same object where nothing about one has changed, though the circuit has. */
const stoodLast = new WeakMap<Part, Stand & { readonly made: PagePart }>();

function pagePart(part: Part, kind: Kind, { place, look, nominalVolts }: Stand): PagePart {
  const last = stoodLast.get(part);
  if (last && last.place === place && last.look === look && last.nominalVolts === nominalVolts) return last.made;
  const view = viewOf(kind, part, nominalVolts);
  const rest = restPose(kind, view);
  const blades = () =>
    otherPoses(kind, view, rest).flatMap((pose) => placedBlades(kind.symbol(view, pose, look), place));
  const made = { part, kind, view, rest, placed: placer(kind, view, place, look), blades };
  stoodLast.set(part, { place, look, nominalVolts, made });
  return made;
}

/** Places a symbol once for each pose: contacts and state tell poses apart, rest is always the same. */
function placer(kind: Kind, view: PartView, place: PartPlace, look: Look): PagePart["placed"] {
  const shapes = new Map<string, PlacedShape>();
  return (pose) => {
    const key = `${pose.state} ${[...pose.closed].sort().join(" ")}`;
    const known = shapes.get(key);
    if (known !== undefined) return known;
    const shape = placeSymbol(kind.symbol(view, pose, look), place);
    shapes.set(key, shape);
    return shape;
  };
}

/** Only these are placed: few symbols have any, and nobody asks for the rest of a pose that no part stands in. */
function placedBlades(shape: SymbolShape, place: PartPlace): readonly Mark[] {
  const marks = shape.marks.filter((mark) => "role" in mark && mark.role === "contact-now");
  return marks.length === 0 ? [] : placeSymbol({ ...shape, marks }, place).marks;
}

function wiresByTerminal(wires: readonly PageWire[]): SheetPage["wiresAt"] {
  const found = new Map<string, { wire: Wire; end: 0 | 1 }[]>();
  for (const { wire, ends } of wires) {
    for (const end of [0, 1] as const) {
      const spot = ends[end];
      if (spot === undefined) continue;
      const key = terminalKey(spot.part, spot.terminal);
      const list = found.get(key);
      if (list) list.push({ wire, end });
      else found.set(key, [{ wire, end }]);
    }
  }
  return found;
}

/** The key of a terminal of a part in `wiresAt`. */
export function terminalKey(part: string, terminal: string): string {
  return `${part} ${terminal}`;
}
