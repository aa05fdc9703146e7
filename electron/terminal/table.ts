import type { PositionCell, PositionTable } from "../../core/diagnose/positionTable.ts";
import { mayBeProbed } from "../../core/diagnose/scope.ts";
import { positionTable } from "../../core/diagnose/tableReading.ts";
import { readCircuitFile } from "../files.ts";
import { type Console, EXIT, need } from "./console.ts";
import { connectorOf, faultsOf, type Typed } from "./given.ts";
import { aligned, GLYPHS, voltsText } from "./rows.ts";

/** `table FILE`: every pin of a connector in every distinct position, plug on and plug off. */
export async function table(console: Console, file: string, typed: Typed): Promise<number> {
  const circuit = need(mayBeProbed(need(await readCircuitFile(file))));
  const result = positionTable(circuit, connectorOf(circuit, typed), faultsOf(circuit, typed));
  if (typed.json) console.write(`${JSON.stringify(result, null, 2)}\n`);
  else {
    console.write(`${circuit.title}: connector ${result.connector}\n`);
    for (const plugged of [true, false]) for (const line of half(result, plugged)) console.write(`${line}\n`);
    console.write(
      "\n-/+ is a 4 A lamp from the pin to battery -, and from battery + to the pin: B bright, d dim, . dark.\n",
    );
    console.write(
      "A floating pin drifts: a meter may show 0.00 to 0.30 V there, the same as ground. Only the lamp tells.\n",
    );
  }
  return EXIT.fine;
}

/** One line for each position, one column for each pin: positions outnumber pins on most plugs. */
function half({ columns, rows }: PositionTable, plugged: boolean): readonly string[] {
  const head = ["position", ...rows.map((row) => `${row.pin} ${row.colour ?? ""}`.trim())];
  const lines = columns.flatMap((column, index) => {
    if (column.plugged !== plugged) return [];
    const title = column.under === "" ? column.title : `${column.title} (${column.under})`;
    return [[title, ...rows.map((row) => cellText(row.cells[index]!))]];
  });
  const merged = columns.filter((column) => column.plugged === plugged && column.merged.length > 0);
  return [
    "",
    plugged ? "Plug on, back-probed" : "Plug off, harness half",
    ...aligned([head, ...lines]),
    ...merged.map((column) => `  like ${column.title}: ${column.merged.join(", ")}`),
  ];
}

const LAMP = { bright: "B", dim: "d", dark: "." } as const;

function cellText({ state, volts, lampToMinus, lampToPlus }: PositionCell): string {
  const reads = state === "floating" ? "drifts" : voltsText(volts);
  return `${GLYPHS[state]} ${reads.padEnd(7)} ${LAMP[lampToMinus]}/${LAMP[lampToPlus]}`;
}
