import type { Millimetres } from "../base/units.ts";
import { PAPER_WORDS as WORDS } from "../base/words/paper.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { connectorAt, partAt } from "../circuit/points.ts";
import type { ProbeOrder, Suspect } from "../diagnose/step.ts";
import { targetOf } from "../live/fault.ts";
import { kindOf } from "../parts/catalogue.ts";
import { inCell } from "./cell.ts";
import type { Block } from "./grid.ts";
import { leadParagraph } from "./lines.ts";
import { listed } from "./listed.ts";
import { SHEET } from "./page.ts";
import { TYPE } from "./sizes.ts";

const MOST_OF_A_SORT = 8;
const ABOVE: Millimetres = 1.4;
const LEAST: Millimetres = 8;

/** What works clears: things whose every suspect is cleared, by sort, "fuses F3 and F4; relay K1; wires W6, W20". */
export function clearedText(circuit: Circuit, order: ProbeOrder): string {
  const ownersOf = (suspects: readonly Suspect[]): readonly string[] =>
    suspects.flatMap(({ faults }) => faults.map(({ target }) => ownerOf(circuit, target)));
  const suspected = new Set(ownersOf(order.suspects));
  const cleared = ownersOf(order.cleared);
  const sorts = new Map<string, string[]>();
  for (const owner of new Set(cleared)) {
    if (suspected.has(owner)) continue;
    const sort = sortOf(circuit, owner);
    sorts.set(sort, [...(sorts.get(sort) ?? []), owner]);
  }
  return [...sorts]
    .map(([sort, names]) => `${plural(sort, names.length)} ${listed(names, ", ", MOST_OF_A_SORT)}`)
    .join("; ");
}

/** "No rows for these", under the cautions of the first sheet; nothing where nothing is cleared. */
export function clearedBlock(circuit: Circuit, order: ProbeOrder): Block {
  const names = clearedText(circuit, order);
  if (names === "") return { height: 0, draw: () => ({ marks: [], cells: [] }) };
  const words = leadParagraph(WORDS.noRowsFor, `${names}.`, TYPE.body, SHEET.width);
  const height = ABOVE + Math.max(LEAST, words.height);
  return {
    height,
    draw: (top) =>
      inCell("no rows", { x: 0, y: top + ABOVE, width: SHEET.width, height: height - ABOVE }, words.at(0, top + ABOVE)),
  };
}

/** The part, wire or connector that a fault's target belongs to. */
function ownerOf(circuit: Circuit, target: string): string {
  const found = targetOf(circuit, target);
  return found?.is === "cavity" ? found.connector : target;
}

function sortOf(circuit: Circuit, owner: string): string {
  const part = partAt(circuit, owner);
  if (part) return kindOf(part.kind)?.title.toLowerCase() ?? "";
  return connectorAt(circuit, owner) ? WORDS.sorts.plug : WORDS.sorts.wire;
}

function plural(sort: string, count: number): string {
  if (count === 1 || sort === "") return sort;
  return /(?:ch|s|x)$/.test(sort) ? `${sort}es` : `${sort}s`;
}
