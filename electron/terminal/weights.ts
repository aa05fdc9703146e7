import type { Circuit } from "../../core/circuit/circuit.ts";
import { wiringHash } from "../../core/circuit/wiringHash.ts";
import { isSolved } from "../../core/diagnose/job.ts";
import type { WeighingTyped } from "../asked.ts";
import { readJobFile } from "../jobFile.ts";
import { need } from "./console.ts";

/** What may be typed of weights: factors, and job files of earlier jobs. */
export interface WeightsTyped {
  readonly weigh?: readonly string[];
  readonly shop?: readonly string[];
  readonly solved?: readonly string[];
}

/** The weights typed, with the verdicts out of the earlier jobs: of those that are done and were on this very wiring. */
export async function weighed(circuit: Circuit, typed: WeightsTyped): Promise<WeighingTyped> {
  const files = await Promise.all((typed.solved ?? []).map(async (path) => need(await readJobFile(path))));
  const solved = files.flatMap(({ circuit: on, job }) =>
    isSolved(job) && job.verdict && on.hash === wiringHash(circuit) ? [job.verdict.suspect] : [],
  );
  return { weigh: typed.weigh ?? [], shop: typed.shop ?? [], solved };
}
