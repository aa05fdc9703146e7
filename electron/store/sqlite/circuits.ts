import { randomUUID } from "node:crypto";
import { type Outcome, ok, refuse } from "../../../core/base/outcome.ts";
import type { Circuit } from "../../../core/circuit/circuit.ts";
import type { BesideRow } from "../../../schemas/calls.ts";
import { formatCircuit } from "../../../schemas/circuit.ts";
import { BIN_DAYS } from "../../../schemas/limits.ts";
import { factsOf } from "../facts.ts";
import type { Coming, Where } from "../library.ts";
import { hashOfText } from "../packed.ts";
import { picturesIn } from "../pictureFile.ts";
import { emptyAttemptsBin } from "./attempts.ts";
import { keepBench } from "./benches.ts";
import type { Connection } from "./connect.ts";
import { emptyJobsBin, keepJobs, letGoOfJobs } from "./jobs.ts";
import type { Store } from "./open.ts";
import { forgetWords, indexCircuit } from "./search.ts";
import { personOf } from "./settings.ts";
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

/** The place of a circuit, in the bin or not. Refuses `circuit-unknown`. */
export function placeAnywhere({ connection }: Store, id: string): Outcome<Place & { readonly isRemoved: boolean }> {
  const found = connection.prepare("SELECT key, id, version, hash, removed FROM circuits WHERE id = ?").get(id);
  if (!found) return refuse("circuit-unknown");
  const { removed, ...place } = found as Place & { readonly removed: string | null };
  return ok({ ...place, isRemoved: removed !== null });
}

/** The place of a circuit. Refuses `circuit-unknown`; one in the bin is unknown unless asked for. */
export function placeOf({ connection }: Store, id: string, where: Where = "library"): Outcome<Place> {
  const isThere = where === "bin" ? "removed IS NOT NULL" : "removed IS NULL";
  const place = connection.prepare(`SELECT key, id, version, hash FROM circuits WHERE id = ? AND ${isThere}`).get(id);
  return place ? ok(place as Place) : refuse("circuit-unknown");
}

/** How a circuit came, and from where. */
export interface ComingFrom extends Coming {
  /** Hash of the text of the file it was brought in from. */
  readonly origin?: string;
  /** Key of the circuit that it is kept beside. */
  readonly beside?: number;
}

/** Takes a circuit into the library as a new one, whole or not at all. */
export function addCircuit(store: Store, circuit: Circuit, coming: ComingFrom, now: Date): Place {
  const { connection } = store;
  const { name, bench, jobs = [], origin = null, beside = null, page } = coming;
  const text = formatCircuit(circuit);
  const id = randomUUID();
  return connection.transaction((): Place => {
    const hash = hashOfText(text);
    const { lastInsertRowid } = connection
      .prepare(
        `INSERT INTO circuits (id, title, vehicle, pages, parts, wires, problems, loose_ends, version, hash, origin, made, edited, beside, beside_by)
         VALUES (:id, :title, :vehicle, :pages, :parts, :wires, :problems, :looseEnds, 1, :hash, :origin, :now, :now, :beside, :person)`,
      )
      .run({
        ...factsOf(circuit),
        id,
        hash,
        origin,
        beside,
        person: beside === null ? "" : personOf(store),
        now: now.toISOString(),
      });
    const key = Number(lastInsertRowid);
    addVersion(store, { circuit: key, version: 1, name, text, pictures: picturesIn(circuit), page }, now);
    if (bench) keepBench(store, key, { bench, benchVersion: 0 }, { page, circuitVersion: 1 }, now);
    indexCircuit(connection, key, circuit);
    keepJobs(store, key, () => ok(circuit), jobs, now);
    return { key, id, version: 1, hash };
  })();
}

/** A circuit as an edit made it, and as its file has it. */
interface Changed {
  readonly circuit: Circuit;
  readonly text: string;
  readonly name: string;
  readonly page: string | undefined;
}

/** Keeps the next version of a circuit. For use within a transaction. */
export function changeCircuit(store: Store, place: Place, { circuit, text, name, page }: Changed, now: Date): void {
  const { key } = place;
  const version = place.version + 1;
  addVersion(store, { circuit: key, version, name, text, pictures: picturesIn(circuit), page }, now);
  store.connection
    .prepare(
      `UPDATE circuits SET title = :title, vehicle = :vehicle, pages = :pages, parts = :parts, wires = :wires,
         problems = :problems, loose_ends = :looseEnds, version = :version, hash = :hash, edited = :now WHERE key = :key`,
    )
    .run({ ...factsOf(circuit), key, version, hash: hashOfText(text), now: now.toISOString() });
  indexCircuit(store.connection, key, circuit);
}

/** The circuit that a page kept beside another and changed last; null where there is none outside the bin. */
export function branchOf({ connection }: Store, key: number, page: string): Place | null {
  const place = connection
    .prepare(
      `SELECT c.key, c.id, c.version, c.hash FROM circuits c JOIN versions v ON v.circuit = c.key AND v.version = c.version
         WHERE c.beside = ? AND v.page = ? AND c.removed IS NULL ORDER BY c.key DESC LIMIT 1`,
    )
    .get(key, page);
  return (place as Place | undefined) ?? null;
}

/** The circuit that a page began and changed last; null where it began none outside the bin. */
export function begunBy({ connection }: Store, page: string): Place | null {
  const place = connection
    .prepare(
      `SELECT c.key, c.id, c.version, c.hash FROM versions v JOIN circuits c ON c.key = v.circuit AND c.version = v.version
         WHERE v.page = ? AND c.beside IS NULL AND c.removed IS NULL AND EXISTS (SELECT 1 FROM versions first
           WHERE first.circuit = c.key AND first.version = 1 AND first.page = v.page)`,
    )
    .get(page);
  return (place as Place | undefined) ?? null;
}

/** Circuits kept beside this one, and the one that it was kept beside; none from the bin. */
export function besidesOf({ connection }: Store, key: number): BesideRow[] {
  return connection
    .prepare(
      `SELECT c.id, c.title, v.by, c.edited, c.beside IS NOT :key AS isFirst
         FROM circuits c JOIN versions v ON v.circuit = c.key AND v.version = c.version
         WHERE c.removed IS NULL AND (c.beside = :key OR c.key = (SELECT beside FROM circuits WHERE key = :key))
         ORDER BY isFirst DESC, c.edited DESC, c.key DESC`,
    )
    .all({ key })
    .map((row) => {
      const { isFirst, ...rest } = row as Omit<BesideRow, "isFirst"> & { readonly isFirst: number };
      return { ...rest, isFirst: isFirst === 1 };
    });
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
