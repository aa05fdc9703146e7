import { randomUUID } from "node:crypto";
import type { Circuit } from "../../../../core/circuit/circuit.ts";
import { formatCircuit } from "../../../../schemas/circuit.ts";
import { factsOf } from "../../facts.ts";
import { hashOfText, unpacked } from "../../packed.ts";
import type { Connection } from "../connect.ts";
import { notePictures } from "../pictures.ts";
import { indexCircuit } from "../search.ts";
import type { Store } from "../store.ts";
import { type CircuitLeft, circuitsLeft, isMoment } from "./circuitsLeft.ts";
import { bringJobs, bringOthers } from "./othersOver.ts";
import { type Row, rowOrDamaged } from "./rows.ts";
import { fitting, put, writtenIf } from "./writing.ts";

/** What came of bringing over what is left of a damaged library. */
export interface BroughtOver {
  /** Titles of circuits that came over, new or with later changes. */
  readonly brought: readonly string[];
  /** Titles of circuits whose last changes are missing, or of which it is not known. */
  readonly behind: readonly string[];
  /** Of what else there is: where some was lost. */
  readonly lossy: readonly ("circuits" | "jobs" | "pictures" | "attempts" | "marks" | "settings")[];
}

interface Known {
  readonly key: number;
  readonly id: string;
  readonly title: string;
  readonly version: number;
}

/**
 * Brings what is left of a damaged library over into a sound one that it once was: circuits that are newer there with their
 * versions, benches and jobs, exercises, marks, pictures and settings. One transaction; nothing newer is written over. Null where
 * none of the circuits of the sound one is told of in what is left: then it is no such library.
 */
export function bringOver(left: Connection, store: Store): BroughtOver | null {
  const { connection } = store;
  return connection.transaction((): BroughtOver | null => {
    const known = connection.prepare("SELECT key, id, title, version FROM circuits").all() as Known[];
    const byId = new Map(known.map((each) => [each.id, each]));
    const byKey = new Map(known.map((each) => [each.key, each]));
    const sameAs = (key: number, row: Row | null): Known | undefined =>
      row ? byId.get(String(row.id)) : byKey.get(key);
    const { circuits, hasGaps } = circuitsLeft(left, (key, row) => sameAs(key, row)?.version ?? 0);
    const stand = circuits.map((each): Stands => {
      const before = sameAs(each.key, each.row);
      const after = kept(connection, each, before);
      const bench = after === null ? "same" : broughtBench(left, connection, each.key, after.key);
      const isNewer = bench === "brought" || after?.version !== before?.version;
      return { each, before, after, isNewer, isBenchLost: bench === "lost" };
    });
    const places = new Map(stand.flatMap(({ each, after }) => (after ? [[each.key, after.key]] : [])));
    const jobs = bringJobs(left, store, places);
    const others = bringOthers(left, connection);
    const isBehind = ({ each, after, isBenchLost }: Stands): boolean =>
      !after || after.version < each.newest || isBenchLost;
    const isBrought = ({ after, isNewer }: Stands): boolean =>
      after !== null && (isNewer || jobs.circuits.has(after.key));
    const seen = new Set(places.values());
    if (seen.size === 0 && known.length > 0) return null;
    const unseen = hasGaps ? known.filter(({ key }) => !seen.has(key)) : [];
    return {
      brought: stand.filter((one) => !isBehind(one) && isBrought(one)).map(titleOf),
      behind: [...stand.filter(isBehind).map(titleOf), ...unseen.map(({ title }) => title)],
      lossy: [...(hasGaps ? (["circuits"] as const) : []), ...(jobs.isLossy ? (["jobs"] as const) : []), ...others],
    };
  })();
}

/** What became of a circuit: as it stood in the sound library, and as it stands there now. */
interface Stands {
  readonly each: CircuitLeft;
  readonly before: Known | undefined;
  readonly after: Known | null;
  readonly isNewer: boolean;
  readonly isBenchLost: boolean;
}

function titleOf({ each, after }: Stands): string {
  return after?.title ?? String(each.row?.title ?? "");
}

/** Keeps what is newer of a circuit, and where the library's rules refuse its row its versions alone. */
function kept(connection: Connection, left: CircuitLeft, before: Known | undefined): Known | null {
  const tried = (each: CircuitLeft) => writtenIf(connection, () => keepCircuit(connection, each, before));
  return tried(left) ?? tried({ ...left, row: null }) ?? before ?? null;
}

/** Keeps what is newer of a circuit; gives how it stands now, or null where nothing of it is here or came over. */
function keepCircuit(connection: Connection, left: CircuitLeft, before: Known | undefined): Known | null {
  const { circuit, versions, row } = left;
  const last = versions.at(-1);
  if (!circuit || !last) {
    if (before && row) keepPlace(connection, before.key, row);
    return before ?? null;
  }
  const columns = {
    ...(row ? fitting(connection, "circuits", row, ["key", "beside"]) : {}),
    id: before?.id ?? String(row?.id ?? randomUUID()),
    ...rowOf(circuit),
    version: last.version,
    hash: hashOfText(formatCircuit(circuit)),
    ...(row || before ? {} : { made: String(versions[0]!.row.saved) }),
    edited: String(row?.edited ?? last.row.saved),
    removed: row?.removed ?? null,
  };
  const key = before?.key ?? put(connection, "circuits", columns);
  if (before) put(connection, "circuits", columns, before.key);
  for (const { version, row: saved, pictures } of versions) {
    put(connection, "versions", { name: "", ...fitting(connection, "versions", saved, []), circuit: key });
    notePictures(connection, key, version, pictures);
  }
  indexCircuit(connection, key, circuit);
  return { key, id: columns.id, title: circuit.title, version: last.version };
}

/** Whether it lies in the bin is no part of a version. */
function keepPlace(connection: Connection, key: number, { removed }: Row): void {
  connection.prepare("UPDATE circuits SET removed = ? WHERE key = ?").run(removed, key);
}

function rowOf(circuit: Circuit): Readonly<Record<string, string | number>> {
  const { looseEnds, ...facts } = factsOf(circuit);
  return { ...facts, loose_ends: looseEnds };
}

/** Brings over what stood on a bench where it is newer; "lost" where that cannot be read. */
function broughtBench(left: Connection, connection: Connection, from: number, to: number): "brought" | "same" | "lost" {
  const row = rowOrDamaged(left, "SELECT circuit AS rowNumber, * FROM benches WHERE circuit = ?", from);
  if (row === null) return "same";
  if (row === "damaged" || !isMoment(row.saved)) return "lost";
  const kept = connection.prepare("SELECT version, saved FROM benches WHERE circuit = ?").get(to) as
    | { readonly version: number; readonly saved: string }
    | undefined;
  const version = Number(row.version ?? 1);
  const isNewer = !kept || version > kept.version || (version === kept.version && row.saved > kept.saved);
  if (!isNewer) return "same";
  if (!Buffer.isBuffer(row.state) || unpacked(row.state) === null) return "lost";
  const isKept = writtenIf(connection, () => {
    connection.prepare("DELETE FROM benches WHERE circuit = ?").run(to);
    return put(connection, "benches", { ...fitting(connection, "benches", row, []), circuit: to });
  });
  return isKept === null ? "lost" : "brought";
}
