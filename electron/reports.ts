import { mkdirSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { homedir, release } from "node:os";
import { join } from "node:path";
import { type Mishap, reportText, saidAndAt } from "../schemas/mishap.ts";

/** A report as it was written. */
export interface Report {
  readonly text: string;
  /** Where it lies; null where it could not be written. */
  readonly file: string | null;
}

/** Keeps reports of faults of the program itself. */
export interface Reports {
  readonly folder: string;
  /** What the program runs on, and the system. */
  readonly runsOn: string;
  /** Notes the name of a call, so that a report can say what was asked last. */
  note(call: string): void;
  /** Writes the report of a fault that a page tells of. */
  keep(mishap: Mishap): Report;
  /** Writes that of a fault on the host's own side. */
  keepOwn(error: unknown, where: "window" | "program"): Report;
}

/** Reports that stay; the oldest go. */
export const MOST_REPORTS = 20;
const MOST_CALLS = 20;
const ENDING = ".report.txt";

/**
 * Reports in the folder `reports` beside the library. They are written at once, since the process may end right after, and
 * nothing about them throws: a fault must not bring about another one.
 */
export function reportsIn(library: string, version: string, now: () => Date): Reports {
  const folder = join(library, "reports");
  let calls: readonly string[] = [];
  let made = 0;
  const keep = (mishap: Mishap): Report => {
    const when = now();
    // A path on this computer names the person whose home it lies in.
    const text = reportText(mishap, { version, runsOn: runsOn(), when }).replaceAll(homedir(), "~");
    made += 1;
    const name = `${when.toISOString().replace(/[:.]/g, "-")}-${process.pid}-${made}${ENDING}`;
    return { text, file: written(folder, name, text) };
  };
  return {
    folder,
    runsOn: runsOn(),
    note: (call) => {
      calls = [call, ...calls].slice(0, MOST_CALLS);
    },
    keep,
    keepOwn: (error, where) => keep({ where, ...saidAndAt(error), did: [...calls], counts: {}, shown: "" }),
  };
}

function written(folder: string, name: string, text: string): string | null {
  const file = join(folder, name);
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    writeFileSync(file, text, { mode: 0o600, flag: "wx" });
    // Their names begin with the moment, so that the oldest come first.
    const reports = readdirSync(folder).filter((each) => each.endsWith(ENDING));
    for (const old of reports.toSorted().slice(0, -MOST_REPORTS)) rmSync(join(folder, old), { force: true });
    return file;
  } catch {
    return null;
  }
}

/** "Electron 45.4.1, Chromium 150.0, Node 24.21.0; linux x64 6.1". */
function runsOn(): string {
  const { electron, chrome, node } = process.versions;
  const engines = [electron && `Electron ${electron}`, chrome && `Chromium ${chrome}`, `Node ${node}`].filter(Boolean);
  return `${engines.join(", ")}; ${process.platform} ${process.arch} ${release()}`;
}
