import type { Circuit, Page } from "../circuit/circuit.ts";

/** More circuits with the same parts are not kept: what was solved for older ones is let go. */
const MOST_ALIKE = 4;

const known = new WeakMap<object, Circuit[]>();

/**
 * The circuit as the first one seen that differs from it in nothing but where things stand on the pages and what is printed
 * under them. What is solved
 * for it is remembered under that one, so that moving a part solves nothing anew.
 */
export function wiringOf(circuit: Circuit): Circuit {
  const alike = known.get(circuit.parts) ?? [];
  known.set(circuit.parts, alike);
  const first = alike.find((other) => isSameButPlaced(circuit, other));
  if (first) return first;
  alike.push(circuit);
  if (alike.length > MOST_ALIKE) alike.shift();
  return circuit;
}

function isSameButPlaced(one: Circuit, other: Circuit): boolean {
  const names = new Set([...Object.keys(one), ...Object.keys(other)] as (keyof Circuit)[]);
  names.delete("placement");
  names.delete("pages");
  return arePagesSame(one.pages, other.pages) && [...names].every((name) => one[name] === other[name]);
}

function arePagesSame(some: Circuit["pages"], others: Circuit["pages"]): boolean {
  if (some === others) return true;
  return some.length === others.length && some.every((page, index) => isSameButPrinted(page, others[index]!));
}

function isSameButPrinted(one: Page, other: Page): boolean {
  const { id, title, widthMm, heightMm } = one;
  return id === other.id && title === other.title && widthMm === other.widthMm && heightMm === other.heightMm;
}
