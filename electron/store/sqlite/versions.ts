import { type Outcome, refuse } from "../../../core/base/outcome.ts";
import type { Circuit } from "../../../core/circuit/circuit.ts";
import type { VersionRow } from "../../../schemas/calls.ts";
import { readCircuit } from "../../../schemas/circuit.ts";
import { packed, unpacked } from "../packed.ts";
import type { Connection } from "./connect.ts";
import { notePictures } from "./pictures.ts";
import type { Store } from "./store.ts";

/** The newest versions are all kept; of older ones the last of each day. */
export const ALL_KEPT = 200;

/** A version about to be kept: `text` is the circuit's file, `name` the edit that made it. */
export interface NewVersion {
  readonly circuit: number;
  readonly version: number;
  readonly name: string;
  readonly text: string;
  /** Hashes of the pictures that it shows. */
  readonly pictures: readonly string[];
}

/** Keeps a version and lets go of what is older than the newest 200 and not the last of its day. */
export function addVersion(
  connection: Connection,
  { circuit, version, name, text, pictures }: NewVersion,
  now: Date,
): void {
  connection
    .prepare("INSERT INTO versions (circuit, version, name, saved, text) VALUES (?, ?, ?, ?, ?)")
    .run(circuit, version, name, now.toISOString(), packed(text));
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
    .prepare("SELECT version, saved, name FROM versions WHERE circuit = ? ORDER BY version DESC")
    .all(key) as VersionRow[];
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
