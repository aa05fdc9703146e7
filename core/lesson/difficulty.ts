import type { Share } from "../base/units.ts";
import type { Circuit, FunctionCheck } from "../circuit/circuit.ts";
import { feedingOf } from "../diagnose/feeding.ts";
import type { Possible } from "../diagnose/possible.ts";
import { meterReads, predictor } from "../diagnose/predict.ts";
import { complaintOf } from "../diagnose/seen.ts";
import { gapAt } from "../diagnose/spread.ts";
import type { Instrument } from "../diagnose/step.ts";
import { testPointsOf } from "../diagnose/testPoint.ts";
import { complaintNumber, triesFor } from "../diagnose/tries.ts";
import { cupboardFor, type Heard } from "./cupboard.ts";
import { DIFFICULTIES, type GradedFault } from "./graded.ts";
import { canBeProven, type Ground, groundFor, minutesToEach, suspectFor } from "./ground.ts";

/** Share of the work that goes into trying every fault; the rest grades those that make the check fail. */
const TRYING: Share = 0.3;

/**
 * The faults of a check's cupboard, graded for these instruments, easiest first. A fault counts as harder the more minutes the
 * planner needs to it, up to twice as hard where an unloaded meter reads as good everywhere.
 */
export function gradedFaults(
  circuit: Circuit,
  check: FunctionCheck,
  instruments: readonly Instrument[],
  heard?: Heard,
): readonly GradedFault[] {
  const stock = cupboardFor(circuit, check, heard && ((done) => heard(done * TRYING)));
  const words = [...new Set(stock.map(({ word }) => word))];
  const graded = words.flatMap((word, index) => {
    const own = stock.filter((each) => each.word === word).map(({ possible }) => possible);
    const ground = groundFor(circuit, complaintOf(circuit, check, word), instruments);
    heard?.(TRYING + (1 - TRYING) * ((index + 0.5) / words.length));
    return gradedOf(ground, own).map((each) => ({ ...each, word }));
  });
  const hardness = ({ minutes, misleads }: (typeof graded)[number]): number => minutes * (1 + misleads);
  graded.sort((one, other) => hardness(one) - hardness(other));
  return graded.map((each, rank) => ({
    ...each,
    difficulty: DIFFICULTIES[Math.floor((rank * DIFFICULTIES.length) / graded.length)]!,
  }));
}

function gradedOf(
  ground: Ground,
  faults: readonly Possible[],
): readonly Pick<GradedFault, "possible" | "minutes" | "misleads" | "canBeProven">[] {
  const minutes = minutesToEach(ground);
  const misleads = misleadsOf(ground);
  return faults.flatMap((possible) => {
    const suspect = suspectFor(ground, possible);
    if (suspect < 0) return [];
    const graded = { possible, minutes: minutes[suspect]!, misleads: misleads(possible) };
    return [{ ...graded, canBeProven: canBeProven(ground, suspect) }];
  });
}

/** Share of the points at which the unloaded meter reads a fault as good. */
function misleadsOf({ circuit, complaint, rows }: Ground): (possible: Possible) => Share {
  const { check } = complaint;
  const own = complaintNumber(triesFor(circuit, check), check.condition);
  const telling = new Set(
    rows.columns.flatMap(({ candidate: { at, black, instrument, conditions } }) =>
      instrument === "meter volts" && black === "battery -" && conditions.includes(own) ? [at.point] : [],
    ),
  );
  const points = testPointsOf(circuit).filter(({ point }) => telling.has(point));
  const plug = feedingOf(circuit)(check.load)?.plug;
  const unloaded = plug === undefined ? check.condition : { ...check.condition, apart: [plug] };
  const shownWith = predictor(circuit, check.condition, [unloaded], points);
  const reads = (faults: Possible["faults"]): readonly number[] => {
    const [shown] = shownWith(faults).shown;
    return points.map((_, index) => meterReads(shown!, index));
  };
  const good = reads([]);
  return ({ faults }) => {
    const misled = reads(faults).filter((volts, index) => {
      const healthy = good[index]!;
      return Math.abs(volts - healthy) <= gapAt(Math.max(volts, healthy));
    });
    return points.length === 0 ? 0 : misled.length / points.length;
  };
}
