import { z } from "zod";
import { REPORT_WORDS as WORDS } from "../core/base/words/report.ts";

/** A fault of the program itself, as a page or a host tells of it: no circuit, only where it was and what was done before. */
export const mishapShape = z.strictObject({
  where: z.enum(["page", "worker", "window", "program"]),
  said: z.string().max(2_000),
  /** Places in the program, one a line. */
  at: z.string().max(20_000),
  /** Names of what was done before, newest first. */
  did: z.array(z.string().max(80)).max(40),
  /** How many of what were open. */
  counts: z.record(z.string().max(40), z.int().min(0).max(1e9)),
  /** What shows the page, as it names itself; empty for a host. */
  shown: z.string().max(400),
});

/** A fault of the program itself. */
export type Mishap = z.infer<typeof mishapShape>;

/** What a report says beside the fault. */
export interface ReportAbout {
  readonly version: string;
  /** What the program runs on, and the system; empty where that is not known. */
  readonly runsOn: string;
  readonly when: Date;
}

/** The report of a fault, as text that a person can read before anybody else does. */
export function reportText({ where, said, at, did, counts, shown }: Mishap, about: ReportAbout): string {
  const { rows } = WORDS;
  const open = Object.entries(counts).map(([what, count]) => `${what} ${count}`);
  const lines: readonly (readonly [name: string, value: string])[] = [
    [rows.when, about.when.toISOString()],
    [rows.where, WORDS.where[where]],
    [rows.runsOn, about.runsOn],
    [rows.shown, shown],
    [rows.said, said],
    [rows.counts, open.join(", ") || WORDS.nothing],
    [rows.did, did.join(", ") || WORDS.nothing],
  ];
  const told = lines.filter(([, value]) => value !== "").map(([name, value]) => `${name}: ${value}`);
  return [WORDS.head(about.version), "", ...told, "", `${rows.at}:`, at || WORDS.nowhere, "", WORDS.foot, ""].join(
    "\n",
  );
}

/** An error as the parts of a report: what it said, and the places that its stack names. What was thrown may be anything. */
export function saidAndAt(error: unknown): Pick<Mishap, "said" | "at"> {
  if (!(error instanceof Error)) return { said: String(error).slice(0, 2_000), at: "" };
  const places = (error.stack ?? "").split("\n").filter((line) => /^\s+at /.test(line));
  return { said: `${error.name}: ${error.message}`.slice(0, 2_000), at: places.join("\n").slice(0, 20_000) };
}
