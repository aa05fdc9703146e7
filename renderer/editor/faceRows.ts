import type { Connector } from "../../core/circuit/circuit.ts";

/** The places of a face row by row, seen from the wire side; "" is a gap. */
export type Rows = Connector["rows"];

/** Most rows that are offered, and most places of which all arrangements are. */
const MOST_ROWS = 4;

/** A face in words: "2 rows of 3", "1 row of 2", "rows of 3 and 2". */
export function rowsWords(rows: Rows): string {
  const lengths = rows.map((row) => row.length);
  if (new Set(lengths).size < 2) return `${rows.length} ${rows.length === 1 ? "row" : "rows"} of ${lengths[0] ?? 0}`;
  return `rows of ${lengths.slice(0, -1).join(", ")} and ${lengths.at(-1)}`;
}

/**
 * The same places in so many rows of so many, in their order; gaps close up. Where there are fewer places, new ones are
 * numbered on; where there are more, the last ones go.
 */
export function arranged(rows: Rows, count: number, across: number): Rows {
  const names = rows.flat().filter((name) => name !== "");
  let next = highest(names) + 1;
  while (names.length < count * across) names.push(String(next++));
  return Array.from({ length: count }, (_, row) => names.slice(row * across, (row + 1) * across));
}

/** Every way to set out the places of a face in up to four full rows; at least the one that is there. */
export function arrangements(rows: Rows): readonly Rows[] {
  const count = rows.flat().filter((name) => name !== "").length;
  const ways = Array.from({ length: MOST_ROWS }, (_, index) => index + 1)
    .filter((down) => count % down === 0)
    .map((down) => arranged(rows, down, count / down));
  const isThere = ways.some((way) => JSON.stringify(way) === JSON.stringify(rows));
  return isThere ? ways : [rows, ...ways];
}

/** The face with a place called otherwise; "" makes a gap of it, and gaps at the end of a row go. */
export function placeNamed(rows: Rows, was: string, name: string): Rows {
  return rows
    .map((row) => {
      const named = row.map((place) => (place === was ? name : place));
      const last = named.findLastIndex((place) => place !== "");
      return name === "" ? named.slice(0, last + 1) : named;
    })
    .filter((row) => row.length > 0);
}

/** A face for so many terminals: one row up to four, else two. Places bear the terminals' numbers where all have one. */
export function firstRows(terminals: readonly string[]): Rows {
  const areNumbers = terminals.every((terminal) => /^\d+$/.test(terminal));
  const names = areNumbers
    ? [...terminals].sort((one, other) => Number(one) - Number(other))
    : terminals.map((_, index) => String(index + 1));
  const across = names.length > MOST_ROWS ? Math.ceil(names.length / 2) : names.length;
  return [names.slice(0, across), names.slice(across)].filter((row) => row.length > 0);
}

function highest(names: readonly string[]): number {
  return Math.max(0, ...names.map(Number).filter(Number.isFinite));
}
