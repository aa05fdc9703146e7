import { type Outcome, refuse } from "../../../core/base/outcome.ts";
import type { Circuit } from "../../../core/circuit/circuit.ts";
import type { VersionRow } from "../../../schemas/calls.ts";
import { readCircuit } from "../../../schemas/circuit.ts";
import { packed, unpacked } from "../packed.ts";
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
  readonly page: string | undefined;
}

/** Who kept something last, when, and the mark of the page it came from. */
export interface LastKept {
  readonly by: string;
  readonly saved: string;
  readonly page: string | null;
}

/** Keeps a version and lets go of what is older than the newest 200 and not the last of its day. */
export function addVersion(
  { connection, person = "" }: Store,
  { circuit, version, name, text, pictures, page }: NewVersion,
  now: Date,
): void {
  connection
    .prepare("INSERT INTO versions (circuit, version, name, saved, text, by, page) VALUES (?, ?, ?, ?, ?, ?, ?)")
    .run(circuit, version, name, now.toISOString(), packed(text), person, page ?? null);
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

/** Where it is not known who kept something. */
export const NOBODY: LastKept = { by: "", saved: new Date(0).toISOString(), page: null };

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
