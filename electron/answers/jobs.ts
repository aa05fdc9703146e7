import { ok } from "../../core/base/outcome.ts";
import { jobAt, listJobs, moveJob } from "../store/jobs.ts";
import { withStore } from "./circuits.ts";
import type { AnswersOf } from "./host.ts";

/** What is answered about jobs. */
export const JOB_ANSWERS: AnswersOf<"jobs.list" | "jobs.read" | "jobs.remove" | "jobs.restore"> = {
  "jobs.list": (asked, host) => withStore(host, (store) => ok(listJobs(store, asked))),

  "jobs.read": (place, host) =>
    withStore(host, (store) => {
      const job = jobAt(store, place);
      return job.ok ? ok({ job: job.value }) : job;
    }),

  "jobs.remove": (place, host) => withStore(host, (store) => moveJob(store, place, host.now())),

  "jobs.restore": (place, host) => withStore(host, (store) => moveJob(store, place, null)),
};
