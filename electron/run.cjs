"use strict";

// Plain JavaScript, the one file of the terminal that Node can run without reading types out of it first: with the rest bundled and
// compiled already, a command line is answered in a quarter of the time.
const { existsSync, readFileSync, statSync } = require("node:fs");
const { enableCompileCache } = require("node:module");
const { join } = require("node:path");

const ROOT = join(__dirname, "..");
const BUNDLES = join(ROOT, "out", "terminal");

/** The newest bundle, or null where there is none or one of the files that it was made of is another by now. */
function freshBundle() {
  try {
    const { folder, made } = JSON.parse(readFileSync(join(BUNDLES, "newest.json"), "utf8"));
    const isFresh = made.every(([path, bytes, ms]) => {
      // Joined as they are: to tidy hundreds of paths would take as long as to look at the files.
      const about = statSync(`${ROOT}/${path}`, { throwIfNoEntry: false });
      return about !== undefined && about.size === bytes && about.mtimeMs === ms;
    });
    const bundle = join(BUNDLES, folder, "process.cjs");
    return isFresh && existsSync(bundle) ? bundle : null;
  } catch {
    return null;
  }
}

/** The program: bundled, or bundled anew where the sources are newer, or else as its sources are. */
async function program() {
  const bundle = freshBundle() ?? (await bundledAnew());
  if (bundle === null) return import("./terminal/process.ts");
  enableCompileCache(join(BUNDLES, "compiled"));
  return require(bundle);
}

/** What cannot be bundled says why by itself when its sources are run. */
async function bundledAnew() {
  try {
    const { buildTerminal } = await import("./launch/bundle.ts");
    await buildTerminal(ROOT);
    return freshBundle();
  } catch {
    return null;
  }
}

program().then(({ runProcess }) => runProcess(process.argv.slice(2)));
