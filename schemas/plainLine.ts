import { z } from "zod";
import { withoutTurns } from "../core/base/turning.ts";

/** A person's own name has at most so many signs. */
export const MOST_NAME = 60;

/** One short line of plain signs, such as a name: it may stand in a table, on paper and on the screen of a terminal. */
export function plainLine(most: number) {
  return z
    .string()
    .max(most)
    .regex(/^[^\p{Cc}\p{Bidi_Control}\u2028\u2029]*$/u);
}

/** What was typed as such a line: without signs that turn the writing about, blanks in place of those that steer. */
export function asPlainLine(typed: string): string {
  return withoutTurns(typed)
    .replace(/[\p{Cc}\u061c\u2028\u2029]/gu, " ")
    .trim();
}
