import { execFile } from "node:child_process";
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";

const run = promisify(execFile);
const PROCESSES = 2;
/** Told where the reference is not there. */
export const INSTALL =
  "The reference solver ngspice is not installed: apt-get install ngspice (https://ngspice.sourceforge.io).";

/**
 * How tightly the reference is to solve, in the order in which to try. It stops at its tolerance, and that may be short
 * of ours; but the tighter it is, the more often it fails, having no guards for its sources. gmin lies across junctions.
 */
export const TOLERANCES = [
  "reltol=1e-5 vntol=1e-9 abstol=1e-9 gmin=1e-13",
  "reltol=1e-7 vntol=1e-9 abstol=1e-14 gmin=1e-13",
  "reltol=1e-7 vntol=1e-9 abstol=1e-12 gmin=1e-13 gminsteps=30",
  "reltol=1e-6 vntol=1e-9 abstol=1e-11 gmin=1e-12",
] as const;

/** Volts by node name; null where the reference found no operating point. */
export type ReferenceVolts = ReadonlyMap<string, number> | null;

/** Operating points of many decks, in their order, by two processes side by side. Throws one line where ngspice is missing. */
export async function solveDecks(decks: readonly string[], tolerance: string): Promise<readonly ReferenceVolts[]> {
  const room = await mkdtemp(join(tmpdir(), "wirefathom-reference-"));
  try {
    const solved: ReferenceVolts[] = Array(decks.length).fill(null);
    const share = async (first: number): Promise<void> => {
      const mine = [...decks.keys()].filter((index) => index % PROCESSES === first);
      await Promise.all(
        mine.map((index) =>
          writeFile(join(room, `${index}.cir`), `${decks[index]!}.options ${tolerance} itl1=500 itl2=500\n.end\n`),
        ),
      );
      await solveMine(room, `all${first}.cir`, mine);
      for (const index of mine) solved[index] = await readVolts(join(room, `${index}.raw`));
    };
    await Promise.all(Array.from({ length: PROCESSES }, (_, first) => share(first)));
    return solved;
  } finally {
    await rm(room, { recursive: true, force: true });
  }
}

/** One process that takes deck after deck. */
async function solveMine(room: string, script: string, mine: readonly number[]): Promise<void> {
  const each = mine.flatMap((index) => [
    `source ${index}.cir`,
    "op",
    `write ${index}.raw all`,
    "destroy all",
    "remcirc",
  ]);
  await writeFile(join(room, script), ["* all decks", ".control", ...each, "quit", ".endc", ".end", ""].join("\n"));
  try {
    await run("ngspice", ["-b", script], { cwd: room, maxBuffer: 2 ** 28 });
  } catch (error) {
    if ((error as { code?: unknown }).code === "ENOENT") throw new Error(INSTALL);
    // It may end with a status of its own; what it solved has been written, and what is missing is told.
  }
}

/** Reads a raw file: names in its head, then doubles. Null where it holds no operating point. */
async function readVolts(file: string): Promise<ReferenceVolts> {
  let raw: Buffer;
  try {
    raw = await readFile(file);
  } catch {
    return null;
  }
  const mark = "Binary:\n";
  const end = raw.indexOf(mark);
  const head = raw.subarray(0, end).toString("latin1");
  if (end < 0 || !/^Plotname: Operating Point$/m.test(head)) return null;
  const names = [...head.matchAll(/^\t\d+\t(\S+)\t\S+/gm)].map((match) => match[1]!);
  const volts = new Map<string, number>();
  names.forEach((name, index) => {
    const node = /^v\((\w+)\)$/.exec(name)?.[1];
    if (node) volts.set(node, raw.readDoubleLE(end + mark.length + 8 * index));
  });
  return volts;
}
