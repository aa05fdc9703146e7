import { LIST_WORDS as WORDS } from "../base/words/lists.ts";
import { STATE_WORDS } from "../base/words/sheet.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { netsOf } from "../circuit/nets.ts";
import { partOfPoint } from "../circuit/points.ts";
import type { PositionTable } from "../diagnose/positionTable.ts";
import { type Cell, csvOf } from "./csv.ts";

/** Decimals of volts in a list: a meter's second. */
const VOLTS_DECIMALS = 2;

/** Every wire of a circuit as CSV, in its order, with the pages on which its ends stand. */
export function wireListCsv(circuit: Circuit): string {
  const pageOf = (end: string): string => {
    const page = circuit.placement.parts[partOfPoint(circuit, end)?.part.id ?? ""]?.page;
    return circuit.pages.find(({ id }) => id === page)?.title ?? "";
  };
  const rows = circuit.wires.map(({ id, from, to, colour = "", mm2 = null, metres = null, ohms = null }) => {
    const pages = [...new Set([pageOf(from), pageOf(to)])].filter((title) => title !== "");
    return [id, from, to, colour, mm2, metres, ohms, pages.join("; ")];
  });
  return csvOf([WORDS.wires, ...rows]);
}

/** Position tables as CSV, a row for every pin in every distinct position, so that they can be sorted and filtered. */
export function positionTableCsv(tables: readonly PositionTable[]): string {
  return csvOf([WORDS.positions, ...tables.flatMap(positionRows)]);
}

function positionRows({ connector, columns, rows }: PositionTable): readonly (readonly Cell[])[] {
  return columns.flatMap(({ title, under, plugged, merged }, at) =>
    rows.map(({ pin, point, colour, leadsTo, cells }) => {
      const { state, volts, lampToMinus, lampToPlus } = cells[at]!;
      return [
        connector,
        pin,
        point,
        colour,
        leadsTo,
        plugged ? WORDS.on : WORDS.off,
        WORDS.same(title, merged),
        under,
        STATE_WORDS[state],
        volts === null ? null : Number(volts.toFixed(VOLTS_DECIMALS)),
        lampToMinus,
        lampToPlus,
      ];
    }),
  );
}

/** Every net of a circuit in a line: its points, then its wires in brackets. Points that nothing is joined to come last. */
export function netListText(circuit: Circuit): string {
  const [joined, alone] = [[] as string[], [] as string[]];
  for (const { points, wires } of netsOf(circuit)) {
    if (points.length === 1) alone.push(points[0]!);
    else joined.push(`${points.join(" ")}${wires.length > 0 ? `  (${wires.join(" ")})` : ""}`);
  }
  const rest = alone.length > 0 ? ["", `${WORDS.alone} ${alone.join(" ")}`] : [];
  return `${[WORDS.nets(circuit.title), "", ...joined, ...rest].join("\n")}\n`;
}
