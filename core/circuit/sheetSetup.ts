import type { PartId, PointId, WireId } from "../base/ids.ts";
import type { WireState } from "../base/states.ts";
import type { Amps, Volts } from "../base/units.ts";
import type { Mark } from "../drawing/mark.ts";
import { kindOf } from "../parts/catalogue.ts";
import type { Kind, Look, Part, PartView } from "../parts/kind.ts";
import { viewOf } from "../parts/view.ts";
import type { Circuit, Condition, Page } from "./circuit.ts";
import { type PlacedShape, placeSymbol, type TerminalSpot, terminalSpots } from "./placeSymbol.ts";
import { type SheetArea, sheetArea } from "./sheetArea.ts";
import { livePose, restPose } from "./sheetPose.ts";
import { leastPoints, type SheetTypes, sheetTypes } from "./sheetType.ts";

/** Live state of a wire as a sheet shows it: at its from end and its to end; amps positive from -> to. */
export interface SheetWireLive {
  readonly state: readonly [WireState, WireState];
  readonly volts: readonly [Volts | null, Volts | null];
  readonly amps: Amps;
  readonly alwaysFed: boolean;
  readonly weak: boolean;
}

/** How a part stands now: its state (`pulled-in`, `melted`, "" for none) and the keys of its closed contacts. */
export interface SheetPartLive {
  readonly state: string;
  readonly closed: ReadonlySet<string>;
}

/** The live state that a sheet can show; `liveOf` of the live room gives one. */
export interface SheetLive {
  readonly condition: Condition;
  readonly wires: ReadonlyMap<WireId, SheetWireLive>;
  readonly parts: ReadonlyMap<PartId, SheetPartLive>;
}

/** What a sheet is drawn from. */
export interface SheetRequest {
  readonly circuit: Circuit;
  /** Id of the page. */
  readonly page: string;
  /** Absent for a plain drawing at rest in ink. */
  readonly live?: SheetLive;
  readonly look?: Look;
  /** False leaves out frame, banner, legend and title block, as the bench does. */
  readonly framed?: boolean;
  /** Share of its own size that the page is printed at; type grows so that none is under 7.5 points on paper. */
  readonly printScale?: number;
  /** Number of this sheet and how many there are. */
  readonly sheet?: readonly [number, number];
  readonly code?: string;
}

/** A part standing on the page, its symbol in page coordinates. */
export interface SheetPart {
  readonly part: Part;
  readonly kind: Kind;
  readonly view: PartView;
  readonly shape: PlacedShape;
  /** State now; that of rest without live state. */
  readonly state: string;
}

/** Everything that the steps of drawing one sheet share. */
export interface SheetSetup {
  readonly circuit: Circuit;
  readonly page: Page;
  readonly live: SheetLive | null;
  readonly look: Look;
  readonly area: SheetArea;
  readonly types: SheetTypes;
  readonly parts: readonly SheetPart[];
  /** Every placed terminal of this page by the point where its wires end, and by its own name. */
  readonly spots: ReadonlyMap<PointId, TerminalSpot & { readonly body: number }>;
}

/** Places the symbols of a page, each as it stands now. Parts of unknown kind are left out: the check reports them. */
export function setUpSheet(request: SheetRequest, page: Page): SheetSetup {
  const { circuit, live = null, look = "iec", printScale = 1 } = request;
  const parts = partsOn(circuit, page.id, look, live, printScale);
  const spots = new Map<PointId, TerminalSpot & { body: number }>();
  for (const [point, spot] of terminalSpots(circuit, page.id, look)) {
    spots.set(point, { ...spot, body: parts.findIndex(({ part }) => part.id === spot.part) });
  }
  return { circuit, page, live, look, area: sheetArea(page), types: sheetTypes(printScale), parts, spots };
}

function partsOn(
  circuit: Circuit,
  page: string,
  look: Look,
  live: SheetLive | null,
  printScale: number,
): readonly SheetPart[] {
  return circuit.parts.flatMap((part): readonly SheetPart[] => {
    const place = circuit.placement.parts[part.id];
    const kind = kindOf(part.kind);
    if (place?.page !== page || kind === undefined) return [];
    const view = viewOf(kind, part, circuit.nominalVolts);
    const now = live?.parts.get(part.id);
    const pose = now ? livePose(kind, view, now) : restPose(kind, view);
    const shape = placeSymbol(kind.symbol(view, pose, look), place);
    const marks = shape.marks.map((mark) => legible(mark, printScale));
    return [{ part, kind, view, shape: { ...shape, marks }, state: pose.state }];
  });
}

function legible(mark: Mark, printScale: number): Mark {
  return mark.mark === "text" ? { ...mark, points: leastPoints(mark.points, printScale) } : mark;
}
