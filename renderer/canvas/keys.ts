import { bound, type OwnKeys } from "../../core/edit/keys/ownKeys.ts";
import type { KeyPress } from "../../core/edit/keys/press.ts";
import type { Thing } from "../state/state.ts";

/** What a key asks of the drawing. */
export type KeyWish =
  | { readonly wish: "walk"; readonly way: "onward" | "back" | "next" | "previous" }
  /** The same by a key of its own, from a part too, and told step by step. */
  | { readonly wish: "follow"; readonly way: "onward" | "back" }
  | { readonly wish: "pan"; readonly dx: number; readonly dy: number }
  | { readonly wish: "nudge"; readonly dx: number; readonly dy: number }
  | { readonly wish: "zoom"; readonly by: "in" | "out" | "fit" }
  | { readonly wish: "part"; readonly way: "next" | "previous" }
  /** Throws the control of what is chosen to its first, second, ... position. */
  | { readonly wish: "position"; readonly index: number }
  | { readonly wish: "begin" | "act" | "menu" | "why" | "leave" };

/** Pixels that an arrow moves the drawing, and with Shift. */
const PAN = 48;
const PAN_FAR = 240;
/** Grid units that an arrow moves a chosen part, and with Shift. */
const NUDGE = 1;
const NUDGE_FAR = 10;

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};
const WALKS = { ArrowRight: "onward", ArrowLeft: "back", ArrowDown: "next", ArrowUp: "previous" } as const;

/**
 * Where a key takes the drawing while it has the focus and this is chosen; null for keys that edit, take a tool or are not
 * the drawing's. Arrows move the drawing while nothing is chosen, a part that is chosen, and walk the circuit from a point or
 * a wire.
 */
export function keyWish(press: KeyPress, chosen: Thing | null, own: OwnKeys): KeyWish | null {
  const { key } = press;
  const id = bound("drawing", press, own);
  switch (id) {
    case "position":
      return { wish: "position", index: Number(key) - 1 };
    case "arrow":
    case "arrow-far":
      return arrowWish(key as keyof typeof WALKS, ARROWS[key]!, id === "arrow-far", chosen);
    case "in":
    case "out":
    case "fit":
      return { wish: "zoom", by: id };
    case "follow-on":
      return { wish: "follow", way: "onward" };
    case "follow-back":
      return { wish: "follow", way: "back" };
    case "next-part":
      return { wish: "part", way: "next" };
    case "previous-part":
      return { wish: "part", way: "previous" };
    case "fault":
      return { wish: "menu" };
    case "begin":
    case "act":
    case "menu":
    case "why":
    case "leave":
      return { wish: id };
    default:
      return null;
  }
}

function arrowWish(
  key: keyof typeof WALKS,
  [dx, dy]: readonly [number, number],
  isFar: boolean,
  chosen: Thing | null,
): KeyWish {
  if (!chosen) {
    const pixels = isFar ? PAN_FAR : PAN;
    return { wish: "pan", dx: -dx * pixels, dy: -dy * pixels };
  }
  if (chosen.is !== "part") return { wish: "walk", way: WALKS[key] };
  const units = isFar ? NUDGE_FAR : NUDGE;
  return { wish: "nudge", dx: dx * units, dy: dy * units };
}
