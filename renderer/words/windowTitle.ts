import { ownSpan } from "../../core/base/turning.ts";
import { shownTitle } from "./library.ts";

/** What the window is called while a circuit is open. A title that turns the writing about keeps to itself. */
export function windowTitle(given: string): string {
  return `${ownSpan(shownTitle(given))} – Wirefathom`;
}
