import { springsBack } from "../../core/circuit/points.ts";
import type { Spot } from "../../core/drawing/mark.ts";
import type { PaperSpot } from "../../core/drawing/paint.ts";
import { GRID_MM } from "../../core/drawing/scale.ts";
import { positionTitle } from "../words/condition.ts";
import { isSameThing } from "./halos.ts";
import { type Load, loadOf, putLoad, shownLoad } from "./load.ts";
import { Pen } from "./pen.ts";
import { nearestOn, wireRuns } from "./places.ts";
import { type PointerHost, PointerTool } from "./pointerTool.ts";
import type { Hit } from "./sheetIndex.ts";
import type { Card } from "./shown.ts";
import type { SheetSurface } from "./surface.ts";
import { thingsIn } from "./thingsIn.ts";
import { standsIn, type ThrowControl, thrownTo } from "./throwPlaces.ts";
import { HAND, isDropping, isHand } from "./tool.ts";
import { inWindow, onSheet, type Pixel, pixelOf, zoomed } from "./viewport.ts";

/** Kinds whose body is clicked for what can be done with it; all others are chosen by a click. */
const OPENS_MENU: readonly string[] = ["protection", "source", "electronics"];

/** What gestures do to the drawing: throw, choose, carry, pan, zoom. */
export class Hand implements PointerHost {
  readonly tool = new PointerTool(this);
  readonly pen: Pen;
  /** Where the pointer was last on the drawing, in whole grid units. */
  pointer: Spot | null = null;
  private readonly surface: SheetSurface;
  private load: Load | null = null;
  /** Where on the sheet the load was taken up by a click; null while none was. */
  private taken: PaperSpot | null = null;
  private held: { readonly control: string; readonly position: string } | null = null;
  private last: Hit | null = null;

  constructor(surface: SheetSurface) {
    this.surface = surface;
    this.pen = new Pen(surface);
  }

  hitAt(at: Pixel): Hit | null {
    const { view, index } = this.surface;
    return index.hitAt(this.spotAt(at), 1 / (GRID_MM * view.scale));
  }

  private spotAt(at: Pixel): Spot {
    const { x, y } = onSheet(this.surface.view, at);
    return { x: x / GRID_MM, y: y / GRID_MM };
  }

  hover(hit: Hit | null, at: Pixel): void {
    const { surface } = this;
    const { x, y } = this.spotAt(at);
    this.pointer = { x: Math.round(x), y: Math.round(y) };
    if (surface.shown.tool.is === "carry") {
      this.carryTo(at);
      return;
    }
    if (surface.shown.tool.is !== "hand") {
      this.showPreview(null);
      surface.card.pointAt(null);
      this.last = null;
      this.pen.move(hit, at);
      return;
    }
    if (!isSameThing(hit?.thing ?? null, this.last?.thing ?? null)) surface.calls.onHover(hit?.thing ?? null);
    if (hit?.place !== this.last?.place) this.showPreview(hit);
    this.last = hit;
    surface.card.pointAt(hit && this.cardFor(hit, at));
  }

  /** The pointer is no longer on the drawing. */
  leave(): void {
    if (this.surface.shown.tool.is !== "hand") this.pen.leave();
    if (this.last) this.surface.calls.onHover(null);
    this.last = null;
    this.showPreview(null);
    this.surface.card.pointAt(null);
  }

  panBy(dx: number, dy: number): void {
    const { view } = this.surface;
    this.surface.goTo({ ...view, x: view.x + dx, y: view.y + dy }, true);
  }

  zoomBy(factor: number, at: Pixel): void {
    this.surface.goTo(zoomed(this.surface.view, factor, at), true);
  }

  settle(): void {
    this.surface.settle();
  }

  press(hit: Hit): boolean {
    const aim = this.surface.shown.tool.is === "hand" ? this.aimOf(hit) : null;
    if (!aim || !springsBack(this.surface.shown.circuit, aim.control.key, aim.position)) return false;
    this.surface.card.close();
    this.held = { control: aim.control.key, position: aim.position };
    this.surface.calls.onThrow(aim.control.key, aim.position, "press");
    return true;
  }

  release(wasTap: boolean): void {
    if (!this.held) return;
    const { control, position } = this.held;
    this.held = null;
    this.surface.calls.onThrow(control, position, wasTap ? "click" : "release");
  }

  /** Puts down here what was dragged from the catalogue; false where nothing was. */
  drop(at: Pixel): boolean {
    const { tool } = this.surface.shown;
    if (!isDropping(tool) || tool.isDragged !== true) return false;
    this.pen.move(null, at);
    this.pen.click();
    this.surface.calls.onTool(HAND);
    return true;
  }

  click(hit: Hit | null, at: Pixel, adds: boolean): void {
    const { surface } = this;
    surface.card.close();
    if (surface.shown.tool.is === "carry" && !adds) {
      this.carryByClick(hit, at);
      return;
    }
    if (!isHand(surface.shown.tool)) {
      if (adds) {
        this.pen.gatherAt(hit, at);
        return;
      }
      this.pen.move(hit, at);
      this.pen.click();
      return;
    }
    if (adds) {
      if (hit) surface.calls.onSelectAlso(hit.thing);
      return;
    }
    const aim = hit && this.aimOf(hit);
    if (aim) {
      surface.calls.onThrow(aim.control.key, aim.position, "click");
      this.showPreview(hit);
      return;
    }
    surface.calls.onSelect(hit?.thing ?? null);
    if (hit && this.opensMenu(hit)) surface.calls.onMenu(hit.thing, surface.clientAt(at));
  }

  /** Opens the editor of the part that lies here. */
  edit(at: Pixel): void {
    const { surface } = this;
    const hit = surface.shown.tool.is === "hand" ? this.hitAt(at) : null;
    if (hit?.thing.is === "part" && hit.place === null) surface.calls.onEdit(hit.thing.id);
  }

  /** What can be done with what lies here; what is on bare paper has no menu. A tool gives up what it has half done. */
  menu(at: Pixel): void {
    if (this.leaveCarrying()) return;
    if (this.surface.shown.tool.is !== "hand") {
      if (!this.pen.abandon()) this.surface.calls.onTool({ is: "hand" });
      return;
    }
    const hit = this.hitAt(at);
    if (!hit) return;
    this.surface.card.close();
    this.surface.calls.onSelect(hit.thing);
    this.surface.calls.onMenu(hit.thing, this.surface.clientAt(at));
  }

  take(hit: Hit, at: Pixel): boolean {
    const { surface } = this;
    // What is carried by clicks is carried on: a drag then moves the drawing under it.
    if (!isHand(surface.shown.tool) || surface.shown.vehicle || this.load) return false;
    surface.card.close();
    this.showPreview(null);
    const { tool } = surface.shown;
    const chosen = tool.is === "carry" && hit.thing.is === "wire" ? { selection: hit.thing } : {};
    this.load = loadOf({ ...surface.shown, ...chosen }, hit, this.spotAt(at));
    surface.carried = this.load && shownLoad(surface.shown, this.load, 0, 0, null);
    return this.load !== null;
  }

  carryBy(dx: number, dy: number): void {
    const { surface, load } = this;
    if (!load) return;
    const unit = GRID_MM * surface.view.scale;
    const from = pixelOf(surface.view, load.at);
    const over = load.is === "end" ? this.hitAt({ x: from.x + dx, y: from.y + dy }) : null;
    const point = over?.thing.is === "point" ? over.thing.id : null;
    surface.carried = shownLoad(surface.shown, load, Math.round(dx / unit), Math.round(dy / unit), point);
    surface.repaint();
  }

  putDown(): void {
    const { surface } = this;
    const { carried } = surface;
    this.abandon();
    if (carried) putLoad(carried, surface.calls);
  }

  abandon(): void {
    this.load = null;
    this.taken = null;
    this.surface.carried = null;
    this.surface.repaint();
    this.surface.calls.onCarrying(false);
  }

  /** The first click takes up what lies there, the next puts it down. A wire need not be chosen before. */
  private carryByClick(hit: Hit | null, at: Pixel): void {
    const { surface } = this;
    if (this.taken) {
      this.carryTo(at);
      this.putDown();
      return;
    }
    if (!hit || !this.take(hit, at)) return;
    this.taken = onSheet(surface.view, at);
    surface.repaint();
    surface.calls.onCarrying(true);
  }

  /** What was taken up by a click goes along with the pointer, wherever the drawing was moved meanwhile. */
  private carryTo(at: Pixel): void {
    if (!this.taken) return;
    const from = inWindow(this.surface.view, this.taken);
    this.carryBy(at.x - from.x, at.y - from.y);
  }

  /** Puts back what is carried by clicks, else leaves carrying; false where nothing is carried so. */
  leaveCarrying(): boolean {
    if (this.surface.shown.tool.is !== "carry") return false;
    if (this.taken) this.abandon();
    else this.surface.calls.onTool(HAND);
    return true;
  }

  frame(from: Pixel, to: Pixel): void {
    this.surface.framed = { from, to };
    this.surface.repaint();
  }

  endFrame(end: "choose" | "abandon"): void {
    const { surface } = this;
    const { framed } = surface;
    surface.framed = null;
    surface.repaint();
    if (!framed || end === "abandon") return;
    const [one, other] = [this.spotAt(framed.from), this.spotAt(framed.to)];
    if (surface.shown.tool.is === "wire") {
      this.pen.gatherIn(one, other);
      return;
    }
    surface.calls.onSelectAll(thingsIn(surface.standing, surface.marks, surface.shown.circuit, one, other));
  }

  /** True where the pointer is over something that a click throws or opens. */
  get isOverHandle(): boolean {
    return this.last !== null && (this.last.place !== null || this.opensMenu(this.last));
  }

  /** Shows anew what a click would do, after something has been thrown. */
  refresh(): void {
    if (this.taken && this.surface.shown.tool.is !== "carry") this.abandon();
    this.pen.show();
    if (this.last?.place && !this.held) this.showPreview(this.last);
  }

  /** Where a click on a switch's place throws it to. */
  private aimOf({ place }: Hit): { readonly control: ThrowControl; readonly position: string } | null {
    const control = place && this.surface.throws.controls.get(place.control);
    if (!control) return null;
    const now = standsIn(control, this.surface.shown.live.condition);
    return { control, position: thrownTo(place, control, now) };
  }

  private showPreview(hit: Hit | null): void {
    const { surface } = this;
    const aim = hit && this.aimOf(hit);
    const before = surface.preview;
    if (!aim || !hit?.place) surface.preview = null;
    else {
      const springs = aim.control.springs.has(aim.position);
      const { vehicle } = surface.shown;
      const after = vehicle ? `, ${vehicle.price}` : springs ? ": hold, or tap to keep" : "";
      const words = `${positionTitle(aim.position)}${after}`;
      surface.preview = { place: hit.place, control: aim.control, position: aim.position, words };
    }
    if (before || surface.preview) surface.repaint();
  }

  private opensMenu({ thing }: Hit): boolean {
    if (this.surface.shown.vehicle) return true;
    if (thing.is !== "part") return false;
    const standing = this.surface.standing.parts.get(thing.id);
    if (!standing) return false;
    const hasBlades = this.surface.throws.places.some(({ part }) => part === thing.id);
    const isJoint = standing.part.kind === "connector";
    return isJoint || OPENS_MENU.includes(standing.kind.role) || (standing.view.controls.length > 0 && !hasBlades);
  }

  private cardFor({ thing, place }: Hit, at: Pixel): Card | null {
    const { surface } = this;
    if (place || thing.is === "part" || surface.shown.vehicle) return null;
    const { x, y } = onSheet(surface.view, at);
    const spot =
      thing.is === "wire"
        ? nearestOn(wireRuns(surface.marks, thing.id), { x: x / GRID_MM, y: y / GRID_MM })
        : surface.standing.spots.get(thing.id);
    return spot ? { thing, at: spot } : null;
  }
}
