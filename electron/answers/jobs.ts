import { ok } from "../../core/base/outcome.ts";
import { withLibrary } from "./circuits.ts";
import type { AnswersOf } from "./host.ts";

/** What is answered about jobs. */
export const JOB_ANSWERS: AnswersOf<"jobs.list" | "jobs.read" | "jobs.remove" | "jobs.restore"> = {
  "jobs.list": (asked, host) => withLibrary(host, ({ jobs }) => jobs.list(asked)),

  "jobs.read": (place, host) =>
    withLibrary(host, async ({ jobs }) => {
      const job = await jobs.read(place);
      return job.ok ? ok({ job: job.value }) : job;
    }),

  "jobs.remove": (place, host) => withLibrary(host, ({ jobs }) => jobs.remove(place, host.now())),

  "jobs.restore": (place, host) => withLibrary(host, ({ jobs }) => jobs.restore(place)),
};
