import type { Refusal } from "../../core/base/outcome.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Job } from "../../core/diagnose/job.ts";
import { type Desk, namesOf } from "../../core/edit/history.ts";
import { jobOf } from "../../core/edit/jobOf.ts";
import { areButForTime } from "../../core/edit/timePassed.ts";
import type { SavedWhere } from "../../schemas/calls.ts";
import { LIMITS } from "../../schemas/limits.ts";
import type { Host } from "../host/host.ts";
import { benchText } from "./benchText.ts";
import { standing } from "./openBench.ts";
import type { Open, Standing } from "./state.ts";

/** A bench that is or was open, and what the host has of it. */
export interface Keeping {
  /** The bench as it stands, or stood when it was put away. */
  open: Open;
  /** Tells its saves from those of any other page, so that one whose answer was lost is known again. */
  readonly mark: string;
  /** Where the host keeps it; null while it does not. */
  id: string | null;
  version: number;
  benchVersion: number;
  /** The bench and the circuit as the host has them. */
  kept: Open | null;
  keptCircuit: Circuit | null;
  /** The bench as it was sent last, kept or not. */
  sent: Open | null;
  /** Jobs that were put away since the last save, as they were then. */
  jobs: readonly Job[];
  /** True from a save that failed to the next that does not. */
  isFailing: boolean;
}

/** A bench just brought out: the host has it as it is, or, where it has no id yet, nothing of it is worth keeping. */
export function keepingOf(open: Open): Keeping {
  const { id, version, benchVersion } = open;
  const keptCircuit = id === null ? null : open.desk.bench.circuit;
  return {
    open,
    mark: newMark(),
    id,
    version,
    benchVersion,
    kept: open,
    keptCircuit,
    sent: null,
    jobs: [],
    isFailing: false,
  };
}

/** The same bench as one that the host has nothing of: kept next, it is a circuit of its own. */
export function asCopy({ open, jobs }: Keeping): Keeping {
  const nothing = { id: null, version: 0, benchVersion: 0, kept: null, keptCircuit: null, sent: null };
  return { open, mark: newMark(), ...nothing, jobs, isFailing: false };
}

function newMark(): string {
  return crypto.randomUUID();
}

/** True where an edit was made since it was kept, or where a kept bench is looked at in another way. */
export function isWorthKeeping({ open, id, kept }: Keeping): boolean {
  if (!kept || !areButForTime(open.desk.bench, kept.desk.bench)) return true;
  if (id === null) return false;
  const { desk, page, viewports, panel, connector } = open;
  return (
    !isSameDesk(desk, kept.desk) ||
    page !== kept.page ||
    viewports !== kept.viewports ||
    panel !== kept.panel ||
    connector !== kept.connector
  );
}

/** True where nothing was done since it was kept, and at most the look at it differs. */
export function isSightAlone({ open, kept }: Keeping): boolean {
  return kept !== null && isSameDesk(open.desk, kept.desk);
}

/** Whether nobody has done anything between two desks: time may have passed. */
function isSameDesk(one: Desk, other: Desk): boolean {
  return one.history === other.history && one.mark === other.mark && areButForTime(one.bench, other.bench);
}

/** Refusals that another try does not heal: what the host has is no longer what the bench was made from. */
const PARTED: readonly string[] = ["circuit-changed-elsewhere", "bench-changed-elsewhere", "circuit-unknown"];

/** True where a bench can be kept only as a circuit of its own. */
export function isParted(refusal: Refusal | null): boolean {
  return refusal !== null && PARTED.includes(refusal.code);
}

/** True where it stands in the library otherwise than it did, so that it can be opened again. */
export function isChangedElsewhere(refusal: Refusal | null): boolean {
  return isParted(refusal) && refusal?.code !== "circuit-unknown";
}

/** What became of a save; null for the refusal is a host that does not answer. */
export type Saved =
  | ({ readonly ok: true; readonly beside: SavedWhere["beside"] } & Standing)
  | { readonly ok: false; readonly refusal: Refusal | null };

/** Brings a bench to the host: as a new circuit, as an edit of the circuit, or only what stands on it. */
export async function saved(host: Host, keeping: Keeping): Promise<Saved> {
  const jobs = jobsStanding(keeping);
  const { open, mark: page, id, version, benchVersion, keptCircuit } = keeping;
  const { circuit } = open.desk.bench;
  try {
    const bench = benchText(open);
    if (id === null) {
      const made = await host.ask("circuits.create", { circuit, bench, jobs, page });
      return made.ok ? { ok: true, beside: null, ...standing(made.value) } : made;
    }
    const name = (namesOf(open.desk).undo ?? "edit").slice(0, LIMITS.labelLength);
    const stand = { id, version, bench, benchVersion, jobs, page };
    const outcome =
      keptCircuit === circuit
        ? await host.ask("benches.save", { ...stand, isSight: isSightAlone(keeping) })
        : await host.ask("circuits.save", { ...stand, circuit, name });
    return outcome.ok ? { ok: true, beside: outcome.value.beside, ...standing(outcome.value) } : outcome;
  } catch {
    return { ok: false, refusal: null };
  }
}

/** The job in hand and those put away since the last save, each once. */
function jobsStanding({ open, jobs }: Keeping): Job[] {
  const inHand = jobOf(open.desk.bench);
  return inHand ? [...jobs.filter(({ id }) => id !== inHand.id), inHand] : [...jobs];
}

/** The job that left a bench by what was done to it; null where none did. */
export function jobLeft(before: Open | null, now: Open): Job | null {
  if (before === null || before.number !== now.number || before.desk.bench === now.desk.bench) return null;
  const job = jobOf(before.desk.bench);
  return job && job.id !== now.desk.bench.job?.id ? job : null;
}
