import { type Outcome, ok } from "../../../core/base/outcome.ts";
import { LIBRARY_NAMES } from "../../../core/base/words/library.ts";
import type { Circuit } from "../../../core/circuit/circuit.ts";
import type { CircuitRow } from "../../../schemas/calls.ts";
import { copyTitles } from "../copyTitles.ts";
import type { Where } from "../library.ts";
import { sentEdit } from "../sent.ts";
import { benchOf } from "./benches.ts";
import { addCircuit, placeOf } from "./circuits.ts";
import { circuitRow } from "./list.ts";
import { keepSent } from "./save.ts";
import type { Session } from "./session.ts";
import { sql } from "./sql.ts";
import { circuitInVersion } from "./versions.ts";

/** A circuit as it is now, and where it is. */
interface Found {
  readonly circuit: Circuit;
  readonly key: number;
  readonly version: number;
}

/** The circuit of this id as it is now, held where it is to be changed. Refuses `circuit-unknown` and `version-damaged`. */
export async function circuitOf(session: Session, id: string, isHeld = false): Promise<Outcome<Found>> {
  const place = await placeOf(session, id, { isHeld });
  if (!place.ok) return place;
  const { key, version } = place.value;
  const circuit = await circuitInVersion(session, key, version);
  return circuit.ok ? ok({ circuit: circuit.value, key, version }) : circuit;
}

/** Keeps a copy of a circuit with its bench. Refuses as `circuitOf`. */
export async function duplicateCircuit(session: Session, id: string, now: Date): Promise<Outcome<CircuitRow>> {
  const found = await circuitOf(session, id);
  if (!found.ok) return found;
  const { circuit, key } = found.value;
  const copy = { ...circuit, title: await titleOfCopy(session, circuit.title) };
  const { bench } = await benchOf(session, key);
  const place = await addCircuit(session, copy, { name: LIBRARY_NAMES.copied, bench }, now);
  return ok(await circuitRow(session, place.key));
}

/** Gives a circuit another title, as a version of its own. Refuses as `circuitOf`. */
export async function renameCircuit(
  session: Session,
  id: string,
  title: string,
  now: Date,
): Promise<Outcome<CircuitRow>> {
  const found = await circuitOf(session, id, true);
  if (!found.ok) return found;
  const { circuit, version, key } = found.value;
  const sent = sentEdit({ version, circuit: { ...circuit, title }, name: LIBRARY_NAMES.renamed });
  const saved = await keepSent(session, id, sent, now);
  return saved.ok ? ok(await circuitRow(session, key)) : saved;
}

/** Moves a circuit to the bin, or lets go of it for good; its row as it was in the bin. Refuses `circuit-unknown`. */
export async function removeCircuit(
  session: Session,
  id: string,
  isForGood: boolean,
  now: Date,
): Promise<Outcome<CircuitRow>> {
  const row = await moved(session, id, "library", now);
  if (row.ok && isForGood) await session.run(sql`DELETE FROM circuits WHERE id = ${id}`);
  return row;
}

/** Brings a circuit back out of the bin. Refuses `circuit-unknown`. */
export function restoreCircuit(session: Session, id: string): Promise<Outcome<CircuitRow>> {
  return moved(session, id, "bin", null);
}

async function moved(session: Session, id: string, from: Where, removed: Date | null): Promise<Outcome<CircuitRow>> {
  const place = await placeOf(session, id, { where: from, isHeld: true });
  if (!place.ok) return place;
  const { key } = place.value;
  await session.run(sql`UPDATE circuits SET removed = ${removed}::timestamptz WHERE key = ${key}`);
  return ok(await circuitRow(session, key));
}

/** The first title of a copy that no circuit has. */
async function titleOfCopy(session: Session, title: string): Promise<string> {
  const titles = copyTitles(title);
  for (;;) {
    const { value } = titles.next();
    const taken = await session.first(sql`SELECT 1 FROM circuits WHERE title = ${value} AND removed IS NULL`);
    if (!taken) return value;
  }
}
