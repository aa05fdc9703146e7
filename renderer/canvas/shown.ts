import type { ControlKey, PartId, PointId, WireId } from "../../core/base/ids.ts";
import type { GridUnits } from "../../core/base/units.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Spot } from "../../core/drawing/mark.ts";
import type { Pair } from "../../core/edit/connectorSides.ts";
import type { OwnKeys } from "../../core/edit/keys/ownKeys.ts";
import type { KeyIdOf } from "../../core/edit/keys/rows.ts";
import type { Bends } from "../../core/edit/setBends.ts";
import type { Fault } from "../../core/live/fault.ts";
import type { Live } from "../../core/live/live.ts";
import type { Look } from "../../core/parts/kind.ts";
import type { Paper } from "../printed/papers.ts";
import type { Thing, Wish } from "../state/state.ts";
import type { SuspectMark } from "../state/suspectNow.ts";
import type { Knot } from "./knots.ts";
import type { LeadHere } from "./leadTags.ts";
import type { ReadHere } from "./readingFlags.ts";
import type { Dropping, LeadTool, Tool } from "./tool.ts";
import type { Margins, Pixel, Viewport } from "./viewport.ts";

/** All that the drawing shows. Values never change; another value is shown by being another object. */
export interface Shown {
  readonly circuit: Circuit;
  /** Id of the page. */
  readonly page: string;
  readonly live: Live;
  readonly palette: "light" | "dark";
  readonly look: Look;
  /** Keys that the person gave. */
  readonly keys: OwnKeys;
  /** Null: the page has not been looked at yet and is fitted. */
  readonly viewport: Viewport | null;
  readonly selection: Thing | null;
  /** Further things chosen beside it. */
  readonly also: readonly Thing[];
  readonly tool: Tool;
  readonly hover: Thing | null;
  /** Steps of the probe order. */
  readonly knots: readonly Knot[];
  /** What was read in the present condition; each gets an inverse flag. */
  readonly readings: readonly ReadHere[];
  /** Leads and jaws of the instruments on the bench. */
  readonly leads: readonly LeadHere[];
  /** Printed pages under the drawing, the lowest first. */
  readonly papers: readonly Paper[];
  /** Faults with which the live state is shown: those put in, or those of a suspect. */
  readonly faults: readonly Fault[];
  /** What has a flag: everything that a fault is put into, while that is shown. */
  readonly flagged: readonly string[];
  /** Suspects that are marked; the one shown comes last. */
  readonly suspects: readonly SuspectMark[];
  /** Ids of parts and wires that are not as in the good circuit. */
  readonly different: ReadonlySet<string>;
  /** Ids of parts, wires and plugs that are shown in full, all others dimmed; null for everything. */
  readonly full: ReadonlySet<string> | null;
  /** What is to be brought into sight or zoomed; met once for each count. */
  readonly wish: Wish | null;
  /** What a fitted drawing leaves free at the edges. */
  readonly margins: Margins;
  /** Where it stands for a vehicle: nothing is carried or explained, all that can be done is in menus, and a throw has its price. */
  readonly vehicle?: { readonly price: string };
}

/**
 * How a control is thrown. A spring-back position is pressed when the finger goes down, and released when it goes up after
 * a hold. A tap ends in a click instead: the position stays until it is clicked again. All else is a click.
 */
export type ThrowHow = "press" | "release" | "click";

/** What a person asks of the drawing. */
export interface Calls {
  onViewport(view: Viewport): void;
  onThrow(control: ControlKey, position: string, how: ThrowHow): void;
  onHover(thing: Thing | null): void;
  onSelect(thing: Thing | null): void;
  /** Chooses a thing beside what is chosen, or lets it go again. */
  onSelectAlso(thing: Thing): void;
  onSelectAll(things: readonly Thing[]): void;
  /** Opens what can be done with a thing; `at` is in the browser's client pixels. */
  onMenu(thing: Thing, at: Pixel): void;
  /** Shows a thing that is on another page. */
  onFind(thing: Thing): void;
  /** Opens the catalogue of parts. */
  onAdd(): void;
  /** Tells whoever listens, and does not look. */
  onSay(words: string): void;
  onMove(parts: readonly PartId[], dx: GridUnits, dy: GridUnits): void;
  onBend(wire: WireId, bends: Bends): void;
  onReattach(wire: WireId, end: "from" | "to", point: PointId): void;
  onTool(tool: Tool): void;
  /** Places a part or an assembly with its top left here, grid units. */
  onPlace(tool: Dropping, x: GridUnits, y: GridUnits): void;
  /** Draws a wire by these corners; without any the program lays it. */
  onWire(from: PointId, to: PointId, corners: readonly Spot[]): void;
  /** Draws several wires at once. */
  onWires(pairs: readonly Pair[]): void;
  /** So many terminals are gathered for wires. */
  onGathered(count: number): void;
  /** Something was taken up by a click, or is not carried any more. */
  onCarrying(isCarrying: boolean): void;
  /** Clips a lead to a point, or puts jaws round a wire; `place` is its id. */
  onLead(tool: LeadTool, place: PointId | WireId): void;
  onWireToWire(from: PointId, wire: WireId, spot: Spot): void;
  /** The text of the parts that are chosen, which go away where they are cut; null where none is. */
  onCopy(isCut: boolean): string | null;
  /** Puts what was copied here; what is no copy is told. */
  onPaste(text: string, at: Spot): void;
  /** Files with printed pages, to be put under the drawing. */
  onFiles(files: readonly File[]): void;
  onAllOfPage(): void;
  /** Chooses what belongs with what is chosen; false where nothing does. */
  onGroup(group: "choose-net" | "choose-connector"): boolean;
  /** Makes the edit of a key; false where the key makes none. */
  onKey(key: KeyIdOf<"drawing">): boolean;
  /** Opens the editor of a part. */
  onEdit(part: PartId): void;
  /** Opens the card that says why, or closes it. */
  onCard(card: Card | null): void;
}

/** What the card is about, and where its leader ends. */
export interface Card {
  readonly thing: Thing;
  readonly at: Spot;
}
