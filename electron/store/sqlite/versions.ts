import { type Outcome, refuse } from "../../../core/base/outcome.ts";
import type { Circuit } from "../../../core/circuit/circuit.ts";
import type { VersionRow } from "../../../schemas/calls.ts";
import { readCircuit } from "../../../schemas/circuit.ts";
import { ALL_KEPT, type LastKept, type NewVersion, NOBODY } from "../newVersion.ts";
import { packed, unpacked } from "../packed.ts";
import { notePictures } from "./pictures.ts";
import { personOf } from "./settings.ts";
import type { Store } from "./store.ts";

/** Keeps a version and lets go of what is older than the newest 200 and not the last of its day. */
export function addVersion(
  store: Store,
  { circuit, version, name, text, pictures, page }: NewVersion,
  now: Date,
): void {
  const { connection } = store;
  connection
    .prepare("INSERT INTO versions (circuit, version, name, saved, text, by, page) VALUES (?, ?, ?, ?, ?, ?, ?)")
    .run(circuit, version, name, now.toISOString(), packed(text), personOf(store), page ?? null);
  notePictures(connection, circuit, version, pictures);
  if (version <= ALL_KEPT) return;
  connection
    .prepare(
      `DELETE FROM versions WHERE circuit = :circuit AND version <= :oldest AND EXISTS (SELECT 1 FROM versions later
         WHERE later.circuit = versions.circuit AND later.version > versions.version AND later.version <= :oldest
           AND substr(later.saved, 1, 10) = substr(versions.saved, 1, 10))`,
    )
    .run({ circuit, oldest: version - ALL_KEPT });
}

/** Versions of a circuit, newest first. */
export function versionsOf({ connection }: Store, key: number): VersionRow[] {
  return connection
    .prepare("SELECT version, saved, name, by FROM versions WHERE circuit = ? ORDER BY version DESC")
    .all(key) as VersionRow[];
}

/** Who made a version that is kept. */
export function lastVersion({ connection }: Store, key: number, version: number): LastKept {
  const row = connection
    .prepare("SELECT by, saved, page FROM versions WHERE circuit = ? AND version = ?")
    .get(key, version);
  return (row as LastKept | undefined) ?? NOBODY;
}

/**
 * The circuit in one of its versions. Refuses `version-unknown`, `version-damaged` where its bytes changed on the disk,
 * and what reading a circuit file refuses, as where a newer program wrote it.
 */
export function circuitInVersion({ connection }: Store, key: number, version: number): Outcome<Circuit> {
  const row = connection
    .prepare(
      `SELECT text, title FROM versions JOIN circuits ON key = circuit WHERE circuit = ? AND versions.version = ?`,
    )
    .get(key, version) as { readonly text: Buffer; readonly title: string } | undefined;
  if (!row) return refuse("version-unknown", { version });
  const text = unpacked(row.text);
  return text === null ? refuse("version-damaged", { version, title: row.title }) : readCircuit(text);
}
