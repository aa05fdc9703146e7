import { type Outcome, ok, refuse } from "../../core/base/outcome.ts";
import { sentence } from "../../core/base/words.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Job } from "../../core/diagnose/job.ts";
import { readingsTyped } from "../../core/diagnose/readingText.ts";
import { svgOf } from "../../core/drawing/svg.ts";
import { PAPERS, type Paper, type PrintPalette } from "../../core/paper/placing.ts";
import type { SheetAsk } from "../../schemas/calls/print.ts";
import { LIMITS } from "../../schemas/limits.ts";
import { readPackedFile, writeFileWhole } from "../files.ts";
import { typedOver } from "../jobFile.ts";
import { embeddedFonts } from "../print/fonts.ts";
import { htmlOf } from "../print/html.ts";
import { pdfOf } from "../print/pdf.ts";
import { printTitle } from "../print/printTitle.ts";
import { sheetsFor } from "../print/sheets.ts";
import { plainUnders } from "../print/undersOf.ts";
import { type Console, EXIT, need } from "./console.ts";
import { chosen } from "./given.ts";
import { jobFrom } from "./job.ts";
import type { SearchTyped } from "./search.ts";
import { weighed } from "./weights.ts";

interface PrintTyped extends SearchTyped {
  readonly depth?: string;
  readonly what: string;
  readonly out: string;
  readonly page?: string;
  readonly load?: string;
  readonly paper: string;
  readonly look: string;
  readonly ink: string;
  readonly readAfter?: readonly string[];
  readonly done?: string;
  readonly after?: string;
  readonly watch?: string;
  readonly number?: string;
  readonly technician?: string;
  readonly underlay?: boolean;
}

/** What a handover page and the head of a sheet say in people's own words. */
const OWN_WORDS = ["told", "done", "after", "watch", "vehicle", "technician", "number"] as const;

const NOTHING_UNDER = { under: [], leftOut: [] } as const;

const SHEETS = [
  "sheet",
  "checklist",
  "branches",
  "wiggle",
  "table",
  "straight",
  "budget",
  "proof",
  "handover",
] as const;

/** `print FILE --what ... --out FILE`: writes one PDF or HTML, or an SVG for each sheet, and says where. */
export async function print(console: Console, file: string, typed: PrintTyped): Promise<number> {
  if (!SHEETS.some((sheet) => sheet === typed.what))
    need(refuse("print-what", { what: typed.what, known: SHEETS.join(", ") }));
  const ending = /\.(pdf|svg|html)$/i.exec(typed.out)?.[1]?.toLowerCase();
  if (ending === undefined) return need(refuse("print-ending", { file: typed.out }));
  const paper: Paper = chosen("--paper", typed.paper, Object.keys(PAPERS) as Paper[]);
  const palette: PrintPalette =
    chosen("--ink", typed.ink, ["black", "colour"] as const) === "black" ? "black" : "light";
  if (typed.underlay && (typed.what !== "sheet" || ending !== "pdf")) return need(refuse("print-underlay"));
  const { circuit, pictures } = need(await readPackedFile(file));
  const from = await jobFrom(circuit, typed);
  for (const note of from?.notes ?? []) console.complain(`${note}\n`);
  const asked = { ...typed, ...(await weighed(circuit, typed)) };
  const ask = askOf(from ? withJob(circuit, from.file.job, asked) : asked);
  const sheets = need(sheetsFor(circuit, ask, paper));
  const { under, leftOut } = typed.underlay ? plainUnders(circuit, ask, pictures) : NOTHING_UNDER;
  for (const each of leftOut) console.complain(`${sentence(each)}\n`);
  const fonts = await embeddedFonts();
  const title = printTitle(circuit, ask);
  const files: readonly (readonly [string, string | Uint8Array])[] =
    ending === "pdf"
      ? [[typed.out, await pdfOf(sheets, { paper, palette, under, title, made: new Date() })]]
      : ending === "html"
        ? [[typed.out, htmlOf(sheets, { paper, palette, title, fonts })]]
        : sheets.map((sheet, index) => [numbered(typed.out, index, sheets.length), svgOf(sheet, { palette, fonts })]);
  for (const [path, content] of files) {
    need(await writeFileWhole(path, content));
    console.write(`${path}: ${files.length > 1 || sheets.length === 1 ? "1 sheet" : `${sheets.length} sheets`}\n`);
  }
  return EXIT.fine;
}

/** What was typed over what the job says; readings of both count. */
function withJob(circuit: Circuit, job: Job, typed: PrintTyped): PrintTyped {
  const said = (["vehicle", "told", "done"] as const).flatMap((name) => (job[name] === "" ? [] : [[name, job[name]]]));
  const read = [...readingsTyped(circuit, job.readings), ...(typed.read ?? [])];
  const readAfter = [...readingsTyped(circuit, job.after), ...(typed.readAfter ?? [])];
  return { ...Object.fromEntries(said), ...typedOver(circuit, job, typed), read, readAfter };
}

function askOf(typed: PrintTyped): SheetAsk {
  return {
    what: chosen("--what", typed.what, SHEETS),
    look: chosen("--look", typed.look, ["iec", "na"]),
    condition: typed.in ?? "",
    faults: [...(typed.fault ?? [])],
    observed: [...(typed.observed ?? [])],
    read: [...(typed.read ?? [])],
    readAfter: [...(typed.readAfter ?? [])],
    ...Object.fromEntries(OWN_WORDS.flatMap((name) => (typed[name] === undefined ? [] : [[name, typed[name]]]))),
    weigh: [...(typed.weigh ?? [])],
    shop: [...(typed.shop ?? [])],
    solved: [...(typed.solved ?? [])],
    ...(typed.battery !== undefined && { battery: typed.battery }),
    ...(typed.sleeping !== undefined && { sleeping: typed.sleeping }),
    ...(typed.when !== undefined && { when: typed.when }),
    wiggled: [...(typed.wiggle ?? [])],
    ...(typed.depth !== undefined && { depth: need(depthOf(typed.depth)) }),
    ...(typed.page !== undefined && { page: typed.page }),
    ...(typed.load !== undefined && { load: typed.load }),
    ...(typed.complaint !== undefined && { complaint: typed.complaint }),
    ...(typed.connector !== undefined && { connector: typed.connector }),
  };
}

function depthOf(typed: string): Outcome<number> {
  const depth = Number(typed);
  const isDepth = Number.isInteger(depth) && depth >= 1 && depth <= LIMITS.branchDepth;
  return isDepth ? ok(depth) : refuse("depth-number", { typed, most: LIMITS.branchDepth });
}

/** `sheet.svg` becomes `sheet-2.svg` where there are several. */
function numbered(path: string, index: number, count: number): string {
  return count === 1 ? path : path.replace(/(\.\w+)$/, `-${index + 1}$1`);
}
