import { jobAbout } from "../../../core/diagnose/job.ts";
import type { Bench } from "../../../core/edit/bench.ts";
import { jobOf } from "../../../core/edit/jobOf.ts";
import { CHECK, noted, vents } from "./benches.ts";
import type { SomeCases } from "./cases.ts";

const inHand: Bench = { ...noted, batteryVolts: 12.5, job: { ...jobAbout("j1"), vehicle: "B-AD 1" } };
const VERDICT = { suspect: "W14:open", share: 0.97, time: null } as const;
const WEIGHT = { of: "M3", factor: 3, source: "records" } as const;
const JOB = jobOf(inHand)!;

/** Commands on the job in hand. */
export const JOB_CASES = {
  "begin-job": {
    good: [
      [vents, "j2", { vehicle: "B-AD 1", told: "rear vent dead" }],
      [noted, "j3"],
    ],
    bad: [
      ["job-open", inHand, "j2"],
      ["job-text", vents, "j2", { told: "x".repeat(1_001) }],
      ["job-shape", vents, ""],
    ],
  },
  "change-job": {
    good: [
      [inHand, { told: "rear vent dead" }],
      [inHand, { done: "new wire" }],
    ],
    bad: [
      ["job-none", vents, { told: "dead" }],
      ["already-so", inHand, { vehicle: "B-AD 1" }],
      ["job-text", inHand, { vehicle: "x".repeat(81) }],
      ["job-shape", inHand, { after: [{}] }],
    ],
  },
  "file-verdict": {
    good: [
      [inHand, VERDICT],
      [inHand, { ...VERDICT, suspect: "X5-6:corroded=20+W14:open" }],
      [{ ...inHand, job: { ...inHand.job!, verdict: VERDICT } }, null],
    ],
    bad: [
      ["job-none", vents, VERDICT],
      ["already-so", inHand, null],
      ["verdict-unknown", inHand, { ...VERDICT, suspect: "W99:open" }],
    ],
  },
  "put-job-away": { good: [[inHand]], bad: [["job-none", vents]] },
  "take-job-up": {
    good: [
      [vents, JOB],
      [inHand, { ...JOB, id: "j9", complaint: null, observed: { [CHECK]: "weak" }, batteryVolts: null }],
      [vents, { ...JOB, complaint: "gone", observed: { gone: "dead" } }],
    ],
    bad: [
      ["already-so", inHand, JOB],
      ["job-shape", vents, { ...JOB, told: 7 }],
      ["job-shape", vents, { ...JOB, when: ["always"] }],
    ],
  },
  "set-weight": {
    good: [
      [vents, "M3:seized", "3", "bulletin 12"],
      [{ ...vents, weights: [WEIGHT] }, "X5", "0,5", "plugs were renewed"],
      [{ ...vents, weights: [WEIGHT] }, "M3", "4", "records"],
      [vents, "X5-6:corroded=20", "2", "records"],
    ],
    bad: [
      ["weight-of", vents, "M99", "3", "records"],
      ["weight-of", vents, "M3:blown", "3", "records"],
      ["weight-limits", vents, "M3", "50", "records"],
      ["weight-limits", vents, "M3", "often", "records"],
      ["weight-limits", vents, "M3", "", "records"],
      ["weight-source", vents, "M3", "3", " "],
      ["already-so", { ...vents, weights: [WEIGHT] }, "M3", "3", "records"],
    ],
  },
  "drop-weight": { good: [[{ ...vents, weights: [WEIGHT] }, "M3"]], bad: [["weight-none", vents, "M3"]] },
} as const satisfies SomeCases;
