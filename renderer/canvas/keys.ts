import type { Thing } from "../state/state.ts";

/** What a key asks of the drawing. */
export type KeyWish =
  | { readonly wish: "walk"; readonly way: "onward" | "back" | "next" | "previous" }
  | { readonly wish: "pan"; readonly dx: number; readonly dy: number }
  | { readonly wish: "nudge"; readonly dx: number; readonly dy: number }
  | { readonly wish: "zoom"; readonly by: "in" | "out" | "fit" }
  | { readonly wish: "part"; readonly way: "next" | "previous" }
  /** Throws the control of what is chosen to its first, second, ... position. */
  | { readonly wish: "position"; readonly index: number }
  | { readonly wish: "begin" | "act" | "menu" | "why" | "leave" };

/** What of a key press counts here. */
export interface KeyPress {
  readonly key: string;
  readonly code: string;
  readonly shiftKey: boolean;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly altKey: boolean;
}

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
 * What a key means while the drawing has the focus and this is chosen; null for keys that are not the drawing's: those with
 * Ctrl are the window's. Arrows move the drawing while nothing is chosen, a part that is chosen, and walk the circuit from a
 * point or a wire.
 */
export function keyWish(press: KeyPress, chosen: Thing | null): KeyWish | null {
  const { key, code, shiftKey } = press;
  if (press.altKey || press.ctrlKey || press.metaKey) return null;
  if (code === "Digit1" && shiftKey) return { wish: "zoom", by: "fit" };
  if (/^[1-9]$/.test(key)) return { wish: "position", index: Number(key) - 1 };
  const arrow = ARROWS[key];
  if (arrow) return arrowWish(key as keyof typeof WALKS, arrow, shiftKey, chosen);
  switch (key) {
    case "+":
    case "=":
      return { wish: "zoom", by: "in" };
    case "-":
      return { wish: "zoom", by: "out" };
    case "Home":
      return { wish: "begin" };
    case "PageDown":
      return { wish: "part", way: "next" };
    case "PageUp":
      return { wish: "part", way: "previous" };
    case "Enter":
      return { wish: "act" };
    case "ContextMenu":
      return { wish: "menu" };
    case "F10":
      return shiftKey ? { wish: "menu" } : null;
    case "w":
    case "W":
      return { wish: "why" };
    case "Escape":
      return { wish: "leave" };
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
