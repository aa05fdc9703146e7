import { existsSync } from "node:fs";
import { join } from "node:path";
import { refuse } from "../../core/base/outcome.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { mayBeProbed } from "../../core/diagnose/scope.ts";
import { positionTable } from "../../core/diagnose/tableReading.ts";
import { svgOf } from "../../core/drawing/svg.ts";
import { netListText, positionTableCsv, wireListCsv } from "../../core/paper/lists.ts";
import { sheetAsk } from "../../schemas/calls/print.ts";
import { isExerciseText, readExercise } from "../../schemas/exercise.ts";
import { buildTakeHome, isBuilt } from "../build.ts";
import { readBytes, readCircuitFile, writeFileWhole } from "../files.ts";
import { embeddedFonts } from "../print/fonts.ts";
import { paintingBrowsers, pngOfSvg } from "../print/png.ts";
import { sheetsFor } from "../print/sheets.ts";
import { exercisePage, SCRIPT, TAKE_HOME, type TakeHomeParts, takeHomePage, takeHomeParts } from "../print/takeHome.ts";
import { ROOT } from "../root.ts";
import { type Console, EXIT, need } from "./console.ts";
import { connectorOf, faultsOf, type Typed } from "./given.ts";

interface ExportTyped extends Typed {
  readonly what: string;
  readonly out: string;
  readonly page?: string;
  readonly look?: string;
  readonly dark?: boolean;
  readonly times?: string;
}

type Made = string | Uint8Array;

/** What can be handed on as a file, the ending of its name, and what makes it. */
const FILES: Readonly<
  Record<string, { readonly ending: string; made(circuit: Circuit, typed: ExportTyped): Made | Promise<Made> }>
> = {
  takehome: { ending: ".html", made: async (circuit) => takeHomePage(circuit, await partsBuilt("circuit")) },
  picture: { ending: ".png", made: picture },
  wires: { ending: ".csv", made: wireListCsv },
  table: {
    ending: ".csv",
    made: (circuit, typed) => {
      const probed = need(mayBeProbed(circuit));
      return positionTableCsv([positionTable(probed, connectorOf(probed, typed), faultsOf(probed, typed))]);
    },
  },
  nets: { ending: ".txt", made: netListText },
};

/** `export FILE --what ... --out FILE`: writes one file to hand on, and says where. */
export async function exportFile(console: Console, file: string, typed: ExportTyped): Promise<number> {
  const { what, out } = typed;
  const known = Object.keys(FILES);
  if (!known.includes(what)) return need(refuse("print-what", { what, known: known.join(", ") }));
  const { ending, made } = FILES[what]!;
  if (!out.toLowerCase().endsWith(ending)) return need(refuse("export-ending", { file: out, ending, what }));
  const content = what === "takehome" ? await takeHome(file) : await made(need(await readCircuitFile(file)), typed);
  need(await writeFileWhole(out, content));
  console.write(`${out}: ${Math.ceil(Buffer.byteLength(content) / 1_000)} kB\n`);
  return EXIT.fine;
}

/** A take-home page of a circuit's file, or of an exercise's. */
async function takeHome(path: string): Promise<Made> {
  const bytes = need(await readBytes(path));
  const text = new TextDecoder().decode(bytes);
  if (!isExerciseText(text))
    return FILES.takehome!.made(need(await readCircuitFile(path)), { what: "takehome", out: "" });
  const { exercise } = need(readExercise(bytes));
  return exercisePage(exercise.title, text, await partsBuilt("exercise"));
}

/** What take-home pages are made of, built first where it is not there or older than its sources. */
async function partsBuilt(of: "circuit" | "exercise"): Promise<TakeHomeParts> {
  const folder = join(ROOT, TAKE_HOME);
  if (!existsSync(join(folder, SCRIPT)) || !isBuilt(ROOT)) await buildTakeHome(ROOT);
  return need(await takeHomeParts(folder, of));
}

/** Times the size of a screen that a picture may have. */
const TIMES: readonly string[] = ["1", "2", "4"];

/** A page of the circuit as it stands, as the window paints it. */
async function picture(circuit: Circuit, typed: ExportTyped): Promise<Uint8Array> {
  const { page, look = "iec", times = "2", dark = false } = typed;
  if (!TIMES.includes(times)) need(refuse("export-times", { typed: times }));
  const ask = sheetAsk.safeParse({
    what: "sheet",
    condition: typed.in ?? "",
    faults: typed.fault ?? [],
    look,
    ...(page !== undefined && { page }),
  });
  if (!ask.success) return need(refuse("print-choice", { option: "--look", choices: "iec, na", value: look }));
  const [sheet] = need(sheetsFor(circuit, ask.data, "a4"));
  const svg = svgOf(sheet!, { palette: dark ? "dark" : "light", fonts: await embeddedFonts() });
  return need(await pngOfSvg(svg, Number(times), paintingBrowsers(process.platform)));
}
