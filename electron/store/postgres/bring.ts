import { type Outcome, ok } from "../../../core/base/outcome.ts";
import { LIBRARY_NAMES } from "../../../core/base/words/library.ts";
import type { Circuit } from "../../../core/circuit/circuit.ts";
import type { OpenedCircuit } from "../../../schemas/calls.ts";
import { formatCircuit } from "../../../schemas/circuit.ts";
import type { BroughtFile, Coming } from "../library.ts";
import { hashOfText } from "../packed.ts";
import { sentEdit } from "../sent.ts";
import { benchOf } from "./benches.ts";
import { addCircuit, begunBy, circuitFrom, type Place, placeOf } from "./circuits.ts";
import { keepPicture } from "./pictures.ts";
import { noteOpened } from "./recent.ts";
import { keepSent } from "./save.ts";
import type { Session } from "./session.ts";
import { sql } from "./sql.ts";
import { circuitInVersion } from "./versions.ts";

/** Brings the circuit of this id to the bench. Refuses `circuit-unknown` and `version-damaged`. */
export async function openCircuit(session: Session, id: string, now: Date): Promise<Outcome<OpenedCircuit>> {
  const place = await placeOf(session, id);
  return place.ok ? bringToBench(session, place.value, now) : place;
}

async function bringToBench(
  session: Session,
  { id, key, version }: Place,
  now: Date,
  known = false,
): Promise<Outcome<OpenedCircuit>> {
  const circuit = await circuitInVersion(session, key, version);
  if (!circuit.ok) return circuit;
  await noteOpened(session, key, id, now);
  const kept = await benchOf(session, key);
  const isBenchOlder = kept.version > 0 && kept.circuitVersion !== version;
  const stands = { bench: kept.bench, benchVersion: kept.version, isBenchOlder };
  return ok({ id, version, circuit: circuit.value, ...stands, known });
}

/** Takes a new circuit into the library and brings it to the bench; what a page sends once more goes on what it began. */
export async function bringNew(
  session: Session,
  circuit: Circuit,
  coming: Coming,
  now: Date,
): Promise<Outcome<OpenedCircuit>> {
  const { page, name, bench, jobs = [] } = coming;
  if (page !== undefined) {
    await oneAtATime(session, page);
    const begun = await begunBy(session, page);
    if (begun) {
      const kept = await benchOf(session, begun.key);
      const stands = bench ? { bench: { bench, benchVersion: kept.version } } : {};
      const sent = sentEdit({ version: begun.version, circuit, name, jobs, page, ...stands });
      const saved = await keepSent(session, begun.id, sent, now);
      return saved.ok ? openCircuit(session, saved.value.id, now) : saved;
    }
  }
  return bringToBench(session, await addCircuit(session, circuit, coming, now), now);
}

/** Takes a circuit from a file into the library with its pictures, which are kept first; one that is known is opened. */
export async function bringIn(
  session: Session,
  { circuit, pictures }: BroughtFile,
  now: Date,
): Promise<Outcome<OpenedCircuit>> {
  for (const file of pictures) await keepPicture(session, file, now);
  const origin = hashOfText(formatCircuit(circuit));
  await oneAtATime(session, origin);
  const known = await circuitFrom(session, origin);
  if (known) return bringToBench(session, known, now, true);
  const place = await addCircuit(session, circuit, { name: LIBRARY_NAMES.brought, origin }, now);
  return bringToBench(session, place, now);
}

/** Waits while another brings in the same: it would not be seen yet, and be there twice. */
async function oneAtATime(session: Session, what: string): Promise<void> {
  await session.run(sql`SELECT pg_advisory_xact_lock(hashtextextended(${what}, 0))`);
}
