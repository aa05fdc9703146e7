import { remember } from "../base/memo.ts";
import { type Outcome, ok, refuse } from "../base/outcome.ts";
import type { Volts } from "../base/units.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { liveOf } from "../live/live.ts";
import { kindOf } from "../parts/catalogue.ts";
import { isHighVoltage } from "../trade/limits.ts";

/**
 * The circuit itself, where a probe may be led into it at all. Refuses `over-60-volts` where its nominal volts, a source's
 * or what stands between two of its points at rest (batteries in series) is more than 60 V DC: work for licensed people.
 */
export const mayBeProbed: (circuit: Circuit) => Outcome<Circuit> = remember((circuit: Circuit): Outcome<Circuit> => {
  const written = [circuit.nominalVolts, ...sourceVolts(circuit)];
  const volts = written.find(isHighVoltage) ?? spanAtRest(circuit);
  return isHighVoltage(volts) ? refuse("over-60-volts", { volts: Math.round(volts) }) : ok(circuit);
});

/** Volts that batteries and alternators were given. */
function sourceVolts({ parts }: Circuit): readonly Volts[] {
  return parts.flatMap(({ kind, settings }) => {
    const volts = settings?.volts;
    return kindOf(kind)?.role === "source" && typeof volts === "number" ? [volts] : [];
  });
}

/** Volts between the highest and the lowest point with everything at rest. */
function spanAtRest(circuit: Circuit): Volts {
  let highest: Volts = 0;
  let lowest: Volts = 0;
  for (const { volts } of liveOf(circuit, {}).points.values()) {
    highest = Math.max(highest, volts ?? 0);
    lowest = Math.min(lowest, volts ?? 0);
  }
  return highest - lowest;
}
