import { benchClicks } from "./clicks.ts";
import { benchDictionary } from "./dictionary.ts";
import { benchFind } from "./find.ts";
import { benchLibrary } from "./library.ts";
import { benchPoints } from "./points.ts";
import { benchSheet } from "./sheet.ts";
import { benchTerminal } from "./terminal.ts";
import { benchWindow } from "./window/goals.ts";

/** What may be named to run it alone; all of it where nothing is. */
const BENCHES: Readonly<Record<string, () => readonly string[] | Promise<readonly string[]>>> = {
  clicks: benchClicks,
  dictionary: benchDictionary,
  find: benchFind,
  library: benchLibrary,
  points: benchPoints,
  sheet: benchSheet,
  terminal: benchTerminal,
  window: benchWindow,
};

const named = process.argv.slice(2);
const unknown = named.find((name) => !(name in BENCHES));
if (unknown !== undefined)
  throw new Error(`no bench is called ${unknown}: there are ${Object.keys(BENCHES).join(", ")}`);
const below: string[] = [];
for (const name of named.length > 0 ? named : Object.keys(BENCHES)) below.push(...(await BENCHES[name]!()));
for (const line of below) console.error(line);
process.exitCode = below.length === 0 ? 0 : 1;
