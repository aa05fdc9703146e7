/** What a cell of a list holds: words, a number, or nothing. */
export type Cell = string | number | null;

/** Signs by which a spreadsheet takes words for a formula: at the front, and after what parts cells in some countries; wide ones too. */
const FORMULA = /(^|;)\s*[=+\-@\t\r\uff1d\uff0b\uff0d\uff20]/;
const QUOTED = /[",;\r\n\t]/;

/**
 * Rows as CSV (RFC 4180): commas, a line break of two signs after each row, words quoted where they must be. Words that a
 * spreadsheet would work out as a formula get an apostrophe before them. A mark of UTF-8 leads only where there is more than
 * ASCII: some spreadsheets need it then.
 */
export function csvOf(rows: readonly (readonly Cell[])[]): string {
  const text = rows.map((row) => `${row.map(cellText).join(",")}\r\n`).join("");
  // biome-ignore lint/suspicious/noControlCharactersInRegex: all of ASCII is meant
  return /^[\u0000-\u007f]*$/.test(text) ? text : `\uFEFF${text}`;
}

function cellText(cell: Cell): string {
  if (cell === null) return "";
  if (typeof cell === "number") return String(cell);
  const marked = FORMULA.test(cell) ? `'${cell}` : cell;
  // A break in a cell is a row of its own to readers that do not know of quotes, and would hide a formula behind it.
  const safe = marked.replace(/[\r\n]+/g, " ");
  return QUOTED.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
