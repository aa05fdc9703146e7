import { createHash } from "node:crypto";
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { basename, join } from "node:path";
import { fontFaces, TYPE_STYLE } from "../core/drawing/svg.ts";
import { buildTerminal, WITHOUT } from "./launch/bundle.ts";
import { withoutJsonSchema } from "./launch/withoutJsonSchema.ts";
import { noticeOf, packagesSeen, type ThirdParty, thirdParties } from "./licences.ts";
import { embeddedFonts, fontPaths, OWN_FONTS, smallFaces } from "./print/fonts.ts";
import { EXERCISE_SCRIPT, EXERCISE_STYLE, SCRIPT, STYLE, TAKE_HOME } from "./print/takeHome.ts";

/** Folders and files that the built page and window are made of. */
const SOURCES = ["core", "schemas", "renderer", "electron", "package-lock.json"];
/** Where the list of what others made is written: for packaging and the host, and beside the page. */
const LICENCES = [join("out", "licences.json"), join("out", "renderer", "licences.json")] as const;
/** What builds is no part of what is built; a packed program asks for none of it. */
const BUILDERS = ["vite", "rolldown"];
const BUNDLES = [
  ["main", "main.ts"],
  ["preload", "preload.ts"],
  ["printer", "print/printer.ts"],
  ["terminal", "terminal/process.ts"],
] as const;

/** True where what is built was built from the sources as they are; a packed program has none, and is built. */
export function isBuilt(root: string): boolean {
  if (!existsSync(join(root, "electron"))) return true;
  const mark = markFile(root);
  return existsSync(mark) && readFileSync(mark, "utf8") === signatureOf(root);
}

/** Builds everything that is shown and run, and marks it with the sources it was built from. */
export async function build(root: string): Promise<void> {
  const signature = signatureOf(root);
  rmSync(markFile(root), { force: true });
  const seen = new Set<string>();
  await buildWindow(root, undefined, seen);
  await buildPage(root, seen);
  await buildTakeHome(root, undefined, seen);
  await buildTerminal(root);
  const list = JSON.stringify(thirdParties(root, seen), null, 1);
  for (const file of LICENCES) writeFileSync(join(root, file), list);
  writeFileSync(markFile(root), signature);
}

/** What of others goes out with the program, as the last build wrote it. */
export function builtThirdParties(root: string): readonly ThirdParty[] {
  return JSON.parse(readFileSync(join(root, LICENCES[0]), "utf8"));
}

/** Builds the page that every host shows, into `out/renderer`. Packages it holds go into `seen`, here and below. */
export async function buildPage(root: string, seen: Set<string> = new Set()): Promise<void> {
  const vite = await import("vite");
  await vite.build({
    configFile: join(root, "renderer", "vite.config.ts"),
    logLevel: "warn",
    plugins: [packagesSeen(seen), withoutJsonSchema()],
    worker: { plugins: () => [packagesSeen(seen), withoutJsonSchema()] },
  });
}

/**
 * Builds the window's own part into `out/electron` or another folder, as CommonJS: one file for each of main, preload, printer and
 * terminal, since a sandboxed preload may load no second one. Nothing is left outside but Electron and SQLite; fonts are laid beside them.
 */
export async function buildWindow(
  root: string,
  out = join(root, "out", "electron"),
  seen: Set<string> = new Set(),
): Promise<void> {
  const { build: bundle } = await import("rolldown");
  for (const [name, input] of BUNDLES) {
    await bundle({
      input: join(root, "electron", input),
      platform: "node",
      external: ["electron", "better-sqlite3", ...BUILDERS],
      resolve: WITHOUT,
      plugins: [packagesSeen(seen), withoutJsonSchema()],
      output: { file: join(out, `${name}.cjs`), format: "cjs", codeSplitting: false },
      logLevel: "warn",
    });
  }
  mkdirSync(join(out, OWN_FONTS), { recursive: true });
  for (const path of fontPaths()) cpSync(path, join(out, OWN_FONTS, basename(path)));
}

/**
 * Builds what take-home pages are made of into `out/takehome` or another folder: for a circuit and for an exercise one script and
 * one style, with the sheet's font in it.
 */
export async function buildTakeHome(
  root: string,
  out = join(root, TAKE_HOME),
  seen: Set<string> = new Set(),
): Promise<void> {
  const { build: bundle } = await import("rolldown");
  const programs = { [SCRIPT]: "main.ts", [EXERCISE_SCRIPT]: join("exercise", "main.ts") };
  for (const [script, input] of Object.entries(programs)) {
    const held = new Set(["node_modules/@ibm/plex-sans-condensed"]);
    await bundle({
      input: join(root, "renderer", "takehome", input),
      platform: "browser",
      plugins: [packagesSeen(held), withoutJsonSchema()],
      output: { file: join(out, script), format: "iife", minify: true, codeSplitting: false },
      logLevel: "warn",
    });
    const path = join(out, script);
    writeFileSync(path, noticeOf(root, held) + readFileSync(path, "utf8"));
    for (const folder of held) seen.add(folder);
  }
  const read = (file: string): string => readFileSync(join(root, "renderer", file), "utf8");
  const styles = ["style/tokens.css", "takehome/page.css"].map(read);
  // The boldest face stands in title blocks alone, where the next one does as well: the page is a sixth smaller without it.
  const { 700: _, ...faces } = await embeddedFonts();
  writeFileSync(join(out, STYLE), [fontFaces(faces), TYPE_STYLE, ...styles].join("\n"));
  // The program of an exercise has the planner in it, and leaves little room.
  const own = [await smallFaces(), TYPE_STYLE, ...styles, read("takehome/exercise/exercise.css")];
  writeFileSync(join(out, EXERCISE_STYLE), own.join("\n"));
}

function markFile(root: string): string {
  return join(root, "out", "built.txt");
}

/** What tells the sources from other ones: every file's path, size and time. */
function signatureOf(root: string): string {
  const hash = createHash("sha256");
  const walk = (path: string): void => {
    const about = statSync(join(root, path), { throwIfNoEntry: false });
    if (!about) return;
    if (about.isDirectory()) for (const name of readdirSync(join(root, path)).toSorted()) walk(join(path, name));
    else hash.update(`${path} ${about.size} ${about.mtimeMs}\n`);
  };
  for (const source of SOURCES) walk(source);
  return hash.digest("hex");
}
