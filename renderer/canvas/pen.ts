import type { PointId } from "../../core/base/ids.ts";
import type { Spot } from "../../core/drawing/mark.ts";
import { GRID_MM } from "../../core/drawing/scale.ts";
import type { Pair } from "../../core/edit/connectorSides.ts";
import { bound } from "../../core/edit/keys/ownKeys.ts";
import type { KeyPress } from "../../core/edit/keys/press.ts";
import type { Thing } from "../state/state.ts";
import { gatheredWith, type Lying, ledTo, pairsTo, terminalsBeside, terminalsIn } from "./bundle.ts";
import { elbow, joinedUp } from "./elbow.ts";
import { type Ghost, ghostOf } from "./ghost.ts";
import { leadPlace } from "./leadPlace.ts";
import { nearestTerminal } from "./nearestTerminal.ts";
import { nearestOn, wireMiddle, wireRuns } from "./places.ts";
import type { Hit } from "./sheetIndex.ts";
import type { Shown } from "./shown.ts";
import { standsOnWords } from "./standsOn.ts";
import type { SheetSurface } from "./surface.ts";
import { isDropping, isHand, type LeadTool, type Tool, turnedOn, type WireTool } from "./tool.ts";
import type { PenEnd } from "./underWay.ts";
import { middleOf, onSheet, type Pixel, pixelOf } from "./viewport.ts";
import { firstPoint } from "./walking.ts";

/** How near to a terminal a wire that is drawn begins or ends on it, pixels. */
const NEAR_TERMINAL = 20;
/** Grid units that an arrow moves what is to be placed, and with Shift. */
const STEP = 1;
const STEP_FAR = 10;

type PartTool = Extract<Tool, { is: "part" }>;

/** Places parts and draws wires, by pointer and by key. */
export class Pen {
  private readonly surface: SheetSurface;
  /** Where the pointer or the keys are, in whole grid units; null before the first. */
  private at: Spot | null = null;
  private end: PenEnd | null = null;
  private from: PenEnd | null = null;
  private bends: readonly Spot[] = [];
  /** Terminals from which several wires are drawn at once. */
  private gathered: readonly PointId[] = [];
  private wireTool: WireTool | null = null;
  /** The last wish for something to be shown that was met. */
  private wish: Shown["wish"] = null;
  /** The tool in hand, or what it places. */
  private tool = "hand";

  constructor(surface: SheetSurface) {
    this.surface = surface;
  }

  /** True while a wire is half drawn, or several are. */
  get isBusy(): boolean {
    return this.from !== null || this.gathered.length > 0;
  }

  /** The pointer is here now. */
  move(hit: Hit | null, at: Pixel): void {
    const { x, y } = onSheet(this.surface.view, at);
    this.at = { x: Math.round(x / GRID_MM), y: Math.round(y / GRID_MM) };
    this.end = this.endAt(hit, this.at, { x: x / GRID_MM, y: y / GRID_MM });
    this.show();
  }

  leave(): void {
    this.at = null;
    this.end = null;
    this.show();
  }

  /** Places the part, begins a wire, bends it, or ends it; leads all wires where terminals are gathered. */
  click(): void {
    const { tool } = this.surface.shown;
    if (isDropping(tool)) this.place();
    else if (tool.is === "wire" && this.gathered.length > 0 && !this.from) this.lead(this.pairs());
    else if (tool.is === "wire") this.draw();
    else if (tool.is === "lead") this.clip(tool);
  }

  /** Clips the lead in hand where the tool ends now. */
  private clip(tool: LeadTool): void {
    const { surface, end } = this;
    const place = end && leadPlace(tool, end, surface.shown.circuit, surface.standing);
    if (place !== null) surface.calls.onLead(tool, place);
  }

  /** Gathers the terminal that is met here, or all on the near side of the part, beside what is gathered. */
  gatherAt(hit: Hit | null, at: Pixel): void {
    if (this.surface.shown.tool.is !== "wire" || this.from) return;
    this.move(hit, at);
    const { x, y } = onSheet(this.surface.view, at);
    const part = hit?.thing.is === "part" ? hit.thing.id : null;
    if (this.end?.point != null) this.gather(gatheredWith(this.gathered, this.end.point));
    else if (part !== null) {
      const beside = terminalsBeside(this.lying, part, { x: x / GRID_MM, y: y / GRID_MM });
      this.gather([...new Set([...this.gathered, ...beside])]);
    }
  }

  /** Gathers the terminals in a box; with some gathered already, these are led to those in the box. */
  gatherIn(one: Spot, other: Spot): void {
    if (this.from) return;
    const met = terminalsIn(this.lying, one, other);
    const others = met.filter((point) => !this.gathered.includes(point));
    if (this.gathered.length > 0) this.lead(pairsTo(this.surface.shown.circuit, this.gathered, others));
    else this.gather(met);
  }

  private get lying(): Lying {
    return { circuit: this.surface.shown.circuit, standing: this.surface.standing };
  }

  private gather(points: readonly PointId[]): void {
    this.gathered = points;
    this.surface.calls.onGathered(points.length);
    this.show();
  }

  private pairs(): readonly Pair[] {
    const { gathered, end } = this;
    return gathered.length > 0 && end?.point != null ? ledTo(this.lying, gathered, end.point) : [];
  }

  /** Draws wires from what is gathered; what finds no end stays gathered. */
  private lead(pairs: readonly Pair[]): void {
    if (pairs.length === 0) return;
    const led = new Set(pairs.map(({ from }) => from));
    this.gather(this.gathered.filter((point) => !led.has(point)));
    this.surface.calls.onWires(pairs);
  }

  /** Gives up what is half done; true where there was something. */
  abandon(): boolean {
    const was = this.isBusy;
    this.from = null;
    this.bends = [];
    this.gather([]);
    return was;
  }

  /** What a key does to what the tool has under way; false where it is not the tool's. */
  key(press: KeyPress): boolean {
    const { tool, keys } = this.surface.shown;
    const id = bound("pen", press, keys);
    switch (id) {
      case "pen-leave":
        if (!this.abandon()) this.surface.calls.onTool({ is: "hand" });
        return true;
      case "pen-act":
        this.begin();
        this.click();
        return true;
      case "pen-gather":
        this.begin();
        if (tool.is === "wire" && !this.from && this.end?.point != null)
          this.gather(gatheredWith(this.gathered, this.end.point));
        return true;
      case "pen-arrow":
      case "pen-arrow-far":
        this.begin();
        if (isDropping(tool)) this.nudge(ARROWS[press.key]!, id === "pen-arrow-far" ? STEP_FAR : STEP);
        else this.jump(ARROWS[press.key]!);
        return true;
      case "pen-turn":
        return this.change((part) => ({ ...part, turn: turnedOn(part.turn) }));
      case "pen-flip":
        return this.change((part) => ({ ...part, flip: !part.flip }));
      case "pen-back":
        return this.unbend();
      default:
        return false;
    }
  }

  private change(changed: (part: PartTool) => PartTool): boolean {
    const { tool } = this.surface.shown;
    if (tool.is === "part") this.surface.calls.onTool(changed(tool));
    return tool.is === "part";
  }

  private unbend(): boolean {
    if (this.surface.shown.tool.is !== "wire" || this.bends.length === 0) return false;
    this.bends = this.bends.slice(0, -1);
    this.show();
    return true;
  }

  /** Shows the tool anew: another was taken, or the drawing has changed under it. */
  show(): void {
    const { surface } = this;
    const before = surface.pen;
    const { tool } = surface.shown;
    const name = tool.is === "part" ? tool.kind : tool.is === "assembly" ? tool.assembly : tool.is;
    // Another tool begins anew: by keys in the middle of what is seen.
    if (name !== this.tool) {
      this.tool = name;
      this.at = null;
      this.end = null;
      this.from = null;
      this.bends = [];
    }
    this.meetGathered(tool);
    this.meetFound(tool);
    const { gathered, end } = this;
    surface.pen = isHand(tool) ? null : { ghost: this.ghost(), line: this.line(), end, gathered, pairs: this.pairs() };
    if (before || surface.pen) surface.repaint();
  }

  /** A wire tool that was just taken brings what is gathered, and no other tool gathers anything. */
  private meetGathered(tool: Tool): void {
    const now = tool.is === "wire" ? tool : null;
    if (now === this.wireTool) return;
    this.wireTool = now;
    this.gathered = now?.gathered ?? [];
    this.surface.calls.onGathered(this.gathered.length);
  }

  /** With a wire in hand, what is found is where it begins or ends. */
  private meetFound(tool: Tool): void {
    const { wish } = this.surface.shown;
    if (wish === this.wish) return;
    this.wish = wish;
    if ((tool.is === "wire" || tool.is === "lead") && wish && "show" in wish.want) this.goToThing(wish.want.show);
  }

  // ---------------------------------------------------------------- parts

  private ghost(): Ghost | null {
    const { tool, circuit, look, page } = this.surface.shown;
    return isDropping(tool) && this.at ? ghostOf({ circuit, look, page, tool, at: this.at }) : null;
  }

  private place(): void {
    const ghost = this.ghost();
    const { tool } = this.surface.shown;
    if (!ghost || !isDropping(tool)) return;
    this.surface.calls.onPlace(tool, ghost.at.x, ghost.at.y);
  }

  // ---------------------------------------------------------------- wires

  private endAt(hit: Hit | null, grid: Spot, spot: Spot): PenEnd {
    const { marks, standing } = this.surface;
    const { tool } = this.surface.shown;
    const isClamping = tool.is === "lead" && tool.lead === "jaws";
    const point = isClamping && hit?.thing.is === "wire" ? null : this.terminalAt(hit, spot);
    const at = point === null ? undefined : standing.spots.get(point);
    if (at) return { spot: at, point, wire: null };
    if (hit?.thing.is === "wire" && (this.from || tool.is === "lead")) {
      const at = nearestOn(wireRuns(marks, hit.thing.id), spot);
      if (at) return { spot: { x: Math.round(at.x), y: Math.round(at.y) }, point: null, wire: hit.thing.id };
    }
    return { spot: grid, point: null, wire: null };
  }

  private terminalAt(hit: Hit | null, spot: Spot): PointId | null {
    return hit?.thing.is === "point" ? hit.thing.id : this.terminalNear(spot);
  }

  /** With a wire or a lead in hand terminals are met from farther off than otherwise. */
  private terminalNear(spot: Spot): PointId | null {
    const { standing, view, shown } = this.surface;
    const seeks = shown.tool.is === "wire" || shown.tool.is === "lead";
    const near = seeks ? nearestTerminal(standing, spot, null) : null;
    const at = near === null ? undefined : standing.spots.get(near);
    const reach = NEAR_TERMINAL / (GRID_MM * view.scale);
    return at && Math.hypot(at.x - spot.x, at.y - spot.y) <= reach ? near : null;
  }

  private line(): readonly Spot[] {
    const { from, end } = this;
    if (!from) return [];
    const line = [from.spot, ...this.bends];
    return end ? [...line, ...elbow(line, end.spot, this.leaves(from))] : line;
  }

  /** Whether a wire leaves its first point sideways. */
  private leaves({ point }: PenEnd): "across" | "down" {
    const side = point === null ? undefined : this.surface.standing.spots.get(point)?.side;
    return side === "up" || side === "down" ? "down" : "across";
  }

  private draw(): void {
    const { from, end, bends } = this;
    const { calls } = this.surface;
    if (!end) return;
    if (!from) {
      if (end.point === null) return;
      this.from = end;
      this.bends = [];
      this.show();
      return;
    }
    if (end.point === null && end.wire === null) {
      this.bends = joinedUp([...bends, ...elbow([from.spot, ...bends], end.spot, this.leaves(from))]);
      this.show();
      return;
    }
    if (end.point === from.point) return;
    // Without bends of one's own the program lays the wire.
    const corners = bends.length === 0 ? [] : joinedUp(this.line().slice(1, -1));
    this.from = null;
    this.bends = [];
    if (end.point !== null) calls.onWire(from.point!, end.point, corners);
    else calls.onWireToWire(from.point!, end.wire!, end.spot);
    this.show();
  }

  // ---------------------------------------------------------------- keys

  /** The first key begins in the middle of what is seen, with a wire at the terminal nearest to it. */
  private begin(): void {
    if (this.at) return;
    const { view, window, standing, shown } = this.surface;
    const { x, y } = onSheet(view, middleOf(window));
    this.at = { x: Math.round(x / GRID_MM), y: Math.round(y / GRID_MM) };
    if (shown.tool.is !== "wire" && shown.tool.is !== "lead") return;
    const near = nearestTerminal(standing, this.at, null);
    if (near) this.goTo(near);
  }

  private nudge([dx, dy]: readonly [number, number], by: number): void {
    if (!this.at) return;
    this.at = { x: this.at.x + dx * by, y: this.at.y + dy * by };
    this.keepInSight(this.at);
    this.show();
    this.say();
  }

  /** Tells where the part in hand would stand: its top left, in grid units. */
  private say(): void {
    const ghost = this.ghost();
    const others = ghost?.standsOn.flatMap((each) => each.others) ?? [];
    const stands = others.length > 0 ? `, ${standsOnWords(others)}` : "";
    if (ghost) this.surface.calls.onSay(`At ${ghost.at.x}, ${ghost.at.y}${stands}`);
  }

  /** To the next terminal that way. */
  private jump(way: readonly [number, number]): void {
    const { standing } = this.surface;
    const near = this.at && nearestTerminal(standing, this.end?.spot ?? this.at, way);
    if (near) this.goTo(near);
  }

  private goTo(point: PointId): void {
    const spot = this.surface.standing.spots.get(point);
    if (!spot) return;
    this.at = spot;
    this.end = { spot, point, wire: null };
    this.surface.calls.onHover({ is: "point", id: point });
    this.keepInSight(spot);
    this.show();
  }

  /** To a point, the first point of a part, or the middle of a wire, which another can be led to. */
  private goToThing(thing: Thing): void {
    const { standing, marks } = this.surface;
    const point = thing.is === "part" ? firstPoint(standing, thing.id) : thing.is === "point" ? thing.id : null;
    if (point !== null) this.goTo(point);
    const middle = thing.is === "wire" ? wireMiddle(wireRuns(marks, thing.id)) : null;
    if (!middle) return;
    this.at = { x: Math.round(middle.x), y: Math.round(middle.y) };
    this.end = { spot: this.at, point: null, wire: thing.id };
    this.surface.calls.onHover(thing);
    this.keepInSight(this.at);
    this.show();
  }

  private keepInSight(spot: Spot): void {
    const { view, window } = this.surface;
    const { x, y } = pixelOf(view, spot);
    if (x < 0 || y < 0 || x > window.width || y > window.height) this.surface.showSpot(spot);
  }
}

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};
