import { randomUUID } from "node:crypto";
import { type Outcome, ok, refuse } from "../../../core/base/outcome.ts";
import type { Circuit } from "../../../core/circuit/circuit.ts";
import { formatCircuit } from "../../../schemas/circuit.ts";
import { BIN_DAYS } from "../../../schemas/limits.ts";
import { factsOf } from "../facts.ts";
import type { Coming, Save, Standing, Where } from "../library.ts";
import { hashOfText } from "../packed.ts";
import { picturesIn } from "../pictureFile.ts";
import { emptyAttemptsBin } from "./attempts.ts";
import { benchVersionOf, keepBench } from "./benches.ts";
import type { Connection } from "./connect.ts";
import { emptyJobsBin, keepJobs, letGoOfJobs } from "./jobs.ts";
import type { Store } from "./open.ts";
import { forgetWords, indexCircuit } from "./search.ts";
import { addVersion } from "./versions.ts";

const DAY_MS = 86_400_000;

/** A circuit's place in the library. */
export interface Place {
  /** Its number in the tables. */
  readonly key: number;
  readonly id: string;
  readonly version: number;
  readonly hash: string;
}

/** The place of a circuit. Refuses `circuit-unknown`; one in the bin is unknown unless asked for. */
export function placeOf({ connection }: Store, id: string, where: Where = "library"): Outcome<Place> {
  const isThere = where === "bin" ? "removed IS NOT NULL" : "removed IS NULL";
  const place = connection.prepare(`SELECT key, id, version, hash FROM circuits WHERE id = ? AND ${isThere}`).get(id);
  return place ? ok(place as Place) : refuse("circuit-unknown");
}

/** Takes a circuit into the library as a new one, whole or not at all. */
export function addCircuit(
  store: Store,
  circuit: Circuit,
  coming: Coming & { /** Hash of the text of the file it was brought in from. */ readonly origin?: string },
  now: Date,
): Place {
  const { connection } = store;
  const text = formatCircuit(circuit);
  const id = randomUUID();
  return connection.transaction((): Place => {
    const hash = hashOfText(text);
    const { lastInsertRowid } = connection
      .prepare(
        `INSERT INTO circuits (id, title, vehicle, pages, parts, wires, problems, loose_ends, version, hash, origin, made, edited)
         VALUES (:id, :title, :vehicle, :pages, :parts, :wires, :problems, :looseEnds, 1, :hash, :origin, :now, :now)`,
      )
      .run({ ...factsOf(circuit), id, hash, origin: coming.origin ?? null, now: now.toISOString() });
    const key = Number(lastInsertRowid);
    addVersion(connection, { circuit: key, version: 1, name: coming.name, text, pictures: picturesIn(circuit) }, now);
    if (coming.bench) keepBench(store, key, { bench: coming.bench, benchVersion: 0 }, now);
    indexCircuit(connection, key, circuit);
    keepJobs(store, key, () => ok(circuit), coming.jobs ?? [], now);
    return { key, id, version: 1, hash };
  })();
}

/**
 * Keeps an edit in one transaction and gives the versions that stand now; a circuit that did not change keeps its own.
 * Refuses `circuit-changed-elsewhere` where the edit was made on a version that is not the newest, and as `keepBench`.
 */
export function saveCircuit(store: Store, id: string, save: Save, now: Date): Outcome<Standing> {
  const { connection } = store;
  const text = formatCircuit(save.circuit);
  const hash = hashOfText(text);
  return connection.transaction((): Outcome<Standing> => {
    const place = placeOf(store, id);
    if (!place.ok) return place;
    const { key, version } = place.value;
    if (version !== save.version) return refuse("circuit-changed-elsewhere");
    const bench = save.bench ? keepBench(store, key, save.bench, now) : ok(benchVersionOf(store, key));
    if (!bench.ok) return bench;
    const benchVersion = bench.value;
    keepJobs(store, key, () => ok(save.circuit), save.jobs ?? [], now);
    if (hash === place.value.hash) return ok({ version, benchVersion });
    const pictures = picturesIn(save.circuit);
    addVersion(connection, { circuit: key, version: version + 1, name: save.name, text, pictures }, now);
    connection
      .prepare(
        `UPDATE circuits SET title = :title, vehicle = :vehicle, pages = :pages, parts = :parts, wires = :wires,
           problems = :problems, loose_ends = :looseEnds, version = :version, hash = :hash, edited = :now WHERE key = :key`,
      )
      .run({ ...factsOf(save.circuit), key, version: version + 1, hash, now: now.toISOString() });
    indexCircuit(connection, key, save.circuit);
    return ok({ version: version + 1, benchVersion });
  })();
}

/** A circuit outside the bin that was brought in from a file with this hash, the one edited last; or null. */
export function circuitFrom({ connection }: Store, origin: string): Place | null {
  const place = connection
    .prepare(
      "SELECT key, id, version, hash FROM circuits WHERE origin = ? AND removed IS NULL ORDER BY edited DESC LIMIT 1",
    )
    .get(origin);
  return (place as Place | undefined) ?? null;
}

/** True where a circuit outside the bin has this title. */
export function isTitleTaken({ connection }: Store, title: string): boolean {
  return connection.prepare("SELECT 1 FROM circuits WHERE title = ? AND removed IS NULL").get(title) !== undefined;
}

/** Moves a circuit to the bin, or with null for the moment back into the library. */
export function markRemoved({ connection }: Store, key: number, removed: Date | null): void {
  connection.prepare("UPDATE circuits SET removed = ? WHERE key = ?").run(removed?.toISOString() ?? null, key);
}

/** Lets go for good of what has been in the bin for more than 30 days; gives how many. */
export function emptyBin({ connection }: Store, now: Date): number {
  return connection.transaction((): number => {
    const before = new Date(now.getTime() - BIN_DAYS * DAY_MS).toISOString();
    const keys = connection.prepare("SELECT key FROM circuits WHERE removed < ?").pluck().all(before) as number[];
    for (const key of keys) letGo(connection, key);
    emptyJobsBin(connection, before);
    emptyAttemptsBin(connection, before);
    return keys.length;
  })();
}

/** Lets go of a circuit for good, with its versions, its bench and what it is found by. */
export function eraseCircuit({ connection }: Store, key: number): void {
  connection.transaction(() => letGo(connection, key))();
}

function letGo(connection: Connection, key: number): void {
  forgetWords(connection, key);
  letGoOfJobs(connection, key);
  connection.prepare("DELETE FROM circuits WHERE key = ?").run(key);
}
