import { fileURLToPath } from "node:url";
import { build } from "./build.ts";

// Run by `npm run build`, and by a start whose sources changed.
try {
  await build(fileURLToPath(new URL("..", import.meta.url)));
} catch (error) {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = 1;
}
