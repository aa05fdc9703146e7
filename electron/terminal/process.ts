import { config } from "zod";
import { EXIT } from "./console.ts";
import { runTerminal } from "./program.ts";
import { screen } from "./screen.ts";

/** Runs one command line as this process: exit code and all. A fault of the program itself is told in one sentence. */
export async function runProcess(words: readonly string[]): Promise<void> {
  // What checks one file and ends does so before a compiled check would have been written.
  if (words[0] !== "open") config({ jitless: true });
  try {
    process.exitCode = await runTerminal(words, screen());
  } catch (fault) {
    const said = fault instanceof Error ? fault.message : String(fault);
    process.stderr.write(
      `Wirefathom met a fault of its own: ${said}. Nothing was written; please report it with the file and these words.\n`,
    );
    process.exitCode = EXIT.ownFault;
  }
}
