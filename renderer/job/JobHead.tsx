import { useState } from "react";
import { isSolved } from "../../core/diagnose/job.ts";
import { beginJob } from "../../core/edit/commands/beginJob.ts";
import { Icon } from "../panels/Icon.tsx";
import { useApp } from "../state/AppContext.tsx";
import { useMake } from "../state/useMake.ts";
import { jobNow } from "../state/views.ts";
import { jobName } from "../words/job.ts";
import { JobFields } from "./JobFields.tsx";
import { TakeUp } from "./TakeUp.tsx";

/** Which job is in hand, over the views it is worked on in: its vehicle and what was told; opened, all that is said of it. */
export function JobHead() {
  const make = useMake();
  const job = useApp(jobNow);
  const [opened, setOpened] = useState<string | null>(null);
  if (!job)
    return (
      <section className="job-head" aria-label="Job">
        <div className="job-none small">
          <span>No job in hand.</span>
          <button
            type="button"
            className="button is-quiet is-low"
            onClick={() => {
              const id = crypto.randomUUID();
              make((bench) => beginJob(bench, id));
              setOpened(id);
            }}
          >
            Begin a job
          </button>
          <TakeUp />
        </div>
      </section>
    );
  const isOpened = opened === job.id;
  const stands = isSolved(job) ? "done" : job.verdict ? "verdict filed" : "open";
  return (
    <section className="job-head" aria-label="Job">
      <button
        type="button"
        className="job-line"
        aria-expanded={isOpened}
        onClick={() => setOpened(isOpened ? null : job.id)}
      >
        <b>
          <bdi>{jobName(job)}</bdi>
        </b>
        <span className="job-stands small">{stands}</span>
        <Icon name={isOpened ? "up" : "down"} size={16} />
        {job.told !== "" && !isOpened && <span className="job-told small">{job.told}</span>}
      </button>
      {isOpened && <JobFields job={job} />}
    </section>
  );
}
