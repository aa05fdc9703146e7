import { z } from "zod";
import type { SettingShelf } from "../store/library.ts";

const NOTE = "window-place";
const coordinate = z.int().min(-100_000).max(100_000);

const placeShape = z.strictObject({
  x: coordinate,
  y: coordinate,
  width: z.int().min(200).max(20_000),
  height: z.int().min(200).max(20_000),
  isMaximized: z.boolean(),
});

/** Where a window stands on the desktop, in its units. */
export type WindowPlace = z.infer<typeof placeShape>;

/** A rectangle of the desktop. */
export interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** How much of the window's upper edge must be on a screen, so that a hand can move it. */
const LEAST_SEEN = 120;

/** The place the window was left in; null where none is kept or it would not be on any of these screens. */
export async function keptPlace(settings: SettingShelf, screens: readonly Area[]): Promise<WindowPlace | null> {
  const note = await settings.note(NOTE);
  const read = placeShape.safeParse(note.ok ? note.value : null);
  return read.success && screens.some((screen) => isSeen(read.data, screen)) ? read.data : null;
}

/** Keeps the place of the window. */
export async function keepPlace(settings: SettingShelf, place: WindowPlace): Promise<void> {
  await settings.keepNote(NOTE, place);
}

function isSeen({ x, y, width }: WindowPlace, screen: Area): boolean {
  const seen = Math.min(x + width, screen.x + screen.width) - Math.max(x, screen.x);
  return seen >= LEAST_SEEN && y >= screen.y - 1 && y <= screen.y + screen.height - LEAST_SEEN;
}
