import type { Recorded } from "../../../core/lesson/move.ts";

/*
 * A browser keeps the route of an exercise under the exercise's id, so that a page that was closed goes on where it was. Where it
 * keeps nothing, as for files on some phones, the page works all the same and says so by the hand-in alone.
 */

const key = (id: string): string => `wirefathom ${id}`;

/** The moves that were made on an exercise before; none where nothing can be kept or read. */
export function routeKept(id: string): readonly Recorded[] {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(key(id)) ?? "[]");
    return Array.isArray(kept) ? (kept as readonly Recorded[]) : [];
  } catch {
    return [];
  }
}

/** Keeps the moves made on an exercise by now, where the browser keeps anything. */
export function keepRoute(id: string, route: readonly Recorded[]): void {
  try {
    localStorage.setItem(key(id), JSON.stringify(route));
  } catch {
    // Nothing is lost of the page itself.
  }
}
