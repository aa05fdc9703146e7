import type { Refusal } from "./outcome.ts";
import { withoutSteering, withoutTurns } from "./turning.ts";

/** Code to sentence; `{name}` stands for the thing of that name in the refusal. */
export type Words = Readonly<Record<string, string>>;

/**
 * The sentence of a refusal from these words, with the place in the file first where it names one. A code without words gives the
 * code and what it concerns.
 */
export function sentenceOf(all: readonly Words[], refusal: Refusal): string {
  const { path, line, column } = refusal.about;
  if (line !== undefined) return `Line ${line}, column ${column}: ${plain(all, refusal)}`;
  return path === undefined ? plain(all, refusal) : `At ${told(path)}: ${plain(all, refusal)}`;
}

function plain(all: readonly Words[], refusal: Refusal): string {
  const template = all.find((words) => Object.hasOwn(words, refusal.code))?.[refusal.code];
  if (template === undefined) {
    const about = Object.entries(refusal.about).map(([name, value]) => `${name} ${told(value)}`);
    return about.length === 0 ? `${refusal.code}.` : `${refusal.code}: ${about.join(", ")}.`;
  }
  return template.replace(/\{(\w+)\}/g, (whole, name: string) =>
    Object.hasOwn(refusal.about, name) ? told(refusal.about[name]!) : whole,
  );
}

/** Longest that a thing is told in a sentence; a list of what there is may be as long. */
const MOST_SIGNS = 600;

/** A thing as a sentence names it, in one line. It may come from anywhere: what would steer a terminal or turn the writing about is left out. */
function told(value: string | number): string {
  const text = withoutSteering(withoutTurns(String(value).replace(/[\s\u2028\u2029]+/g, " ")));
  return text.length > MOST_SIGNS ? `${text.slice(0, MOST_SIGNS)}...` : text;
}
