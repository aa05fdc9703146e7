import { build } from "./build.ts";
import { ROOT } from "./root.ts";

// Run by `npm run build`, and by a start whose sources changed.
try {
  await build(ROOT);
} catch (error) {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = 1;
}
