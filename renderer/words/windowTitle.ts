import { shownTitle } from "./library.ts";

/** Letters that are written from the right, and signs that turn what is written about. */
const TURNS =
  /[\p{Script=Hebrew}\p{Script=Arabic}\p{Script=Syriac}\p{Script=Thaana}\p{Script=Nko}\u200e\u200f\u202a-\u202e\u2066-\u2069]/u;

/** What the window is called while a circuit is open. A title that turns the writing about keeps to itself. */
export function windowTitle(given: string): string {
  const title = shownTitle(given);
  const [first, pop] = ["\u2068", "\u2069"];
  // A sign in it that ends such a span would end this one.
  const own = TURNS.test(title) ? `${first}${title.replace(/[\u2066-\u2069]/g, "")}${pop}` : title;
  return `${own} – Wirefathom`;
}
