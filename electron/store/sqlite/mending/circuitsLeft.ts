import type { Circuit } from "../../../../core/circuit/circuit.ts";
import { readCircuit } from "../../../../schemas/circuit.ts";
import { unpacked } from "../../packed.ts";
import { picturesIn } from "../../pictureFile.ts";
import type { Connection } from "../connect.ts";
import { type Row, rowLeft, rowsLeft } from "./rows.ts";

/** A version whose text came out whole. */
export interface VersionLeft {
  readonly version: number;
  readonly row: Row;
  /** Hashes of the pictures that it shows. */
  readonly pictures: readonly string[];
}

/** What is left of a circuit in a damaged library. */
export interface CircuitLeft {
  /** Its number in the tables of the damaged library. */
  readonly key: number;
  /** Its row; null where only versions of it are left, or where it is not to be believed. */
  readonly row: Row | null;
  /** Newest version that the damaged library tells of, whole or not. */
  readonly newest: number;
  /** Its newest version that is whole, as a circuit; null where none is. */
  readonly circuit: Circuit | null;
  /** Whole versions newer than the one asked for, oldest first; the last is that of `circuit`. */
  readonly versions: readonly VersionLeft[];
}

/** Circuits that are left, and whether there may be more that cannot be read. */
export interface CircuitsLeft {
  readonly circuits: readonly CircuitLeft[];
  readonly hasGaps: boolean;
}

/**
 * What is left of each circuit. `known` tells by the row of a circuit, or by its number where there is none, up to which version it is
 * safe elsewhere: only what is newer is read. A version proves itself by the checksum of its text, the newest by being a circuit.
 */
export function circuitsLeft(connection: Connection, known: (key: number, row: Row | null) => number): CircuitsLeft {
  const circuits = rowsLeft(connection, "circuits");
  const told = rowsLeft(connection, "versions", "circuit, version");
  const byKey = new Map(circuits.rows.map((row) => [row.rowNumber, isWhole(row) ? row : null]));
  const versions = Map.groupBy(told.rows, ({ circuit }) => Number(circuit));
  const keys = [...new Set([...byKey.keys(), ...versions.keys()])];
  const left = keys.map((key): CircuitLeft => {
    const row = byKey.get(key) ?? null;
    const from = known(key, row);
    const newer = (versions.get(key) ?? [])
      .filter(({ version }) => Number(version) > from)
      .toSorted((one, other) => Number(one.version) - Number(other.version));
    const newest = Math.max(Number(row?.version ?? 0), Number(newer.at(-1)?.version ?? 0), 0);
    return { key, row, newest, ...wholeOf(connection, newer) };
  });
  return { circuits: left, hasGaps: circuits.hasGaps || told.hasGaps };
}

function wholeOf(connection: Connection, newer: readonly Row[]): Pick<CircuitLeft, "circuit" | "versions"> {
  let circuit: Circuit | null = null;
  const versions: VersionLeft[] = [];
  for (const { rowNumber, version } of newer.toReversed()) {
    const row = rowLeft(connection, "SELECT rowid AS rowNumber, * FROM versions WHERE rowid = ?", rowNumber);
    const text = row && Buffer.isBuffer(row.text) ? unpacked(row.text) : null;
    if (!row || text === null || !isMoment(row.saved)) continue;
    const read = readCircuit(text);
    if (!read.ok) continue;
    circuit ??= read.value;
    versions.unshift({ version: Number(version), row, pictures: picturesIn(read.value) });
  }
  return { circuit, versions };
}

/**
 * Whether each column of a circuit's row holds what it is for. Where the head of a row changed on the disk, values stand in the columns of others:
 * the moment of the last edit would say that it was deleted.
 */
function isWhole({ id, title, vehicle, version, hash, origin, made, edited, removed }: Row): boolean {
  const isHash = (value: unknown): boolean => typeof value === "string" && /^[0-9a-f]{64}$/.test(value);
  return (
    [id, title, vehicle].every((value) => typeof value === "string") &&
    id !== "" &&
    Number.isInteger(version) &&
    isHash(hash) &&
    (origin === null || isHash(origin)) &&
    isMoment(made) &&
    isMoment(edited) &&
    (removed === null || isMoment(removed))
  );
}

/** Whether something is a moment as the library writes them; a row whose times are no times is a damaged one. */
export function isMoment(value: unknown): value is string {
  return typeof value === "string" && /^\d{4}-\d\d-\d\dT[\d:.]{8,12}Z$/.test(value) && !Number.isNaN(Date.parse(value));
}
