import { existsSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

/** Folder of the program, where its `package.json` lies: above the sources, and above what is bundled of them. */
export const ROOT = rootAbove(dirname(fileURLToPath(import.meta.url)));

function rootAbove(folder: string): string {
  return existsSync(join(folder, "package.json")) ? folder : rootAbove(dirname(folder));
}
