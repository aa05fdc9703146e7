import { copyFileSync, existsSync, mkdirSync, rmSync } from "node:fs";
import { join } from "node:path";
import Database from "better-sqlite3";
import { beforeAll, describe, expect, it } from "vitest";
import type { Job } from "../../core/diagnose/job.ts";
import type { Desk } from "../../core/edit/history.ts";
import { undo } from "../../core/edit/history.ts";
import { historyOf } from "../../core/edit/historyText.ts";
import { jobOf } from "../../core/edit/jobOf.ts";
import { readBench } from "../../renderer/state/benchText.ts";
import { formatCircuit } from "../../schemas/circuit.ts";
import { trials } from "../long.ts";
import { type Lots, lotsOf } from "../lots.ts";
import { bundledHost, type KilledHost, startKilled } from "./killed.ts";
import { ownFolder, value } from "./library.ts";
import { sample } from "./sample.ts";
import { bareDesk, nextDesk, textOfBench } from "./scripted.ts";

const SEED = 7_411;
const RUNS = trials(20, 200);
/** Libraries that are worked on at once: a start waits more than it computes. */
const LANES = 2;
/** Edits that are kept before the kill, by lot, and milliseconds into those after them. */
const MOST_EDITS = 5;
const MOST_MS = 30;
/** One start in so many is killed while it opens the library and makes its copies, by lot within so many milliseconds. */
const EARLY = 6;
const EARLY_MS = 600;

/** What a person knows: what the host said it had kept, and what was under way when it was killed. */
interface Known {
  readonly kept: Desk;
  readonly underWay: Desk | null;
  readonly id: string;
  readonly version: number;
  readonly benchVersion: number;
  readonly edits: number;
}

let program = "";
beforeAll(async () => {
  program = await bundledHost();
}, 60_000);

describe("a host killed in the middle of a person's edits", () => {
  it("has every edit that it said it had kept, whole, with its undo history", async () => {
    const room = ownFolder();
    const lanes = Array.from({ length: LANES }, (_, lane) => lane);
    const edits = await Promise.all(lanes.map((lane) => killedOver(join(room, `library-${lane}`), SEED + lane)));
    expect(Math.min(...edits)).toBeGreaterThan(RUNS / LANES);
  });
});

/** Edits a library through many hosts, each killed; gives how many edits were kept. */
async function killedOver(folder: string, seed: number): Promise<number> {
  const lots = lotsOf(seed);
  let known = await begun(folder);
  for (let run = 0; run < RUNS / LANES; run++) {
    known = await editedAndKilled(folder, known, lots);
    expect(integrityOf(folder, `${folder}-looked-at`)).toBe("ok");
  }
  const last = (await startKilled(program, folder, null))!;
  checked(known, await openedBy(last, known));
  await last.killAfter(0);
  return known.edits;
}

async function begun(folder: string): Promise<Known> {
  const host = (await startKilled(program, folder, null))!;
  const kept = bareDesk(sample());
  const made = value(
    await host.ask("circuits.create", { circuit: kept.bench.circuit, bench: textOfBench(kept), jobs: [] }),
  );
  await host.killAfter(0);
  const { id, version, benchVersion } = made;
  return { kept, underWay: null, id, version, benchVersion, edits: 0 };
}

/** One start: what was kept is there; then edits, each after the answer to the one before, until the kill. */
async function editedAndKilled(folder: string, before: Known, lots: Lots): Promise<Known> {
  const isEarly = lots.upTo(EARLY) === 0;
  const host = await startKilled(program, folder, isEarly ? lots.upTo(EARLY_MS) : null);
  if (!host) return before;
  let known: Known;
  try {
    known = checked(before, await openedBy(host, before));
  } catch (error) {
    if (isEarly && isHangUp(error)) return before;
    throw error;
  }
  const enough = known.edits + lots.upTo(MOST_EDITS);
  let gone: Promise<void> | null = null;
  try {
    for (;;) {
      if (known.edits >= enough) gone ??= host.killAfter(isEarly ? 0 : lots.upTo(MOST_MS));
      const underWay = nextDesk(known.kept, lots, known.edits);
      known = { ...known, underWay };
      const stands = await saved(host, known, underWay);
      known = { ...known, ...stands, kept: underWay, underWay: null, edits: known.edits + 1 };
    }
  } catch (error) {
    if (!isHangUp(error)) throw error;
  }
  await gone;
  return known;
}

/** As a page saves: the circuit with its bench where it changed, the bench alone where not. */
async function saved(host: KilledHost, { kept, id, version, benchVersion }: Known, desk: Desk) {
  const job = jobOf(desk.bench);
  const stands = { id, version, bench: textOfBench(desk), benchVersion, jobs: job ? [job as Job] : [] };
  const { circuit } = desk.bench;
  const answered =
    circuit === kept.bench.circuit
      ? await host.ask("benches.save", stands)
      : await host.ask("circuits.save", { ...stands, circuit, name: "edit" });
  const { version: now, benchVersion: nowBench } = value(answered);
  return { version: now, benchVersion: nowBench };
}

async function openedBy(host: KilledHost, { id }: Known) {
  return value(await host.ask("circuits.open", { id }));
}

/** What was opened is what was kept, or that and the edit under way, whole; and it is taken back as it was done. */
function checked(known: Known, opened: Awaited<ReturnType<typeof openedBy>>): Known {
  const { circuit, bench, version, benchVersion } = opened;
  const isOf = (desk: Desk): boolean =>
    formatCircuit(desk.bench.circuit) === formatCircuit(circuit) && textOfBench(desk) === bench;
  const stands = [known.kept, ...(known.underWay ? [known.underWay] : [])].find(isOf);
  expect(stands, `version ${version} is neither what was kept nor what was under way`).toBeDefined();
  if (!stands) return known;
  const { desk } = readBench(circuit, bench, { id: known.id, version, benchVersion });
  expect(desk.history.done.length).toBe(stands.history.done.length);
  expect(historyOf(JSON.parse(bench!).history).ok).toBe(true);
  if (stands.history.done.length > 0)
    expect(formatCircuit(value(undo(desk)).bench.circuit)).toBe(formatCircuit(value(undo(stands)).bench.circuit));
  return { ...known, kept: stands, underWay: null, version, benchVersion };
}

/** What SQLite finds in a copy of the library as the killed host left it, the log of its last edits with it. */
function integrityOf(folder: string, beside: string): unknown {
  mkdirSync(beside, { recursive: true });
  for (const ending of ["", "-wal", "-shm"]) rmSync(join(beside, `looked.db${ending}`), { force: true });
  for (const ending of ["", "-wal"]) {
    const file = join(folder, `wirefathom.db${ending}`);
    if (existsSync(file)) copyFileSync(file, join(beside, `looked.db${ending}`));
  }
  const connection = new Database(join(beside, "looked.db"));
  try {
    return connection.pragma("integrity_check", { simple: true });
  } finally {
    connection.close();
  }
}

function isHangUp(error: unknown): boolean {
  return error instanceof Error && "code" in error && /^(ECONNRESET|ECONNREFUSED|EPIPE)$/.test(String(error.code));
}
