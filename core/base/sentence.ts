import type { Refusal } from "./outcome.ts";

/** Code to sentence; `{name}` stands for the thing of that name in the refusal. */
export type Words = Readonly<Record<string, string>>;

/**
 * The sentence of a refusal from these words, with the place in the file first where it names one. A code without words gives the
 * code and what it concerns.
 */
export function sentenceOf(all: readonly Words[], refusal: Refusal): string {
  const { path, line, column } = refusal.about;
  if (line !== undefined) return `Line ${line}, column ${column}: ${plain(all, refusal)}`;
  return path === undefined ? plain(all, refusal) : `At ${path}: ${plain(all, refusal)}`;
}

function plain(all: readonly Words[], refusal: Refusal): string {
  const template = all.find((words) => Object.hasOwn(words, refusal.code))?.[refusal.code];
  if (template === undefined) {
    const about = Object.entries(refusal.about).map(([name, value]) => `${name} ${value}`);
    return about.length === 0 ? `${refusal.code}.` : `${refusal.code}: ${about.join(", ")}.`;
  }
  return template.replace(/\{(\w+)\}/g, (whole, name: string) =>
    Object.hasOwn(refusal.about, name) ? String(refusal.about[name]) : whole,
  );
}
