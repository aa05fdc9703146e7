import { assert, type Outcome, ok, refuse } from "../base/outcome.ts";
import type { Circuit, Condition, FunctionCheck } from "../circuit/circuit.ts";
import { finenessOf } from "../diagnose/evidence.ts";
import { meltedIn } from "../diagnose/predict.ts";
import { figureOf, type Probe, type Shows, showing } from "../diagnose/reading.ts";
import { readWith } from "../diagnose/reads.ts";
import type { Fineness } from "../diagnose/spread.ts";
import { doingsIn } from "../live/doing.ts";
import type { Fault } from "../live/fault.ts";
import { type Verdict, WEAK_FROM, WORKS_FROM } from "../live/judge.ts";
import { isIdle, levelOf, workOf } from "../live/live.ts";
import { Rig } from "../live/rig.ts";
import { reach } from "../live/settle.ts";
import { kindOf } from "../parts/catalogue.ts";
import { verdictWith } from "./cupboard.ts";
import { complaintIn, type Exercise, type Hidden } from "./exercise.ts";
import { plantOf } from "./plant.ts";
import { faultsAfter, type Renewed } from "./renewed.ts";

/** What a load can be seen or heard to do. */
export interface LoadSeen {
  readonly part: string;
  /** "still", "weak", or what a load does that works: "forward", "on", "flashing". */
  readonly does: string;
}

/**
 * The vehicle of an exercise: it can be measured, looked at and thrown, and nobody can ask it what is wrong. The fault is in
 * no field of it, so that neither a log nor a store can show it. A question may say which parts were renewed by now.
 */
export interface Vehicle {
  /** What a probe shows, to the last figure of the meter, after the complaint was tried once. */
  readonly shows: (probe: Probe, renewed?: readonly Renewed[]) => Shows;
  /** How a function check comes out. */
  readonly tries: (check: FunctionCheck, renewed?: readonly Renewed[]) => Verdict;
  /** What the loads do in a condition. */
  readonly loads: (condition: Condition, renewed?: readonly Renewed[]) => readonly LoadSeen[];
  /** Whether a repair is the right one, and what was wrong: to be asked when the verdict is filed. */
  readonly tells: (suspect: string) => Told;
}

/** What is told once the verdict is filed. */
export interface Told {
  /** Whether the repair that the verdict asks for mends the vehicle. */
  readonly isRight: boolean;
  /** What was wrong, in words. */
  readonly was: string;
}

/**
 * The vehicle with the hidden fault in it. Refuses `exercise-version` where this program cannot plant that fault in this
 * circuit, or where it does not bring the complaint about: the exercise was made by another version of the two.
 */
export function vehicleOf(exercise: Exercise, hidden: Hidden): Outcome<Vehicle> {
  const { circuit } = exercise;
  const planted = plantOf(circuit, hidden.fault);
  if (!planted.ok) return refuse("exercise-version");
  const { faults, repair, title } = planted.value;
  const { check, word } = complaintIn(exercise);
  if (verdictWith(circuit, check, faults) !== word) return refuse("exercise-version");
  const whole: Ailing = { faults, tried: check.condition };
  const now = (renewed: readonly Renewed[] = []): Ailing =>
    renewed.length === 0 ? whole : { faults: faultsAfter(circuit, faults, check.condition, renewed), tried: null };
  return ok({
    shows: (probe, renewed) =>
      quietly(() => {
        const { faults, tried } = now(renewed);
        return asShown(circuit, probe, readWith(circuit, faults, tried, probe).shows);
      }),
    tries: (asked, renewed) => quietly(() => verdictWith(circuit, asked, now(renewed).faults)),
    loads: (condition, renewed) => quietly(() => loadsIn(circuit, now(renewed), condition)),
    tells: (suspect) => {
      const named = plantOf(circuit, suspect);
      return { isRight: named.ok && named.value.repair === repair, was: title };
    },
  });
}

/** A broken invariant names what it broke on, and that may be the fault: it is told without. */
function quietly<T>(solve: () => T): T {
  let value: { readonly is: T } | null = null;
  try {
    value = { is: solve() };
  } catch {}
  assert(value !== null, "the vehicle of an exercise cannot be solved");
  return value.is;
}

/** Decimals of a meter's last figure: hundredths of a volt or an amp, tenths of a millivolt or an ohm. */
const DIGITS = { volts: 2, millivolts: 4, tenths: 4, ohms: 1, amps: 2 } as const satisfies Record<Fineness, number>;

function asShown(circuit: Circuit, probe: Probe, shows: Shows): Shows {
  const figure = figureOf(shows);
  if (figure === null) return shows;
  return showing(probe.instrument, Number(figure.toFixed(DIGITS[finenessOf(circuit, probe)])) + 0, shows.word);
}

/** What ails a vehicle, and the complaint that was tried once before; null where what melted then is among the faults. */
interface Ailing {
  readonly faults: readonly Fault[];
  readonly tried: Condition | null;
}

function loadsIn(circuit: Circuit, { faults, tried }: Ailing, condition: Condition): readonly LoadSeen[] {
  const rig = new Rig(circuit, faults);
  const melted = tried === null ? [] : meltedIn(rig, tried);
  reach(rig, condition, undefined, melted);
  const good = workOf(circuit, condition);
  return [...doingsIn(rig)].flatMap(([part, doing]) => {
    if (kindOf(rig.network.parts.get(part)!.part.kind)?.role !== "load") return [];
    const level = isIdle(doing) ? 0 : levelOf(doing, good.get(part) ?? doing);
    const does = level < WEAK_FROM ? "still" : level < WORKS_FROM ? "weak" : doing.doing;
    return [{ part, does }];
  });
}
