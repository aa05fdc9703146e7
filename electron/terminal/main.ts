import { EXIT } from "./console.ts";
import { runTerminal } from "./program.ts";
import { screen } from "./screen.ts";

try {
  process.exitCode = await runTerminal(process.argv.slice(2), screen());
} catch (fault) {
  const said = fault instanceof Error ? fault.message : String(fault);
  process.stderr.write(
    `Wirefathom met a fault of its own: ${said}. Nothing was written; please report it with the file and these words.\n`,
  );
  process.exitCode = EXIT.ownFault;
}
