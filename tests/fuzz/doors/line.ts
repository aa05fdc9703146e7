import { fileURLToPath } from "node:url";
import { ok } from "../../../core/base/outcome.ts";
import { runTerminal } from "../../../electron/terminal/program.ts";
import type { Door } from "../door.ts";
import { spoiltText } from "../mutate.ts";
import { SAMPLES } from "./given.ts";

const HORN = fileURLToPath(new URL("4-horn.circuit.json", SAMPLES));
const EXERCISE = fileURLToPath(new URL("10-power-and-ground.1.exercise.json", SAMPLES));

/** Command lines as they are typed, a word a line. */
const LINES = [
  `check\n${HORN}`,
  `check\n${HORN}\n--json`,
  `live\n${HORN}\n--in\nS1=pressed`,
  `live\n${HORN}\n--fault\nW15:open\n--json`,
  `why\n${HORN}\nK1.30`,
  `shares\n${HORN}\nF1`,
  `jumper\n${HORN}\nX20-1\nbattery+\n--fuse\n10`,
  `table\n${HORN}\n--connector\nX20`,
  `order\n${HORN}\n--complaint\nlow-horn\n--read\nX20-1 @ S1=pressed : 11.9V`,
  `proof\n${HORN}\n--complaint\nlow-horn\n--fault\nW15:open`,
  `exercise\nopen\n${EXERCISE}`,
  `exercise\nfaults\n${HORN}\n--complaint\nlow-horn`,
  "--help",
];
/** Words by which a line would open a window or write a file. */
const ACTS = /^(?:open|-o|--out.*|--save-job.*|--csv.*|--pdf.*|make|export|print|run|grade|sheets?)$/;

/** The command line, but for what opens a window or writes a file. */
export const LINE_DOORS: readonly Door[] = [
  {
    name: "command line",
    kind: "text",
    seeds: async () => LINES,
    make: (lots, seeds) => {
      const words = String(lots.oneOf(seeds)).split("\n");
      const other = String(lots.oneOf(seeds)).split("\n");
      const at = lots.upTo(words.length + 1);
      switch (lots.upTo(4)) {
        case 0:
          return words.toSpliced(at, 1).join("\n");
        case 1:
          return words.toSpliced(at, lots.upTo(2), lots.oneOf(other)).join("\n");
        case 2:
          return words
            .toSpliced(at, lots.upTo(2), spoiltText(lots.oneOf(other), seeds, lots).slice(0, 3_000))
            .join("\n");
        default:
          return words.map((word, index) => (index === at ? spoiltText(word, seeds, lots) : word)).join("\n");
      }
    },
    open: async (input) => {
      const words = String(input).split("\n");
      // `exercise open` only shows; the others would act.
      if (words.some((word, index) => ACTS.test(word) && !(word === "open" && words[index - 1] === "exercise")))
        return ok(null);
      let complaint = "";
      let written = "";
      const quiet = {
        write: (text: string) => {
          written += text;
        },
        complain: (text: string) => {
          complaint += text;
        },
        hasColour: false,
        width: 100,
      };
      const code = await runTerminal(words, quiet);
      if (![0, 1, 2].includes(code)) throw new Error(`the line ended with ${code}`);
      if (complaint.includes("    at ")) throw new Error(`the line complained of ${complaint.slice(0, 300)}`);
      // biome-ignore lint/suspicious/noControlCharactersInRegex: those are what is looked for
      if (/[\u0000-\u0008\u000b-\u001f\u007f-\u009f]/.test(complaint + written))
        throw new Error(`the complaint moves the cursor: ${JSON.stringify((complaint + written).slice(0, 300))}`);
      return ok(code);
    },
    share: 2,
    mostMs: 10_000,
  },
];
