import type { Minutes, Volts } from "../base/units.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { measuredScale } from "../live/restVolts.ts";
import { openedBeforehand } from "./beforehand.ts";
import { probeFor } from "./candidates.ts";
import { clashesOf } from "./clash.ts";
import { beforeDrain, drainWords, isDrain } from "./drain.ts";
import { type Evidence, weighed } from "./evidence.ts";
import { pairsNeeded } from "./jointly.ts";
import { detoursOf } from "./plan/detour.ts";
import { distinct } from "./plan/distinct.ts";
import { tellsOf } from "./plan/information.ts";
import { linear } from "./plan/linear.ts";
import { planner } from "./plan/next.ts";
import { allLiving } from "./plan/problem.ts";
import { probeText, type Reading } from "./reading.ts";
import { readingFits } from "./readingFits.ts";
import { repairsOf } from "./repairs.ts";
import { type Rows, rowsFor } from "./rows.ts";
import { mayBeProbed } from "./scope.ts";
import type { Clash, Cleared, ProbeOrder, Progress, Suspect } from "./step.ts";
import { stepsOf } from "./stepsOf.ts";
import { type Observation, type Suspected, suspectsFor } from "./suspects.ts";
import { triesFor } from "./tries.ts";
import { PLAIN_WEIGHING, type Weighing, weighedBy } from "./weighing.ts";

/** What is known of a job beside the circuit and the complaint. */
export interface Known {
  /** What was seen of other function checks. */
  readonly others?: readonly Observation[];
  /** What was read, in the order it was. */
  readonly readings?: readonly Reading[];
  /** Volts of the battery at rest, measured; the drawing's where nobody did. */
  readonly batteryVolts?: Volts | null;
  /** What changes the starting weights. */
  readonly weighing?: Weighing;
  /** The time there is. */
  readonly minutes?: Minutes;
  /** Minutes that a part ordered in vain would cost. */
  readonly wrongPartMinutes?: Minutes;
  /** Whether it is asked what each row would cost if it were taken first. */
  readonly wantsDetours?: boolean;
}

/** Share from which a repair counts as certain. */
const CERTAIN = 0.95;
/** The same where readings clash: one of them is wrong, and it may be the one that counts. */
const CERTAIN_DESPITE = 0.995;
/** Readings of one probe after which it is not offered again. */
const MOST_REPEATS = 2;
/** Minutes that a wrong part costs where nobody says: ordering, fitting, undoing (a guess). */
const WRONG_PART_MINUTES: Minutes = 60;
/** Below this share, a suspect that something contradicts is cleared. */
const CLEARED_BELOW = 0.01;
/** A reading contradicts a suspect that it fits this much worse than the best. */
const CONTRADICTS = 0.05;
/** Suspects that are planned for; the others are too unlikely to count. */
const MOST_PLANNED = 400;
const MOST_ROWS = 24;

/** The answer where nothing is complained of, or nothing may be probed. */
export const NO_ORDER: ProbeOrder = {
  complaint: "",
  suspects: [],
  cleared: [],
  clearedBy: [],
  elsewhere: 0,
  progress: "none",
  before: [],
  beforehand: [],
  expectedMinutes: 0,
  detours: [],
  clashes: [],
  jointly: [],
  steps: [],
  minutes: 0,
};

/**
 * The probe order for a complaint, with all that was seen and read; the first row is the one to take next. It is
 * `NO_ORDER` where `mayBeProbed` refuses the circuit.
 */
export function probeOrder(circuit: Circuit, complaint: Observation, known: Known = {}): ProbeOrder {
  if (!mayBeProbed(circuit).ok) return NO_ORDER;
  const { condition } = complaint.check;
  const { suspects, cleared, evidence, readings, clashes, jointly } = suspicion(circuit, complaint, known);
  const planned = suspects.slice(0, MOST_PLANNED);
  const tries = triesFor(circuit, complaint.check);
  const rows = rowsFor(circuit, condition, planned, tries, readings);
  const tells = tellsOf(rows.problem);
  const pool = distinct(rows.problem, unread(rows, readings, clashes));
  const living = allLiving(rows.problem);
  const next = planned.length < 2 ? null : planner(rows.problem, tells, pool)(living, rows.stand);
  const list = linear(rows.problem, tells, living, rows.stand, pool, {
    rows: MOST_ROWS,
    minutes: known.minutes ?? Number.POSITIVE_INFINITY,
    first: next?.probe ?? null,
  });
  const steps = stepsOf(circuit, planned, rows, list, tries);
  const expectedMinutes = next?.expected ?? 0;
  const numbers = list.map(({ probe }) => probe);
  const detours =
    known.wantsDetours && next ? detoursOf(rows.problem, tells, living, rows.stand, pool, next, numbers) : [];
  return {
    complaint: complaintWords(complaint),
    suspects,
    cleared: cleared.map(({ suspect }) => suspect),
    clearedBy: cleared,
    elsewhere: evidence.elsewhere,
    progress: progressOf(
      suspects,
      steps.length,
      clashes.length > 0,
      expectedMinutes,
      known.wrongPartMinutes ?? WRONG_PART_MINUTES,
    ),
    before: beforeFirst(circuit, complaint),
    beforehand: tries.isAsleep ? openedBeforehand(circuit).map(({ id }) => id) : [],
    expectedMinutes,
    detours,
    clashes,
    jointly,
    steps,
    minutes: steps.reduce((sum, step) => sum + step.minutes, 0),
  };
}

/** The complaint as it is printed: "Middle vent opens: dead". */
export function complaintWords({ check, word, sleeping }: Observation): string {
  return typeof sleeping === "number" ? drainWords(sleeping) : `${check.label}: ${word.replaceAll("-", " ")}`;
}

/** What to do and to heed before the first row. */
export function beforeFirst(circuit: Circuit, { sleeping }: Observation): readonly string[] {
  return typeof sleeping === "number" ? beforeDrain(circuit, sleeping) : [];
}

/** Suspects as they stand after all that was seen and read. */
export interface Suspicion {
  /** Likeliest first. */
  readonly suspects: readonly Suspect[];
  readonly cleared: readonly Cleared[];
  readonly evidence: Evidence;
  /** The readings that count; what does not fit the drawing any more is struck. */
  readonly readings: readonly Reading[];
  /** Readings that cannot be right together with one fault. */
  readonly clashes: readonly Clash[];
  /** Pairs that share a cause and explain all of them, likeliest first. */
  readonly jointly: readonly string[];
}

/** Who is suspected of a complaint, weighed by what was seen and read. */
export function suspicion(circuit: Circuit, complaint: Observation, known: Known): Suspicion {
  const readings = (known.readings ?? []).map(
    (reading): Reading => (readingFits(circuit, reading) ? reading : { ...reading, standing: "struck" }),
  );
  const others = known.others ?? [];
  const { weighing = PLAIN_WEIGHING } = known;
  const withWeight = (each: Suspected): Weighted => {
    const { factor, notes } = weighedBy(circuit, each.possible, weighing);
    return { suspected: { ...each, weight: each.weight * factor }, notes };
  };
  const singles = suspectsFor(circuit, complaint, others).map(withWeight);
  const scale = 1 / measuredScale(circuit, known.batteryVolts ?? null);
  const evidenceOf = (weighted: readonly Weighted[]): Evidence =>
    weighed(circuit, complaint.check.condition, plain(weighted), readings, scale, isDrain(complaint.check, circuit));
  const single = evidenceOf(singles);
  const clashes = clashesOf(single, readings);
  const { pairs, explaining } = pairsNeeded({ circuit, complaint, others, readings, scale }, plain(singles), clashes);
  const weighted = [...singles, ...pairs.map(withWeight)];
  const evidence = pairs.length === 0 ? single : evidenceOf(weighted);
  const jointly = explaining.map(({ possible }) => possible.title);
  return { ...sorted(weighted, evidence, readings), evidence, readings, clashes, jointly };
}

/** A suspect with why it weighs otherwise than guessed. */
interface Weighted {
  readonly suspected: Suspected;
  readonly notes: readonly string[];
}

function plain(weighted: readonly Weighted[]): readonly Suspected[] {
  return weighted.map(({ suspected }) => suspected);
}

interface Sorted {
  readonly suspects: readonly Suspect[];
  readonly cleared: readonly Cleared[];
}

/** Suspects, likeliest first; apart from them those that something seen or read has ruled out. */
function sorted(weighted: readonly Weighted[], evidence: Evidence, readings: readonly Reading[]): Sorted {
  const best = evidence.fits.map((fits) => Math.max(...fits, Number.MIN_VALUE));
  const whole = weighted.map(({ suspected: each, notes }, index) => {
    const suspect = suspectOf(each, evidence.shares[index]!, notes);
    const by = readings.findIndex(
      ({ standing }, reading) =>
        standing === "taken" && evidence.fits[reading]![index]! < CONTRADICTS * Math.min(1, best[reading]!),
    );
    const isAgainst = each.against.length > 0 || by >= 0;
    return { suspect, by: by + 1, isCleared: isAgainst && suspect.probability < CLEARED_BELOW };
  });
  whole.sort((one, other) => other.suspect.probability - one.suspect.probability);
  return {
    suspects: whole.filter(({ isCleared }) => !isCleared).map(({ suspect }) => suspect),
    cleared: whole.filter(({ isCleared }) => isCleared).map(({ suspect, by }) => ({ suspect, by })),
  };
}

function suspectOf(
  { possible: { id, faults, title, repair } }: Suspected,
  probability: number,
  notes: readonly string[],
): Suspect {
  return { id, faults, title, repairGroup: repair, probability, notes };
}

/**
 * Rows by number that are worth reading: not those of which every setting was read and nothing speaks against it. What
 * clashes may be read a second time.
 */
function unread(
  { columns, conditions }: Rows,
  readings: readonly Reading[],
  clashes: readonly Clash[],
): readonly number[] {
  const times = new Map<string, number>();
  readings.forEach((reading, index) => {
    if (reading.standing !== "taken") return;
    const key = probeText(reading);
    const isClashing = clashes.some((numbers) => numbers.includes(index + 1));
    times.set(key, (times.get(key) ?? 0) + (isClashing ? 1 : MOST_REPEATS));
  });
  return columns.flatMap(({ candidate }, number) => {
    const isRead = candidate.conditions.every((condition) => {
      const key = probeText(probeFor(candidate, conditions[condition]!));
      return (times.get(key) ?? 0) >= MOST_REPEATS;
    });
    return isRead ? [] : [number];
  });
}

function progressOf(
  suspects: readonly Suspect[],
  rows: number,
  isClashing: boolean,
  expected: Minutes,
  wrongPart: Minutes,
): Progress {
  if (suspects.length === 0) return "none";
  const leader = repairsOf(suspects)[0]!.share;
  if (leader >= (isClashing && rows > 0 ? CERTAIN_DESPITE : CERTAIN)) return "certain";
  if (rows === 0) return "tied";
  return expected > (1 - leader) * wrongPart ? "order-now" : "open";
}
