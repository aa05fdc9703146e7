import type { Job } from "../../../../core/diagnose/job.ts";
import { jobShape } from "../../../../schemas/jobShape.ts";
import type { Json } from "../../../../schemas/json.ts";
import { unpacked } from "../../packed.ts";
import { hashOfBytes } from "../../pictureFile.ts";
import type { Connection } from "../connect.ts";
import { keepJobs } from "../jobs.ts";
import type { Store } from "../store.ts";
import { circuitInVersion } from "../versions.ts";
import { isMoment } from "./circuitsLeft.ts";
import { type Row, rowsLeft } from "./rows.ts";
import { fitting, put, writtenIf } from "./writing.ts";

/**
 * Brings over jobs that are newer. `places` gives for the number of a circuit in the damaged library that in the sound one; what comes back are the
 * numbers, in the sound one, of circuits with a job that came over, and whether some jobs were lost.
 */
export function bringJobs(left: Connection, store: Store, places: ReadonlyMap<number, number>): JobsBrought {
  const circuits = new Set<number>();
  const { rows, hasGaps } = rowsLeft(left, "jobs");
  let isLossy = hasGaps;
  for (const row of rows) {
    const circuit = places.get(Number(row.circuit));
    const job = jobIn(row);
    if (circuit === undefined || !job) isLossy = true;
    else if (bringJob(store, circuit, job, row)) circuits.add(circuit);
  }
  return { circuits, isLossy };
}

/** What came of bringing jobs over. */
export interface JobsBrought {
  readonly circuits: ReadonlySet<number>;
  readonly isLossy: boolean;
}

function bringJob(store: Store, circuit: number, job: Job, { made, edited, removed }: Row): boolean {
  const { connection } = store;
  if (!isMoment(made) || !isMoment(edited) || !(removed === null || isMoment(removed))) return false;
  const here = connection.prepare("SELECT edited FROM jobs WHERE circuit = ? AND id = ?").pluck().get(circuit, job.id);
  if (typeof here === "string" && here >= edited) return false;
  const version = connection.prepare("SELECT version FROM circuits WHERE key = ?").pluck().get(circuit) as number;
  keepJobs(store, circuit, () => circuitInVersion(store, circuit, version), [job], new Date(edited));
  connection
    .prepare("UPDATE jobs SET made = ?, edited = ?, removed = ? WHERE circuit = ? AND id = ?")
    .run(made, edited, removed, circuit, job.id);
  return true;
}

function jobIn({ state }: Row): Job | null {
  const text = Buffer.isBuffer(state) ? unpacked(state) : null;
  const read = text === null ? null : jobShape.safeParse(JSON.parse(text) as Json);
  return read?.success ? read.data : null;
}

/** Tables beside circuits and jobs: the column that tells rows apart, what a row must show to be believed, and which of two is the later. */
const OTHERS: readonly Table[] = [
  { name: "pictures", id: "sha256", isGood: isOwnHash, isLater: () => false },
  { name: "attempts", id: "id", isGood: isAttempt, isLater: (row, here) => String(row.edited) > String(here.edited) },
  {
    name: "marks",
    id: "id",
    isGood: ({ graded }) => isMoment(graded),
    isLater: (row, here) => String(row.graded) > String(here.graded),
  },
  { name: "settings", id: "name", isGood: ({ value }) => isJson(value), isLater: () => true },
];

interface Table {
  readonly name: "pictures" | "attempts" | "marks" | "settings";
  readonly id: string;
  readonly isGood: (row: Row) => boolean;
  readonly isLater: (row: Row, here: Row) => boolean;
}

/** Brings over pictures, exercises with their routes, marks and settings that are not there or later; gives the tables of which some rows were lost. */
export function bringOthers(left: Connection, connection: Connection): readonly Table["name"][] {
  return OTHERS.flatMap((table) => {
    const { rows, hasGaps } = rowsLeft(left, table.name);
    const good = rows.filter((row) => table.isGood(row) && bringRow(connection, table, row));
    return hasGaps || good.length < rows.length ? [table.name] : [];
  });
}

/** False where the row is not to be believed. */
function bringRow(connection: Connection, { name, id, isLater }: Table, row: Row): boolean {
  const here = connection.prepare(`SELECT rowid AS rowNumber, * FROM ${name} WHERE ${id} = ?`).get(row[id]) as
    | Row
    | undefined;
  if (here && !isLater(row, here)) return true;
  const columns = fitting(connection, name, row, ["key"]);
  return writtenIf(connection, () => put(connection, name, columns, here?.rowNumber)) !== null;
}

function isOwnHash({ bytes, sha256 }: Row): boolean {
  return Buffer.isBuffer(bytes) && hashOfBytes(bytes) === sha256;
}

function isAttempt({ file, route, edited }: Row): boolean {
  return isMoment(edited) && isWhole(file) && isWhole(route);
}

function isWhole(blob: unknown): boolean {
  return Buffer.isBuffer(blob) && unpacked(blob) !== null;
}

function isJson(value: unknown): boolean {
  try {
    JSON.parse(String(value));
    return typeof value === "string";
  } catch {
    return false;
  }
}
