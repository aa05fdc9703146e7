import { type Outcome, refuse } from "../../../core/base/outcome.ts";
import type { Circuit } from "../../../core/circuit/circuit.ts";
import type { VersionRow } from "../../../schemas/calls.ts";
import { readCircuit } from "../../../schemas/circuit.ts";
import type { NewVersion } from "../newVersion.ts";
import { ALL_KEPT, type LastKept, NOBODY } from "../newVersion.ts";
import { packed, unpacked } from "../packed.ts";
import type { Session } from "./session.ts";
import { sql } from "./sql.ts";

/** Keeps a version and lets go of what is older than the newest 200 and not the last of its day. */
export async function addVersion(session: Session, added: NewVersion, now: Date): Promise<void> {
  const { circuit, version, name, text, pictures, page } = added;
  await session.run(sql`
    INSERT INTO versions (circuit, version, name, saved, text, by, page)
      SELECT ${circuit}, ${version}, ${name}, ${now}, ${packed(text)}, p.name, ${page ?? null}
        FROM persons p WHERE p.id = ${session.person}`);
  await session.run(sql`
    INSERT INTO pictured (circuit, version, sha256)
      SELECT ${circuit}, ${version}, sha256 FROM unnest(${pictures}::text[]) AS sha256`);
  if (version <= ALL_KEPT) return;
  const oldest = version - ALL_KEPT;
  await session.run(sql`
    DELETE FROM versions WHERE circuit = ${circuit} AND version <= ${oldest} AND EXISTS (
      SELECT 1 FROM versions later WHERE later.circuit = versions.circuit AND later.version > versions.version
        AND later.version <= ${oldest}
        AND (later.saved AT TIME ZONE 'UTC')::date = (versions.saved AT TIME ZONE 'UTC')::date)`);
}

/** Versions of a circuit, newest first. */
export function versionsOf(session: Session, key: number): Promise<VersionRow[]> {
  return session.all(sql`SELECT version, saved, name, by FROM versions WHERE circuit = ${key} ORDER BY version DESC`);
}

/** Who else made a version that is kept; nobody else where it was this person. */
export async function lastVersion(session: Session, key: number, version: number): Promise<LastKept> {
  const row = await session.first<LastKept>(sql`
    SELECT CASE WHEN v.by = p.name THEN '' ELSE v.by END AS by, v.saved, v.page
      FROM versions v JOIN persons p ON p.id = ${session.person}
      WHERE v.circuit = ${key} AND v.version = ${version}`);
  return row ?? NOBODY;
}

/** The circuit in one of its versions. Refuses `version-unknown`, `version-damaged`, and what reading a circuit file refuses. */
export async function circuitInVersion(session: Session, key: number, version: number): Promise<Outcome<Circuit>> {
  const row = await session.first<{ readonly text: Buffer; readonly title: string }>(sql`
    SELECT v.text, c.title FROM versions v JOIN circuits c ON c.key = v.circuit
      WHERE v.circuit = ${key} AND v.version = ${version}`);
  if (!row) return refuse("version-unknown", { version });
  const text = unpacked(row.text);
  return text === null ? refuse("version-damaged", { version, title: row.title }) : readCircuit(text);
}
