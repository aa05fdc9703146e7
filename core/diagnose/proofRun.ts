import type { PartId } from "../base/ids.ts";
import { type Outcome, ok, refuse } from "../base/outcome.ts";
import type { Minutes, Volts } from "../base/units.ts";
import { DIAGNOSE_SENTENCES as SAY } from "../base/words/diagnose.ts";
import type { Circuit, FunctionCheck } from "../circuit/circuit.ts";
import { branchOf, checksOf } from "../live/branch.ts";
import { targetOf } from "../live/fault.ts";
import { measuredScale } from "../live/restVolts.ts";
import { Rig } from "../live/rig.ts";
import { type Masked, maskedBy } from "./masked.ts";
import { cheapestCover } from "./plan/cover.ts";
import type { Possible } from "./possible.ts";
import { type ProofCheck, plugsTouched, proofChecksOf } from "./proofChecks.ts";
import { alreadyOpen, inPlaces, minutesFor } from "./proofMinutes.ts";
import { isParted, proofProbesFor, proofVolts } from "./proofProbes.ts";
import { type ProofRow, rowFor } from "./proofRow.ts";
import { type Relearn, relearnOf } from "./relearn.ts";
import { mayBeProbed } from "./scope.ts";
import type { Suspect } from "./step.ts";
import { triedOn, tryOut } from "./suspects.ts";

export type { ProofRow } from "./proofRow.ts";

/** What a proof run is asked of. */
export interface ProofAsk {
  readonly circuit: Circuit;
  /** The check that failed. */
  readonly complaint: FunctionCheck;
  readonly found: Pick<Possible, "id" | "faults" | "title">;
  /** Suspects that nothing has ruled out, the one found may be among them. */
  readonly living?: readonly Pick<Suspect, "id" | "faults">[];
  /** Volts of the battery at rest, measured; the drawing's where nobody did. */
  readonly batteryVolts?: Volts | null;
}

/** What parts "repaired" from "masked". */
export interface ProofRun {
  readonly found: Pick<Possible, "id" | "faults" | "title">;
  readonly complaint: FunctionCheck;
  /** All that could be passed off as repaired; the fault itself is the first. */
  readonly masked: readonly Masked[];
  readonly rows: readonly ProofRow[];
  readonly checks: readonly ProofCheck[];
  /** Numbers of the masked states that no row and no check parts: these a look must. */
  readonly looks: readonly number[];
  readonly relearn: readonly Relearn[];
  /** Minutes of the rows; trim that the repair had off already costs none. */
  readonly minutes: Minutes;
}

/**
 * The shortest proof that a repair holds: fewest minutes of readings under load that part the mended circuit from all that
 * masks the fault, with what each shows before and after. Refuses `over-60-volts`, `proof-fault` and `proof-no-load`.
 */
export function proofRun({ circuit, complaint, found, living = [], batteryVolts = null }: ProofAsk): Outcome<ProofRun> {
  const probed = mayBeProbed(circuit);
  if (!probed.ok) return probed;
  const { load } = complaint;
  if (!bringsAbout(circuit, complaint, found)) return refuse("proof-fault", { fault: found.id });
  const working = workingChecks(circuit, complaint);
  if (working.length === 0) return refuse("proof-no-load", { load });
  const branch = branchOf(circuit, { load, condition: working[0]!.condition });
  const masked = maskedBy({
    circuit,
    complaint,
    found,
    branch: branch.ok ? branch.value : null,
    living: living.filter(({ id }) => id !== found.id),
  });
  const checks = proofChecksOf(circuit, complaint, found.faults, masked);
  const probes = proofProbesFor(circuit, working);
  const voltsIn = proofVolts(
    probes,
    complaint.condition,
    working.map(({ condition }) => condition),
  );
  const mended = voltsIn(circuit, []);
  const others = masked.map(({ circuit: own, faults }) => voltsIn(own, faults));
  const open = alreadyOpen(circuit, found);
  const minutesOf = (chosen: readonly number[]): Minutes =>
    minutesFor(
      circuit,
      chosen.map((each) => probes[each]!),
      open,
    );
  const tells = probes.map(
    ({ fineness }, probe) =>
      new Set(others.flatMap((own, number) => (isParted(mended[probe]!, own[probe]!, fineness) ? [number] : []))),
  );
  const wanted = wantedOf(masked, checks, tells, (probe) => minutesOf([probe]));
  const covers = tells.map((own) => new Set([...own].filter((number) => wanted.has(number))));
  const chosen = inPlaces(cheapestCover(covers, minutesOf), probes, open);
  const scale = measuredScale(circuit, batteryVolts);
  const rows = chosen.map((probe, index): ProofRow => {
    const before = chosen.slice(0, index);
    const what = [...tells[probe]!];
    const titles = what.map((each) => masked[each]!.title);
    return {
      ...rowFor({ circuit, complaint, faults: found.faults, scale }, probes[probe]!, {
        number: index + 1,
        minutes: minutesOf([...before, probe]) - minutesOf(before),
        why: SAY.parts(titles),
      }),
      tells: what,
    };
  });
  const told = new Set([...rows.flatMap((row) => row.tells), ...checks.flatMap((each) => each.tells)]);
  return ok({
    found,
    complaint,
    masked,
    rows,
    checks,
    looks: masked.flatMap((_, number) => (told.has(number) ? [] : [number])),
    relearn: relearnOf(circuit, touchedBy(circuit, load, found)),
    minutes: minutesOf(chosen),
  });
}

/** Whether the complaint's check fails with it, or costs a fuse. */
function bringsAbout(circuit: Circuit, complaint: FunctionCheck, { faults }: Pick<Possible, "faults">): boolean {
  const rig = new Rig(circuit);
  const healthy = tryOut(rig, complaint).doing;
  const { verdict, melted } = triedOn(new Rig(circuit, faults, [], rig), complaint, healthy);
  return verdict !== "works" || melted;
}

/** The checks in which the complaint's load runs in the good circuit, its own complaint first. */
function workingChecks(circuit: Circuit, { id, load }: FunctionCheck): readonly FunctionCheck[] {
  const working = checksOf(circuit, load);
  return [...working.filter((check) => check.id === id), ...working.filter((check) => check.id !== id)];
}

/** Minutes that a reading may take which only tells of something beside what was found (a guess). */
const MOST_FOR_BESIDE: Minutes = 5;

/**
 * Masked states that a reading must part: the fault itself, and what no check that is repeated anyway shows. What lies
 * beside it counts only where a reading of a few minutes parts it.
 */
function wantedOf(
  masked: readonly Masked[],
  checks: readonly ProofCheck[],
  tells: readonly ReadonlySet<number>[],
  minutesOf: (probe: number) => Minutes,
): ReadonlySet<number> {
  const seen = new Set(checks.flatMap((each) => each.tells));
  const isNear = (number: number): boolean =>
    tells.some((own, probe) => own.has(number) && minutesOf(probe) <= MOST_FOR_BESIDE);
  const wanted = masked.flatMap(({ isBeside }, number) => {
    if (number > 0 && seen.has(number)) return [];
    return isBeside && !isNear(number) ? [] : [number];
  });
  return new Set(wanted);
}

/** Parts that the repair touched, and those that lost their feed while a plug was parted: the load, modules on a plug. */
function touchedBy(circuit: Circuit, load: PartId, { faults }: Pick<Possible, "faults">): ReadonlySet<PartId> {
  const own = faults.flatMap(({ target }) => (targetOf(circuit, target)?.is === "part" ? [target] : []));
  const plugged = plugsTouched(circuit, faults).flatMap((plug) =>
    Object.values(circuit.connectors.find(({ id }) => id === plug)?.cavities ?? {}).map((point) =>
      point.replace(/\.[^.]+$/, ""),
    ),
  );
  return new Set([load, ...own, ...plugged]);
}
