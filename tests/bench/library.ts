import { copyFileSync, readFileSync } from "node:fs";
import { join } from "node:path";
import Database from "better-sqlite3";
import { addCircuit } from "../../electron/store/sqlite/circuits.ts";
import { listCircuits } from "../../electron/store/sqlite/list.ts";
import { closeStore, openStore, STORE_FILE } from "../../electron/store/sqlite/open.ts";
import { searchOf } from "../../electron/store/sqlite/search.ts";
import { readCircuit } from "../../schemas/circuit.ts";
import { lotsOf } from "../lots.ts";
import { judged } from "./goal.ts";
import { median, mediansMs } from "./measure.ts";
import { inRoom } from "./room.ts";

const CIRCUITS = 10_000;
/** Rows that the library shows at once. */
const SHOWN = 50;
const NOW = new Date("2026-03-02T08:00:00Z");
/** What is found by: makes, models and systems that nobody builds. */
const MAKES = ["Harrow", "Ostrel", "Vintor", "Calder", "Mistra", "Quillon", "Redwick", "Tarnby"];
const MODELS = ["Traveller", "Hauler", "Estate", "Pick-up", "Tipper", "Camper", "Coupe", "Shuttle"];
const SYSTEMS = ["roof vents", "exterior lights", "starter", "horn", "blower", "charging", "wiper", "liftgate"];
/** Typed letter by letter, as a person does. */
const TYPED = ["harrow roof", "ostrel 17", "wip", "m3 rd/bk", "middle vent switch"];
const SAMPLES = ["1-roof-vents", "4-horn", "5-blower", "8-wiper"];

/** Times what the library answers to each key of a search against the bare question to its index, by turns. */
export function benchLibrary(): Promise<readonly string[]> {
  return inRoom(async (room) => {
    const opened = await openStore(room, NOW);
    if (!opened.ok) throw new Error(opened.refusal.code);
    const store = opened.value;
    fill(store);
    store.connection.pragma("wal_checkpoint(TRUNCATE)");
    const copy = join(room, "copy.db");
    copyFileSync(join(room, STORE_FILE), copy);
    const bare = new Database(copy, { readonly: true });
    const question = bare.prepare("SELECT rowid, rank FROM search WHERE search MATCH ? ORDER BY rank LIMIT ?");
    const figures = keys().map((typed) => {
      const asked = searchOf(typed)!;
      const { askMs, bareMs } = mediansMs(
        {
          askMs: () => listCircuits(store, { search: typed, where: "library", from: 0, limit: SHOWN }),
          bareMs: () => question.all(asked, SHOWN),
        },
        { times: 15, mostMs: 1_500, warmMs: 60 },
      );
      return { typed, askMs, bareMs };
    });
    bare.close();
    closeStore(store);
    const worst = figures.toSorted((one, other) => other.askMs - one.askMs)[0]!;
    console.table([
      {
        circuits: CIRCUITS,
        keys: figures.length,
        "slowest key": worst.typed,
        "its answer, ms": worst.askMs.toFixed(2),
        "its bare question, ms": worst.bareMs.toFixed(2),
      },
    ]);
    const all = (pick: (one: (typeof figures)[number]) => number): number =>
      figures.reduce((sum, one) => sum + pick(one), 0);
    return judged([
      {
        name: "a search typed in a library of 10,000 / the bare questions",
        figure: all(({ askMs }) => askMs) / all(({ bareMs }) => bareMs),
        best: "most",
        goal: 2,
        limit: 4,
      },
      {
        name: "the same for the middle key",
        figure: median(figures.map(({ askMs, bareMs }) => askMs / bareMs)),
        best: "most",
        goal: 2,
        limit: 4,
      },
    ]);
  });
}

function fill(store: Parameters<typeof addCircuit>[0]): void {
  const samples = SAMPLES.map((name) => {
    const read = readCircuit(readFileSync(new URL(`../../samples/${name}.circuit.json`, import.meta.url)));
    if (!read.ok) throw new Error(read.refusal.code);
    return read.value;
  });
  const lots = lotsOf(10_000);
  store.connection.transaction(() => {
    for (let number = 0; number < CIRCUITS; number++) {
      const vehicle = `${lots.oneOf(MAKES)} ${lots.oneOf(MODELS)} ${lots.between(5, 26)}`;
      const circuit = { ...samples[number % samples.length]!, title: `${lots.oneOf(SYSTEMS)} ${number}`, vehicle };
      addCircuit(store, circuit, { name: "Brought in" }, NOW);
    }
  })();
}

/** Everything that stands in the field while the words are typed. */
function keys(): readonly string[] {
  return TYPED.flatMap((words) => Array.from(words, (_, last) => words.slice(0, last + 1))).filter(
    (typed) => searchOf(typed) !== null,
  );
}
