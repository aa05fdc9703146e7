import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { Plugin } from "rolldown";
import { z } from "zod";

/** A package of somebody else that goes out with the program. */
export interface ThirdParty {
  readonly name: string;
  readonly version: string;
  /** By its short name in the list of SPDX, as `MIT`. */
  readonly licence: string;
  /** Where its source is to be had. */
  readonly source: string;
  /** Whose it is and on what terms, whole. */
  readonly text: string;
}

/** Licences under which something may go out with a program of ours; whatever else turns up is looked at by a person first. */
export const LICENCES_TAKEN: readonly string[] = [
  "0BSD",
  "Apache-2.0",
  "BSD-2-Clause",
  "BSD-3-Clause",
  "EPL-2.0",
  "ISC",
  "MIT",
  "OFL-1.1",
];

/** The list that is kept beside the source. */
export const THIRD_PARTY_FILE = "THIRD-PARTY.md";

/** What goes out without a bundler seeing it, some files of it and nothing that it needs to be installed: fonts, Electron, a reader. */
const UNSEEN = ["@ibm/plex-sans-condensed", "electron", "pdfjs-dist"];
/** Where a choice is offered, the one we took; where a package only says it in its text, what it says. */
const CHOSEN: Readonly<Record<string, string>> = { "EPL-2.0 OR GPL-3.0-or-later": "EPL-2.0" };
const SAID_IN_TEXT: Readonly<Record<string, string>> = { "png-js": "MIT" };
/** What a package brings that its own licence does not cover. */
const BESIDES: Readonly<Record<string, string>> = {
  "better-sqlite3": "It contains SQLite, which its authors gave to the public domain.",
  electron: "It contains Chromium and Node.js, whose licences lie beside the program in LICENSES.chromium.html.",
};
const LICENCE_FILE = /^(?:licen[cs]e|copying|notice)/i;

const lockShape = z.object({
  packages: z.record(
    z.string(),
    z.object({ version: z.string().optional(), dependencies: z.record(z.string(), z.string()).optional() }),
  ),
});
type Lock = z.infer<typeof lockShape>["packages"];

const aboutShape = z.object({
  name: z.string(),
  version: z.string(),
  license: z.string().optional(),
  author: z.union([z.string(), z.object({ name: z.string() })]).optional(),
  repository: z.union([z.string(), z.object({ url: z.string() })]).optional(),
  homepage: z.string().optional(),
});

/** Notes into `seen` every package that a bundle takes something from, by its folder as the lock file names it. */
export function packagesSeen(seen: Set<string>): Plugin {
  const note = (path: string): void => {
    const folder = /node_modules\/(?:.*node_modules\/)?(?:@[^/]+\/)?[^/]+/.exec(path.replaceAll("\\", "/"));
    if (folder) seen.add(folder[0]);
  };
  return {
    name: "packages-seen",
    generateBundle(_options, bundle) {
      for (const file of Object.values(bundle)) {
        if (file.type === "asset") file.originalFileNames.forEach(note);
        else for (const [path, { renderedLength }] of Object.entries(file.modules)) if (renderedLength > 0) note(path);
      }
    },
  };
}

/** All that goes out with the program: what bundles were seen to hold, what they leave to be found, and what that needs in turn. */
export function thirdParties(root: string, seen: Iterable<string>): readonly ThirdParty[] {
  const lock = lockOf(root);
  const own = Object.keys(lock[""]?.dependencies ?? {});
  const folders = new Set(seen);
  for (const name of own) addWithNeeds(lock, folders, "", name);
  for (const name of UNSEEN) folders.add(`node_modules/${name}`);
  const all = [...folders].map((folder) => thirdParty(root, folder));
  const unlike = new Map(all.map((one) => [`${one.name}@${one.version}`, one]));
  return [...unlike.values()].toSorted((a, b) => (`${a.name}@${a.version}` < `${b.name}@${b.version}` ? -1 : 1));
}

/** The names, owners and terms of these packages as a comment before a script that travels by itself. */
export function noticeOf(root: string, folders: Iterable<string>): string {
  const texts = [...folders].toSorted().map((folder) => {
    const { name, version, text } = thirdParty(root, folder);
    return `${name} ${version}\n\n${text}`;
  });
  const whole = ["This page holds parts of:", ...texts].join("\n\n");
  // What would end the comment, or the element that holds the script; and ends of lines that a page would read as others, so
  // that the script no longer had the hash that lets it run.
  return `/*!\n${whole.replace(/\r\n?/g, "\n").replace(/\*\/|<(?=[/!])/g, " ")}\n*/\n`;
}

/** The list as a table in Markdown, to be read beside the source. */
export function thirdPartyTable(list: readonly ThirdParty[]): string {
  const rows = list.map(({ name, version, licence, source }) => `| ${name} | ${version} | ${licence} | ${source} |`);
  return `# What of others goes out with Wirefathom

Written by \`npm run licences\` from what the build puts into its bundles. The texts of the licences are in \`out/licences.json\`,
and in the program itself.

| package | version | licence | source |
| --- | --- | --- | --- |
${rows.join("\n")}
`;
}

/** The packages of the lock file by their folders, the project itself under no name. */
export function lockOf(root: string): Lock {
  return lockShape.parse(JSON.parse(readFileSync(join(root, "package-lock.json"), "utf8"))).packages;
}

/** Adds a package, as one in this folder would find it, and all that it needs; electron brings what it needs within itself. */
function addWithNeeds(lock: Lock, folders: Set<string>, from: string, name: string): void {
  const nested = `${from}/node_modules/${name}`.replace(/^\//, "");
  const folder = nested in lock ? nested : `node_modules/${name}`;
  if (folders.has(folder) && from !== "") return;
  folders.add(folder);
  if (name === "electron") return;
  for (const need of Object.keys(lock[folder]?.dependencies ?? {})) addWithNeeds(lock, folders, folder, need);
}

function thirdParty(root: string, folder: string): ThirdParty {
  const about = aboutShape.parse(JSON.parse(readFileSync(join(root, folder, "package.json"), "utf8")));
  const { name, version, license = "", repository = "", homepage = "" } = about;
  const address = typeof repository === "string" ? repository : repository.url;
  return {
    name,
    version,
    licence: SAID_IN_TEXT[name] ?? CHOSEN[license] ?? license,
    source: webAddress(address) ?? homepage,
    text: [...textsOf(root, folder, about), ...(BESIDES[name] ? [BESIDES[name]] : [])].join("\n\n").trim(),
  };
}

/** The texts that lie in a package; for one that only names its author and the MIT licence, the terms as our own file has them. */
function textsOf(
  root: string,
  folder: string,
  { name, author = "", license }: z.infer<typeof aboutShape>,
): readonly string[] {
  const files = licenceFiles(join(root, folder));
  if (files.length > 0) return [...new Set(files.map((file) => readFileSync(file, "utf8").trim()))];
  if (license !== "MIT") return [];
  const person = typeof author === "string" ? author : author.name;
  const terms = readFileSync(join(root, "LICENSE"), "utf8").replace(/^[\s\S]*?Copyright.*\n/, "");
  return [`MIT License\n\nCopyright (c) ${person || `the authors of ${name}`}\n${terms}`];
}

/** The files with licences in a package, those beside parts of it too; packages inside it are looked at by themselves. */
function licenceFiles(folder: string): readonly string[] {
  const entries = readdirSync(folder, { withFileTypes: true }).toSorted((a, b) => (a.name < b.name ? -1 : 1));
  const here = entries.filter(
    (entry) => entry.isFile() && LICENCE_FILE.test(entry.name) && !/\.[cm]?[jt]s$/.test(entry.name),
  );
  const below = entries.filter((entry) => entry.isDirectory() && entry.name !== "node_modules");
  return [
    ...here.map(({ name }) => join(folder, name)),
    ...below.flatMap(({ name }) => licenceFiles(join(folder, name))),
  ];
}

/** A place on the web where a person finds the source, from what a package says; null where it says none. */
function webAddress(repository: string): string | null {
  const path = repository
    .replace(/^git\+/, "")
    .replace(/^(?:git|ssh):\/\/(?:git@)?/, "https://")
    .replace(/\.git$/, "");
  if (/^(?:github:)?[\w.-]+\/[\w.-]+$/.test(path)) return `https://github.com/${path.replace(/^github:/, "")}`;
  return path.startsWith("https://") ? path : null;
}
