import { fileURLToPath } from "node:url";
import { runTerminal } from "../../electron/terminal/program.ts";

/** Path of sample 1. */
export const VENTS = fileURLToPath(new URL("../../samples/1-roof-vents.circuit.json", import.meta.url));

/** Runs one command line and returns what it wrote, what it complained of, and its exit code. */
export async function run(...words: string[]): Promise<{ out: string; complaint: string; code: number }> {
  let out = "";
  let complaint = "";
  const code = await runTerminal(words, {
    write: (text) => {
      out += text;
    },
    complain: (text) => {
      complaint += text;
    },
    hasColour: false,
    width: 100,
  });
  return { out, complaint, code };
}
