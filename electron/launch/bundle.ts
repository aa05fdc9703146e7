import { readdirSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs";
import { join, relative } from "node:path";
import { withoutJsonSchema } from "./withoutJsonSchema.ts";

/** Earlier bundles that stay: a program that still runs from one loads some of it late. */
const KEPT = 2;
/** What this bundle does not hold: machine code, what only builds, and the large one that only a PDF needs. */
const OUTSIDE = ["better-sqlite3", "electron", "pdfkit", "rolldown", "vite"];

/** What the client of PostgreSQL could use in place of its own code, and here never does. */
export const WITHOUT = { alias: { "pg-native": false } } as const;

/**
 * Bundles the command line, the start of the window with it, into a folder of its own under `out/terminal`, and then makes it the
 * newest: `newest.json` names it and each file that it was made of, with its size and time. Several may do so at once.
 */
export async function buildTerminal(root: string): Promise<void> {
  const { build } = await import("rolldown");
  const bundles = join(root, "out", "terminal");
  const folder = `${Date.now()}-${process.pid}`;
  const { output } = await build({
    input: join(root, "electron", "terminal", "process.ts"),
    platform: "node",
    external: OUTSIDE,
    resolve: WITHOUT,
    plugins: [withoutJsonSchema()],
    output: {
      dir: join(bundles, folder),
      format: "cjs",
      minify: true,
      entryFileNames: "[name].cjs",
      chunkFileNames: "[name]-[hash].cjs",
    },
    logLevel: "warn",
  });
  const made = output
    .flatMap((chunk) => (chunk.type === "chunk" ? chunk.moduleIds : []))
    .filter((path) => path.startsWith(root) && !path.includes("node_modules"))
    .concat(join(root, "package-lock.json"))
    .map((path) => {
      const { size, mtimeMs } = statSync(path);
      return [relative(root, path), size, mtimeMs] as const;
    });
  const beside = join(bundles, folder, "newest.json");
  writeFileSync(beside, JSON.stringify({ folder, made }));
  renameSync(beside, join(bundles, "newest.json"));
  letGo(bundles);
}

/** Lets go of all but the newest bundles. */
function letGo(bundles: string): void {
  const folders = readdirSync(bundles).filter((name) => /^\d+-\d+$/.test(name));
  for (const name of folders
    .toSorted()
    .reverse()
    .slice(1 + KEPT)) {
    rmSync(join(bundles, name), { recursive: true, force: true });
  }
}
