import type { ConnectorId } from "../base/ids.ts";
import { DIAGNOSE_SENTENCES as SAY } from "../base/words/diagnose.ts";
import type { Circuit, Condition, FunctionCheck } from "../circuit/circuit.ts";
import type { Fault } from "../live/fault.ts";
import { targetOf } from "../live/fault.ts";
import { Rig } from "../live/rig.ts";
import type { Masked } from "./masked.ts";
import { triedOn, tryOut } from "./suspects.ts";

/** A function check to be repeated after the repair, and why. */
export interface ProofCheck {
  readonly check: FunctionCheck;
  readonly why: string;
  /** Numbers of the masked states in which it does not work. */
  readonly tells: readonly number[];
}

/** A load whose level the work moves by this share of the good circuit's shares something with what was mended (a guess). */
const SHARES_FROM = 0.05;

/**
 * The checks to repeat: every position of the complaint's load, all that the fault or a parted plug moves, and all in
 * which something that is masked shows.
 */
export function proofChecksOf(
  circuit: Circuit,
  complaint: FunctionCheck,
  faults: readonly Fault[],
  masked: readonly Masked[],
): readonly ProofCheck[] {
  const healthy = new Rig(circuit);
  const good = circuit.checks.map((check) => tryOut(healthy, check).doing);
  const verdicts = masked.map(({ circuit: own, faults: planted }) => {
    const rig = new Rig(own, planted);
    return circuit.checks.map((check, index) => triedOn(rig, check, good[index]!).verdict);
  });
  const broken = new Rig(circuit, faults);
  const parted = plugsTouched(circuit, faults);
  return circuit.checks.flatMap((check, index): readonly ProofCheck[] => {
    const tells = verdicts.flatMap((own, number) => (own[index] !== "works" ? [number] : []));
    const moved = (rig: Rig, condition: Condition): boolean => {
      const { level, melted } = triedOn(rig, { ...check, condition }, good[index]!);
      return melted || Math.abs(1 - (level ?? 0)) > SHARES_FROM;
    };
    const isOff = check.expect === "off";
    const shares = !isOff && moved(broken, check.condition);
    const plug = parted.find((id) => !isOff && moved(healthy, apart(check.condition, id)));
    const why =
      check.load === complaint.load
        ? SAY.sameLoad
        : shares
          ? SAY.sharesPath
          : plug !== undefined
            ? SAY.sharesPlug(plug)
            : tells.length > 0
              ? SAY.showsMasked
              : null;
    return why === null ? [] : [{ check, why, tells }];
  });
}

function apart(condition: Condition, plug: ConnectorId): Condition {
  return { ...condition, apart: [...(condition.apart ?? []), plug] };
}

/** Plugs that the repair parts: those with a faulty place, and those of a faulty part. */
export function plugsTouched(circuit: Circuit, faults: readonly Fault[]): readonly ConnectorId[] {
  const plugs = faults.flatMap(({ target: id }) => {
    const target = targetOf(circuit, id);
    if (target?.is === "cavity") return [target.connector];
    if (target?.is !== "part") return [];
    return circuit.connectors.flatMap(({ id: plug, cavities = {} }) =>
      Object.values(cavities).some((point) => point.startsWith(`${id}.`)) ? [plug] : [],
    );
  });
  return [...new Set(plugs)];
}
