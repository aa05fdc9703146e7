import { bound } from "../../core/edit/keys/ownKeys.ts";
import type { KeyPress } from "../../core/edit/keys/press.ts";
import type { Thing } from "../state/state.ts";
import { type Along, followed } from "./following.ts";
import type { Hand } from "./hand.ts";
import { type KeyWish, keyWish } from "./keys.ts";
import { spotOf } from "./places.ts";
import type { SheetSurface } from "./surface.ts";
import { nextPosition, standsIn, type ThrowControl } from "./throwPlaces.ts";
import { isHand, type WireTool } from "./tool.ts";
import { panned } from "./viewport.ts";
import { firstPoint, nextPart, walked } from "./walking.ts";

/** A key held this short on a position that springs back is a tap, milliseconds. */
const TAP_MS = 250;

/** What keys do to the drawing. */
export class Keyboard {
  private readonly surface: SheetSurface;
  private readonly hand: Hand;
  private held: { readonly key: string; readonly control: string; readonly position: string; since: number } | null =
    null;

  constructor(surface: SheetSurface, hand: Hand) {
    this.surface = surface;
    this.hand = hand;
  }

  /** True where the key was the drawing's. */
  down(press: KeyPress & { readonly repeat: boolean; readonly timeStamp: number }): boolean {
    if (this.held) return this.held.key === press.key;
    if (press.key === "Escape" && this.leaveGesture()) return true;
    if (!isHand(this.surface.shown.tool) && !press.ctrlKey && !press.metaKey && this.hand.pen.key(press)) return true;
    const wish = keyWish(press, this.surface.shown.selection, this.surface.shown.keys);
    if (!wish) return this.command(press);
    if (press.repeat && (wish.wish === "act" || wish.wish === "position")) return true;
    this.surface.showsFocus = true;
    return this.meet(wish, press);
  }

  /** Keys that edit what is chosen, or take a tool. */
  private command(press: KeyPress & { readonly repeat: boolean }): boolean {
    const { calls, shown } = this.surface;
    const id = bound("drawing", press, shown.keys);
    if (id === "add-part" && !press.repeat) {
      calls.onAdd();
      return true;
    }
    if (press.repeat || !isHand(shown.tool)) return false;
    switch (id) {
      case null:
        return false;
      case "choose-all":
        calls.onAllOfPage();
        return true;
      case "wire":
        calls.onTool(this.wireTool());
        return true;
      case "choose-net":
      case "choose-connector":
        return calls.onGroup(id);
      case "edit":
        return this.edit();
      default:
        return calls.onKey(id);
    }
  }

  /** With several terminals chosen, wires are led from all of them. */
  private wireTool(): WireTool {
    const { selection, also } = this.surface.shown;
    const points = [...(selection ? [selection] : []), ...also].flatMap(({ is, id }) => (is === "point" ? [id] : []));
    return points.length > 1 ? { is: "wire", gathered: points } : { is: "wire" };
  }

  private edit(): boolean {
    const part = this.part();
    if (part !== undefined) this.surface.calls.onEdit(part);
    return part !== undefined;
  }

  up(press: { readonly key: string; readonly timeStamp: number }): void {
    const { held } = this;
    if (held?.key !== press.key) return;
    this.held = null;
    const isTap = press.timeStamp - held.since < TAP_MS;
    this.surface.calls.onThrow(held.control, held.position, isTap ? "click" : "release");
  }

  /** The drawing has lost the focus: what a key held is let go. */
  blur(): void {
    const { held } = this;
    this.held = null;
    if (held) this.surface.calls.onThrow(held.control, held.position, "release");
    this.surface.showsFocus = false;
    this.surface.repaint();
  }

  private meet(wish: KeyWish, press: { readonly key: string; readonly timeStamp: number }): boolean {
    const { surface } = this;
    const { selection } = surface.shown;
    switch (wish.wish) {
      case "pan":
        surface.goTo(panned(surface.view, wish.dx, wish.dy), true);
        return true;
      case "zoom":
        surface.zoomTo(wish.by, (selection && surface.pixelOfThing(selection)) ?? undefined);
        return true;
      case "walk":
        return this.choose(walked(surface.shown, wish.way));
      case "follow":
        return this.follow(wish.way, press);
      case "begin": {
        const point = firstPoint(surface.standing, selection?.is === "part" ? selection.id : undefined);
        return this.choose(point === null ? null : { is: "point", id: point });
      }
      case "part": {
        const part = nextPart(surface.standing, selection, wish.way);
        return this.choose(part === null ? null : { is: "part", id: part });
      }
      case "nudge":
        this.nudge(wish.dx, wish.dy);
        return true;
      case "act":
        return this.act(press);
      case "position":
        return this.throwTo(press, (control) => control.positions[wish.index]);
      case "menu":
        return this.menu();
      case "why":
        return this.why();
      case "leave":
        return this.leave();
    }
  }

  /** With nothing chosen it begins at the first point. */
  private follow(way: Along, press: { readonly key: string; readonly timeStamp: number }): boolean {
    const { shown, calls } = this.surface;
    const step = followed(shown, way);
    if (!step) return this.meet({ wish: "begin" }, press);
    calls.onSay(step.said);
    return this.choose(step.to);
  }

  private choose(thing: Thing | null): boolean {
    const { surface } = this;
    if (!thing) return true;
    surface.card.close();
    if (surface.pixelOfThing(thing)) {
      surface.calls.onSelect(thing);
      surface.show(thing);
      this.explain(thing);
    } else surface.calls.onFind(thing);
    return true;
  }

  /** What the keys have come to is explained as what a pointer rests on is. */
  private explain(thing: Thing): void {
    const { surface } = this;
    const isSilent = thing.is === "part" || surface.shown.vehicle;
    const at = isSilent ? null : spotOf(thing, surface.marks, surface.standing);
    surface.card.pointAt(at && { thing, at });
  }

  /** Moves the parts that are chosen. */
  private nudge(dx: number, dy: number): void {
    const { shown, calls } = this.surface;
    const { selection, also } = shown;
    const parts = [...(selection ? [selection] : []), ...also].flatMap(({ is, id }) => (is === "part" ? [id] : []));
    calls.onMove(parts, dx, dy);
  }

  /** The one control of what is chosen goes to its next position where there are two; more open the menu. */
  private act(press: { readonly key: string; readonly timeStamp: number }): boolean {
    if (!this.surface.shown.selection) return this.meet({ wish: "begin" }, press);
    const control = this.control();
    if (control?.positions.length !== 2 || this.surface.shown.vehicle) return this.menu();
    return this.throwTo(press, (each) => nextPosition(each, standsIn(each, this.surface.shown.live.condition)));
  }

  private throwTo(
    press: { readonly key: string; readonly timeStamp: number },
    to: (control: ThrowControl) => string | undefined,
  ): boolean {
    const control = this.control();
    const position = control ? to(control) : undefined;
    if (!control || position === undefined) return false;
    const now = standsIn(control, this.surface.shown.live.condition);
    if (now === position) return true;
    if (control.springs.has(position)) {
      this.held = { key: press.key, control: control.key, position, since: press.timeStamp };
      this.surface.calls.onThrow(control.key, position, "press");
    } else this.surface.calls.onThrow(control.key, position, "click");
    return true;
  }

  /** The control of the part that is chosen, or whose point is; null where it has none or several. */
  private control(): ThrowControl | null {
    const part = this.part();
    const controls = [...this.surface.throws.controls.values()].filter((control) => control.part === part);
    return controls.length === 1 ? controls[0]! : null;
  }

  private part(): string | undefined {
    const { selection } = this.surface.shown;
    if (selection?.is === "point") return this.surface.standing.spots.get(selection.id)?.part;
    return selection?.is === "part" ? selection.id : undefined;
  }

  private menu(): boolean {
    const { surface } = this;
    const { selection } = surface.shown;
    const at = selection && surface.pixelOfThing(selection);
    if (!selection || !at) return false;
    surface.card.close();
    surface.calls.onMenu(selection, surface.clientAt(at));
    return true;
  }

  private why(): boolean {
    const { surface } = this;
    const { selection } = surface.shown;
    if (!selection || selection.is === "part" || surface.shown.vehicle) return false;
    const at = spotOf(selection, surface.marks, surface.standing);
    if (at) surface.card.keep({ thing: selection, at });
    return at !== null;
  }

  private leaveGesture(): boolean {
    if (!this.hand.tool.isBusy) return this.hand.leaveCarrying();
    this.hand.tool.cancel();
    return true;
  }

  /** First the card goes, then from a point up to its part, then what is chosen. */
  private leave(): boolean {
    const { surface } = this;
    if (surface.card.isOpen) {
      surface.card.close();
      return true;
    }
    const { selection } = surface.shown;
    if (!selection) return false;
    const part = selection.is === "point" ? this.part() : undefined;
    surface.calls.onSelect(part === undefined ? null : { is: "part", id: part });
    return true;
  }
}
