import { refuse } from "../../core/base/outcome.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { sheetOf } from "../../core/circuit/sheet.ts";
import { probeOrder } from "../../core/diagnose/order.ts";
import { positionTable } from "../../core/diagnose/tableReading.ts";
import type { Drawing } from "../../core/drawing/mark.ts";
import { svgOf } from "../../core/drawing/svg.ts";
import { liveOf } from "../../core/live/live.ts";
import { checklistSheets } from "../../core/paper/checklist.ts";
import { sheetCode } from "../../core/paper/sheetCode.ts";
import { tableSheets } from "../../core/paper/table.ts";
import type { Look } from "../../core/parts/kind.ts";
import { readCircuitFile, writeFileWhole } from "../files.ts";
import { embeddedFonts } from "../print/fonts.ts";
import { htmlOf } from "../print/html.ts";
import { PAPERS, type Paper, type PrintPalette, placingOn } from "../print/paper.ts";
import { pdfOf } from "../print/pdf.ts";
import { type Console, EXIT, need } from "./console.ts";
import { complaintOf, conditionOf, connectorOf, faultsOf, type Typed } from "./given.ts";

interface PrintTyped extends Typed {
  readonly what: string;
  readonly out: string;
  readonly page?: string;
  readonly paper: string;
  readonly look: string;
  readonly ink: string;
}

const LATER = ["branches", "budget", "handover"];
const SHEETS = ["sheet", "checklist", "table"];

/** `print FILE --what ... --out FILE`: writes one PDF or HTML, or an SVG for each sheet, and says where. */
export async function print(console: Console, file: string, typed: PrintTyped): Promise<number> {
  if (LATER.includes(typed.what)) need(refuse("not-yet", { what: typed.what }));
  if (!SHEETS.includes(typed.what)) need(refuse("print-what", { what: typed.what, known: SHEETS.join(", ") }));
  const ending = /\.(pdf|svg|html)$/i.exec(typed.out)?.[1]?.toLowerCase();
  if (ending === undefined) return need(refuse("print-ending", { file: typed.out }));
  const paper: Paper = chosen("--paper", typed.paper, Object.keys(PAPERS) as Paper[]);
  const palette: PrintPalette =
    chosen("--ink", typed.ink, ["black", "colour"] as const) === "black" ? "black" : "light";
  const circuit = need(await readCircuitFile(file));
  const sheets = sheetsOf(circuit, typed, paper);
  const fonts = await embeddedFonts();
  const title = sheets[0]?.title ?? circuit.title;
  const files: readonly (readonly [string, string | Uint8Array])[] =
    ending === "pdf"
      ? [[typed.out, await pdfOf(sheets, { paper, palette, title, made: new Date() })]]
      : ending === "html"
        ? [[typed.out, htmlOf(sheets, { paper, palette, title, fonts })]]
        : sheets.map((sheet, index) => [numbered(typed.out, index, sheets.length), svgOf(sheet, { palette, fonts })]);
  for (const [path, content] of files) {
    need(await writeFileWhole(path, content));
    console.write(`${path}: ${files.length > 1 || sheets.length === 1 ? "1 sheet" : `${sheets.length} sheets`}\n`);
  }
  return EXIT.fine;
}

function chosen<T extends string>(option: string, value: string, choices: readonly T[]): T {
  return (
    choices.find((each) => each === value) ??
    need(refuse("print-choice", { option, value, choices: choices.join(", ") }))
  );
}

/** `sheet.svg` becomes `sheet-2.svg` where there are several. */
function numbered(path: string, index: number, count: number): string {
  return count === 1 ? path : path.replace(/(\.\w+)$/, `-${index + 1}$1`);
}

function sheetsOf(circuit: Circuit, typed: PrintTyped, paper: Paper): readonly Drawing[] {
  if (typed.what === "sheet") return circuitSheets(circuit, typed, paper);
  if (typed.what === "table") {
    const table = positionTable(circuit, connectorOf(circuit, typed), faultsOf(circuit, typed));
    return tableSheets({ circuit, table });
  }
  const { complaint, others } = complaintOf(circuit, typed);
  const order = probeOrder(circuit, complaint, others);
  if (order.suspects.length === 0) need(refuse("no-suspects"));
  return checklistSheets({ circuit, order });
}

function circuitSheets(circuit: Circuit, typed: PrintTyped, paper: Paper): readonly Drawing[] {
  const look: Look = chosen("--look", typed.look, ["iec", "na"] as const);
  const known = circuit.pages.map((page) => page.id);
  if (typed.page !== undefined && !known.includes(typed.page))
    need(refuse("page-unknown-print", { page: typed.page, pages: known.join(", ") }));
  const live = liveOf(circuit, conditionOf(circuit, typed), faultsOf(circuit, typed));
  return circuit.pages.flatMap((page, index) => {
    if (typed.page !== undefined && page.id !== typed.page) return [];
    const sheet = [index + 1, circuit.pages.length] as const;
    const plain = need(sheetOf({ circuit, page: page.id, live, look, sheet }));
    const printScale = placingOn(plain, paper).scale;
    return [need(sheetOf({ circuit, page: page.id, live, look, sheet, printScale, code: sheetCode(plain.marks) }))];
  });
}
