import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { z } from "zod";
import { supportEnds } from "./support.ts";

/** What the registry says of a package: how bad, which versions, and by which others it comes in. */
const report = z.object({
  vulnerabilities: z.record(
    z.string(),
    z.object({
      severity: z.string(),
      range: z.string(),
      via: z.array(z.union([z.string(), z.object({ title: z.string(), url: z.string() })])),
    }),
  ),
});

/** Why a finding of the registry does not touch this program; by package. Each is looked at anew when the package changes. */
export const EXPLAINED: Readonly<Record<string, string>> = {};

/** What came of asking: lines to tell, and whether something is left that nobody explained. */
export interface Audited {
  readonly lines: readonly string[];
  readonly isClean: boolean;
}

/** Judges what `npm audit --json` said; a registry that does not answer is no finding, and is told as that. */
export function audited(said: string, explained: Readonly<Record<string, string>>): Audited {
  const read = report.safeParse(jsonIn(said));
  if (!read.success)
    return { lines: ["The registry was not there or does not offer an audit: nothing is known."], isClean: true };
  const found = Object.entries(read.data.vulnerabilities);
  const lines = found.map(([name, { severity, range, via }]) => {
    const titles = via.map((each) => (typeof each === "string" ? `by ${each}` : `${each.title} ${each.url}`));
    return `${name} ${range}, ${severity}: ${titles.join("; ")}${explained[name] ? ` - explained: ${explained[name]}` : ""}`;
  });
  const isClean = found.every(([name]) => explained[name] !== undefined);
  return { lines: found.length === 0 ? ["The registry knows of nothing against what is installed."] : lines, isClean };
}

/** What is to be said of Electron's support on a day, and whether it has ended. */
export function electronAudited(version: string, today: Date): Audited {
  const ends = supportEnds(Number(version.split(".")[0]));
  const day = ends.toISOString().slice(0, 10);
  return today < ends
    ? { lines: [`Electron ${version} is mended until about ${day}.`], isClean: true }
    : { lines: [`Electron ${version} is mended no more since about ${day}: take a newer one.`], isClean: false };
}

/** npm prints words of its own around the JSON where it fails. */
function jsonIn(said: string): unknown {
  try {
    return JSON.parse(said.slice(said.indexOf("{")));
  } catch {
    return null;
  }
}

// Run by `npm run audit`.
if (import.meta.main) {
  const root = fileURLToPath(new URL("..", import.meta.url));
  const { devDependencies } = JSON.parse(readFileSync(`${root}package.json`, "utf8"));
  const isWindows = process.platform === "win32";
  const asked = spawnSync("npm", ["audit", "--json"], { cwd: root, encoding: "utf8", shell: isWindows });
  const all = [audited(asked.stdout ?? "", EXPLAINED), electronAudited(devDependencies.electron, new Date())];
  for (const { lines } of all) console.log(lines.join("\n"));
  process.exitCode = all.every(({ isClean }) => isClean) ? 0 : 1;
}
