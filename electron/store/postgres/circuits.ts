import { randomUUID } from "node:crypto";
import { type Outcome, ok, refuse } from "../../../core/base/outcome.ts";
import type { Circuit } from "../../../core/circuit/circuit.ts";
import type { BesideRow } from "../../../schemas/calls.ts";
import { formatCircuit } from "../../../schemas/circuit.ts";
import { factsOf } from "../facts.ts";
import type { Coming } from "../library.ts";
import { hashOfText } from "../packed.ts";
import { picturesIn } from "../pictureFile.ts";
import { keepBench } from "./benches.ts";
import { keepJobs } from "./jobs.ts";
import { circuitIndex } from "./search.ts";
import type { Session } from "./session.ts";
import { sql } from "./sql.ts";
import { addVersion } from "./versions.ts";

/** A circuit's place in the library. */
export interface Place {
  /** Its number in the tables. */
  readonly key: number;
  readonly id: string;
  readonly version: number;
  readonly hash: string;
  readonly isRemoved: boolean;
}

const PLACE = sql`c.key, c.id, c.version, c.hash, c.removed IS NOT NULL AS "isRemoved"`;

/** The place of a circuit, in the bin or not; held for this transaction where it is to be changed. Refuses `circuit-unknown`. */
export async function placeAnywhere(session: Session, id: string, isHeld = false): Promise<Outcome<Place>> {
  const hold = isHeld ? sql`FOR UPDATE` : sql``;
  const place = await session.first<Place>(sql`SELECT ${PLACE} FROM circuits c WHERE c.id = ${id} ${hold}`);
  return place ? ok(place) : refuse("circuit-unknown");
}

/** The place of a circuit in the library or in its bin. Refuses `circuit-unknown`. */
export async function placeOf(
  session: Session,
  id: string,
  { where = "library", isHeld = false }: { readonly where?: "library" | "bin"; readonly isHeld?: boolean } = {},
): Promise<Outcome<Place>> {
  const place = await placeAnywhere(session, id, isHeld);
  return !place.ok || place.value.isRemoved === (where === "bin") ? place : refuse("circuit-unknown");
}

/** How a circuit came, and from where. */
export interface ComingFrom extends Coming {
  /** Hash of the text of the file it was brought in from. */
  readonly origin?: string;
  /** Key of the circuit that it is kept beside. */
  readonly beside?: number;
}

/** Takes a circuit into the library as a new one. */
export async function addCircuit(session: Session, circuit: Circuit, coming: ComingFrom, now: Date): Promise<Place> {
  const { name, bench, jobs = [], origin = null, beside = null, page } = coming;
  const text = formatCircuit(circuit);
  const { title, vehicle, pages, parts, wires, problems, looseEnds } = factsOf(circuit);
  const place = await session.first<Place>(sql`
    INSERT INTO circuits AS c (id, title, vehicle, pages, parts, wires, problems, loose_ends, version, hash, origin, made,
        edited, beside, beside_by, search)
      SELECT ${randomUUID()}, ${title}, ${vehicle}, ${pages}, ${parts}, ${wires}, ${problems}, ${looseEnds}, 1,
        ${hashOfText(text)}, ${origin}, ${now}, ${now}, ${beside}::bigint,
        CASE WHEN ${beside}::bigint IS NULL THEN '' ELSE p.name END, ${circuitIndex(circuit)}::tsvector
        FROM persons p WHERE p.id = ${session.person}
      RETURNING ${PLACE}`);
  if (!place) throw new Error("broken invariant: the person is not known to the library");
  const { key } = place;
  await addVersion(session, { circuit: key, version: 1, name, text, pictures: picturesIn(circuit), page }, now);
  if (bench) await keepBench(session, key, { bench, benchVersion: 0 }, { page, circuitVersion: 1 }, now);
  await keepJobs(session, key, async () => ok(circuit), jobs, now);
  return place;
}

/** A circuit as an edit made it, and as its file has it. */
export interface Changed {
  readonly circuit: Circuit;
  readonly text: string;
  readonly name: string;
  readonly page: string | undefined;
}

/** Keeps the next version of a circuit, whose place is held. */
export async function changeCircuit(session: Session, place: Place, changed: Changed, now: Date): Promise<void> {
  const { circuit, text, name, page } = changed;
  const { key } = place;
  const version = place.version + 1;
  const { title, vehicle, pages, parts, wires, problems, looseEnds } = factsOf(circuit);
  await addVersion(session, { circuit: key, version, name, text, pictures: picturesIn(circuit), page }, now);
  await session.run(sql`
    UPDATE circuits SET title = ${title}, vehicle = ${vehicle}, pages = ${pages}, parts = ${parts}, wires = ${wires},
        problems = ${problems}, loose_ends = ${looseEnds}, version = ${version}, hash = ${hashOfText(text)}, edited = ${now},
        search = ${circuitIndex(circuit)}::tsvector
      WHERE key = ${key}`);
}

/** A circuit outside the bin that was brought in from a file with this hash, the one edited last; or null. */
export function circuitFrom(session: Session, origin: string): Promise<Place | null> {
  return session.first(sql`
    SELECT ${PLACE} FROM circuits c WHERE c.origin = ${origin} AND c.removed IS NULL ORDER BY c.edited DESC, c.key LIMIT 1`);
}

/** The circuit that a page kept beside another and changed last; null where there is none outside the bin. */
export function branchOf(session: Session, key: number, page: string): Promise<Place | null> {
  return session.first(sql`
    SELECT ${PLACE} FROM circuits c JOIN versions v ON v.circuit = c.key AND v.version = c.version
      WHERE c.beside = ${key} AND v.page = ${page} AND c.removed IS NULL ORDER BY c.key DESC LIMIT 1 FOR UPDATE OF c`);
}

/** The circuit that a page began and changed last; null where it began none outside the bin. */
export function begunBy(session: Session, page: string): Promise<Place | null> {
  return session.first(sql`
    SELECT ${PLACE} FROM versions v JOIN circuits c ON c.key = v.circuit AND c.version = v.version
      WHERE v.page = ${page} AND c.beside IS NULL AND c.removed IS NULL AND EXISTS (
        SELECT 1 FROM versions first WHERE first.circuit = c.key AND first.version = 1 AND first.page = v.page)
      LIMIT 1`);
}

/** Circuits kept beside this one, and the one that it was kept beside; none from the bin. */
export function besidesOf(session: Session, key: number): Promise<BesideRow[]> {
  return session.all(sql`
    SELECT c.id, c.title, v.by, c.edited, c.beside IS DISTINCT FROM ${key}::bigint AS "isFirst"
      FROM circuits c JOIN versions v ON v.circuit = c.key AND v.version = c.version
      WHERE c.removed IS NULL
        AND (c.beside = ${key} OR c.key = (SELECT o.beside FROM circuits o WHERE o.key = ${key}))
      ORDER BY "isFirst" DESC, c.edited DESC, c.key DESC`);
}
