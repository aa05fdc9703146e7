import { JOB_SENTENCES as SAY } from "../base/words/job.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { wiringHash } from "../circuit/wiringHash.ts";
import type { Job } from "./job.ts";
import { misfitsOf } from "./jobFits.ts";

/**
 * What is to be said of a job from a file before it goes on with a circuit, in sentences; none where all of it fits. `from` is
 * the circuit that the job was noted on.
 */
export function misfitWords(
  circuit: Circuit,
  job: Job,
  from: { readonly title: string; readonly hash: string } | null,
): readonly string[] {
  const { readings, checks, verdict } = misfitsOf(circuit, job);
  const isOther = from !== null && from.hash !== wiringHash(circuit);
  const points = readings.map((number) => `${number} (${job.readings[number - 1]!.red})`);
  return [
    ...(isOther && from.title !== circuit.title ? [SAY.otherCircuit(from.title, circuit.title)] : []),
    ...(isOther && from.title === circuit.title ? [SAY.otherVersion(circuit.title)] : []),
    ...(readings.length > 0 ? [SAY.strayReadings(points.join(", "), readings.length)] : []),
    ...(checks.length > 0 ? [SAY.strayChecks(checks.join(", "))] : []),
    ...(verdict === null ? [] : [SAY.strayVerdict(verdict)]),
  ];
}
