import { type Outcome, ok, refuse } from "../../../core/base/outcome.ts";
import { formatCircuit } from "../../../schemas/circuit.ts";
import type { ChangedMeanwhile, Standing } from "../library.ts";
import { hashOfText } from "../packed.ts";
import { goesOn, type Sent } from "../sent.ts";
import { benchOf, keepBench, noteBenchOf } from "./benches.ts";
import { addCircuit, branchOf, changeCircuit, type Place, placeAnywhere } from "./circuits.ts";
import { keepJobs } from "./jobs.ts";
import { noteOpened, onBench } from "./recent.ts";
import type { Session } from "./session.ts";
import { circuitInVersion, lastVersion } from "./versions.ts";

/** Keeps what a page sent, as `CircuitShelf.save` and `BenchShelf.save` say. Its circuit is held, so that two wait for each other. */
export async function keepSent(session: Session, id: string, sent: Sent, now: Date): Promise<Outcome<Standing>> {
  const place = await placeAnywhere(session, id, true);
  if (!place.ok) return place;
  const { key, version, isRemoved } = place.value;
  const last = await lastVersion(session, key, version);
  const isOn = goesOn(sent, { ...place.value, page: last.page });
  const bench = isOn ? await keptBench(session, place.value, sent, now) : null;
  if (bench?.ok) return ok(await keepHere(session, place.value, sent, bench.value, now));
  if (sent.bench?.isSight) return bench ?? refuse(isRemoved ? "circuit-unknown" : "circuit-changed-elsewhere");
  const { by, saved } = bench ? await benchOf(session, key) : last;
  return keepBeside(session, place.value, sent, { by, saved, isRemoved }, now);
}

async function keptBench(
  session: Session,
  { key, version }: Place,
  { bench, circuit, page, version: made }: Sent,
  now: Date,
): Promise<Outcome<number>> {
  if (!bench) return ok((await benchOf(session, key)).version);
  return keepBench(session, key, bench, { page, circuitVersion: circuit ? version : made }, now);
}

/** Keeps what was sent as the newest of its circuit; one that did not change keeps its version. */
async function keepHere(
  session: Session,
  place: Place,
  sent: Sent,
  benchVersion: number,
  now: Date,
): Promise<Standing> {
  const { id, key, version, hash } = place;
  const { circuit, page, name } = sent;
  const stands = { id, version, benchVersion, beside: null };
  const drawn = async () => (circuit ? ok(circuit) : circuitInVersion(session, key, version));
  await keepJobs(session, key, drawn, sent.jobs, now);
  // The page goes on from the version that it has.
  if (!circuit) return { ...stands, version: sent.version };
  const text = formatCircuit(circuit);
  if (hashOfText(text) === hash) return stands;
  await changeCircuit(session, place, { circuit, text, name, page }, now);
  if (sent.bench) await noteBenchOf(session, key, version + 1);
  return { ...stands, version: version + 1 };
}

/**
 * Keeps what was sent beside a circuit that is no longer what it was made from: on the circuit that this page had kept beside
 * it before, where the answer to that was lost, else as a new one. Refuses as reading the version that it was made from.
 */
async function keepBeside(
  session: Session,
  place: Place,
  sent: Sent,
  meanwhile: ChangedMeanwhile,
  now: Date,
): Promise<Outcome<Standing>> {
  const own = sent.page === undefined ? null : await branchOf(session, place.key, sent.page);
  if (own) {
    const kept = await benchOf(session, own.key);
    const bench = sent.bench && { ...sent.bench, benchVersion: kept.version };
    const again = await keepSent(session, own.id, { ...sent, version: own.version, bench }, now);
    return again.ok ? ok({ ...again.value, beside: meanwhile }) : again;
  }
  const circuit = sent.circuit ? ok(sent.circuit) : await circuitInVersion(session, place.key, sent.version);
  if (!circuit.ok) return circuit;
  const { name, bench, jobs, page } = sent;
  const coming = { name, bench: bench?.bench, jobs, page, beside: place.key };
  const { id, key, version } = await addCircuit(session, circuit.value, coming, now);
  if ((await onBench(session)).circuit === place.id) await noteOpened(session, key, id, now);
  return ok({ id, version, benchVersion: (await benchOf(session, key)).version, beside: meanwhile });
}
