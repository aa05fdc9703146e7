import type { Outcome } from "../../core/base/outcome.ts";
import { CIRCUMSTANCES } from "../../core/diagnose/comesAndGoes.ts";
import { jobAbout } from "../../core/diagnose/job.ts";
import { possibleFaults } from "../../core/diagnose/possible.ts";
import type { Bench } from "../../core/edit/bench.ts";
import { beginJob } from "../../core/edit/commands/beginJob.ts";
import { changeJob } from "../../core/edit/commands/changeJob.ts";
import { fileVerdict } from "../../core/edit/commands/fileVerdict.ts";
import { putJobAway } from "../../core/edit/commands/putJobAway.ts";
import { takeJobUp } from "../../core/edit/commands/takeJobUp.ts";
import type { Edit } from "../../core/edit/edit.ts";

interface Draws {
  readonly number: () => number;
  readonly one: <T>(list: readonly T[]) => T;
}

/** Commands on the job in hand by lot. */
export const JOBS_BY_LOT = {
  "begin-job": (bench: Bench, { number }: Draws): Outcome<Edit> =>
    beginJob(bench, `j${number() % 5}`, { vehicle: `B-${number() % 9}` }),
  "change-job": (bench: Bench, { number, one }: Draws): Outcome<Edit> =>
    changeJob(bench, one([{ told: `told ${number() % 4}` }, { done: "new wire" }])),
  "file-verdict": (bench: Bench, { number, one }: Draws): Outcome<Edit> => {
    const suspect = one(possibleFaults(bench.circuit));
    if (!suspect || number() % 4 === 0) return fileVerdict(bench, null);
    return fileVerdict(bench, { suspect: suspect.id, share: 0.5, time: null });
  },
  "put-job-away": (bench: Bench): Outcome<Edit> => putJobAway(bench),
  "take-job-up": (bench: Bench, { number, one }: Draws): Outcome<Edit> => {
    const check = bench.circuit.checks.length === 0 ? null : one(bench.circuit.checks).id;
    const about = { ...jobAbout(`k${number() % 5}`), vehicle: `M-${number() % 9}` };
    const observed = check === null ? {} : ({ [check]: "dead" } as const);
    return takeJobUp(bench, {
      ...about,
      complaint: check,
      observed,
      readings: [],
      batteryVolts: 12,
      when: [one(CIRCUMSTANCES)],
    });
  },
} as const;

/** What these may be refused for. */
export const JOBS_REFUSED = ["job-open", "job-none"];
