import { join } from "node:path";
import { ROOT } from "../root.ts";
import { runTerminal } from "./program.ts";
import { screen } from "./screen.ts";

const SAMPLE = join(ROOT, "samples", "1-roof-vents.circuit.json");

/** What `npm start` shows: a sample in one position, one wire explained, and where to probe. */
const TOUR: readonly (readonly [title: string, words: readonly string[]])[] = [
  ["Key on, middle switch held at open: every wire", ["live", SAMPLE, "--in", "S1=on,S5=open"]],
  ["Why the motor's feed is powered, and what would change it", ["why", SAMPLE, "W16", "--in", "S1=on,S5=open"]],
  [
    "The middle vent does not open, the rear one does: where to probe",
    ["order", SAMPLE, "--complaint", "middle-open-own", "--observed", "rear-open-own=works"],
  ],
];

const file = process.argv[2];
const console = screen();

if (file !== undefined) process.exitCode = await runTerminal(["live", file], console);
else {
  for (const [title, words] of TOUR) {
    console.write(`\n== ${title}\n\n`);
    await runTerminal(words, console);
  }
  console.write("\nThe same for your own circuit: npm run -s wirefathom -- --help\n");
}
