import type { Hit } from "./sheetIndex.ts";
import type { Pixel } from "./viewport.ts";

/** What a pointer does to the drawing; the tool decides which of it a gesture means. Places are pixels of the window. */
export interface PointerHost {
  hitAt(at: Pixel): Hit | null;
  hover(hit: Hit | null, at: Pixel): void;
  panBy(dx: number, dy: number): void;
  zoomBy(factor: number, at: Pixel): void;
  /** The view stays as it is now. */
  settle(): void;
  /** True where a press on this place holds a switch until it is let go. */
  press(hit: Hit): boolean;
  /** The finger is off the switch: after a tap it stays, after a hold it springs back. */
  release(wasTap: boolean): void;
  /** `adds` is true where what is clicked is to be chosen beside what is chosen already. */
  click(hit: Hit | null, at: Pixel, adds: boolean): void;
  /** True where this can be carried to another place, taken here. */
  take(hit: Hit, at: Pixel): boolean;
  /** A box is drawn round what is to be chosen; `end` says whether it stays or is given up. */
  frame(from: Pixel, to: Pixel): void;
  endFrame(end: "choose" | "abandon"): void;
  carryBy(dx: number, dy: number): void;
  putDown(): void;
  abandon(): void;
}

/** What a pointer event says. */
export interface PointerPress {
  readonly pointerId: number;
  readonly pointerType: string;
  readonly button: number;
  readonly shiftKey: boolean;
  readonly timeStamp: number;
}

type Gesture =
  | { readonly is: "none" }
  | { readonly is: "down"; readonly hit: Hit | null; readonly from: Pixel; readonly adds: boolean }
  | { readonly is: "hold"; readonly since: number }
  | { readonly is: "carry"; readonly from: Pixel }
  | { readonly is: "frame"; readonly from: Pixel }
  | { readonly is: "pan"; readonly last: Pixel }
  | { readonly is: "pinch"; readonly last: readonly [Pixel, Pixel] };

/** A press this short on a place that springs back is a tap, milliseconds. */
const TAP_MS = 250;
/** A pointer that moves less than this is still clicking, pixels. */
const STILL = { mouse: 4, pen: 6, touch: 10 } as const;

/** Turns presses and moves of pointers into what they mean. One gesture at a time; two fingers pan and zoom. */
export class PointerTool {
  private gesture: Gesture = { is: "none" };
  private readonly pointers = new Map<number, Pixel>();
  private readonly host: PointerHost;

  constructor(host: PointerHost) {
    this.host = host;
  }

  /** True while a gesture goes on that is more than a pointer passing over. */
  get isBusy(): boolean {
    return this.gesture.is !== "none";
  }

  /** True while the drawing itself is moved. */
  get isPanning(): boolean {
    return this.gesture.is === "pan";
  }

  /** `pans` is true where the space bar is down, so that any drag moves the drawing. */
  down(press: PointerPress, at: Pixel, pans: boolean): void {
    this.pointers.set(press.pointerId, at);
    if (this.pointers.size === 2) this.startPinch();
    else if (this.isBusy) return;
    else if (press.button === 1 || (press.button === 0 && pans)) this.gesture = { is: "pan", last: at };
    else if (press.button === 0) {
      const hit = this.host.hitAt(at);
      const adds = press.shiftKey;
      const isHeld = !adds && hit?.place != null && this.host.press(hit);
      this.gesture = isHeld ? { is: "hold", since: press.timeStamp } : { is: "down", hit, from: at, adds };
    }
  }

  move(press: PointerPress, at: Pixel): void {
    const before = this.pointers.get(press.pointerId);
    if (before) this.pointers.set(press.pointerId, at);
    const { gesture } = this;
    switch (gesture.is) {
      case "none":
        if (press.pointerType !== "touch") this.host.hover(this.host.hitAt(at), at);
        break;
      case "down":
        if (distance(gesture.from, at) > (STILL[press.pointerType as keyof typeof STILL] ?? STILL.mouse)) {
          this.startDrag(gesture, at);
        }
        break;
      case "pan":
        this.host.panBy(at.x - gesture.last.x, at.y - gesture.last.y);
        this.gesture = { is: "pan", last: at };
        break;
      case "carry":
        this.host.carryBy(at.x - gesture.from.x, at.y - gesture.from.y);
        break;
      case "frame":
        this.host.frame(gesture.from, at);
        break;
      case "pinch":
        this.pinch(gesture.last);
        break;
      case "hold":
        break;
    }
  }

  up(press: PointerPress, at: Pixel): void {
    this.pointers.delete(press.pointerId);
    const { gesture } = this;
    this.gesture = { is: "none" };
    switch (gesture.is) {
      case "down":
        this.host.click(gesture.hit, at, gesture.adds);
        break;
      case "hold":
        this.host.release(press.timeStamp - gesture.since < TAP_MS);
        break;
      case "carry":
        this.host.putDown();
        break;
      case "frame":
        this.host.endFrame("choose");
        break;
      case "pan":
        this.host.settle();
        break;
      case "pinch": {
        const [left, other] = this.pointers.values();
        if (left && other) this.gesture = { is: "pinch", last: [left, other] };
        else if (left) this.gesture = { is: "pan", last: left };
        else this.host.settle();
        break;
      }
      case "none":
        break;
    }
  }

  /** The gesture is given up: what was held is let go, what was carried stays where it was. */
  cancel(): void {
    const { gesture } = this;
    this.gesture = { is: "none" };
    this.pointers.clear();
    if (gesture.is === "hold") this.host.release(false);
    else if (gesture.is === "carry") this.host.abandon();
    else if (gesture.is === "frame") this.host.endFrame("abandon");
    else if (gesture.is === "pan" || gesture.is === "pinch") this.host.settle();
  }

  private startDrag({ hit, from, adds }: Extract<Gesture, { is: "down" }>, at: Pixel): void {
    if (adds) {
      this.gesture = { is: "frame", from };
      this.host.frame(from, at);
      return;
    }
    if (hit && this.host.take(hit, from)) {
      this.gesture = { is: "carry", from };
      this.host.carryBy(at.x - from.x, at.y - from.y);
      return;
    }
    this.gesture = { is: "pan", last: at };
    this.host.panBy(at.x - from.x, at.y - from.y);
  }

  private startPinch(): void {
    const { gesture } = this;
    if (gesture.is === "hold") this.host.release(false);
    if (gesture.is === "carry") this.host.abandon();
    if (gesture.is === "frame") this.host.endFrame("abandon");
    const [one, other] = [...this.pointers.values()];
    this.gesture = { is: "pinch", last: [one!, other!] };
  }

  private pinch(last: readonly [Pixel, Pixel]): void {
    const [one, other] = [...this.pointers.values()];
    if (!one || !other) return;
    const [before, now] = [middle(...last), middle(one, other)];
    this.host.panBy(now.x - before.x, now.y - before.y);
    const apart = distance(...last);
    if (apart > 0) this.host.zoomBy(distance(one, other) / apart, now);
    this.gesture = { is: "pinch", last: [one, other] };
  }
}

function distance(one: Pixel, other: Pixel): number {
  return Math.hypot(one.x - other.x, one.y - other.y);
}

function middle(one: Pixel, other: Pixel): Pixel {
  return { x: (one.x + other.x) / 2, y: (one.y + other.y) / 2 };
}
