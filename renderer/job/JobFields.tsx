import { CIRCUMSTANCES, type JobAbout } from "../../core/diagnose/job.ts";
import { changeJob } from "../../core/edit/commands/changeJob.ts";
import { putJobAway } from "../../core/edit/commands/putJobAway.ts";
import { whenWith } from "../../core/edit/jobFields.ts";
import { Toggle } from "../panels/Toggle.tsx";
import { ValueField } from "../panels/ValueField.tsx";
import { useAppStore } from "../state/AppContext.tsx";
import { useMake } from "../state/useMake.ts";
import { CIRCUMSTANCE_TITLES } from "../words/job.ts";
import { JobText } from "./JobText.tsx";
import { JobVerdict } from "./JobVerdict.tsx";
import { TakeUp } from "./TakeUp.tsx";

/** All that is said of the job in hand, each typed in place, and what can be done with the job as a whole. */
export function JobFields({ job }: { readonly job: JobAbout }) {
  const { dispatch } = useAppStore();
  const make = useMake();
  return (
    <>
      <div className="job-fields">
        <ValueField
          label="Vehicle"
          value={job.vehicle}
          usual="plate or fleet number"
          change={(vehicle) => (bench) => changeJob(bench, { vehicle: vehicle.trim() })}
        />
        <JobText label="What was told" value={job.told} usual="rear vent dead since the car wash" field="told" />
        <fieldset className="job-when">
          <legend className="value-label small">Shows when</legend>
          {CIRCUMSTANCES.map((each) => (
            <Toggle
              key={each}
              words={CIRCUMSTANCE_TITLES[each]}
              isOn={job.when.includes(each)}
              onChange={(isOn) => make((bench) => changeJob(bench, { when: whenWith(job.when, each, isOn) }))}
            />
          ))}
        </fieldset>
        <JobVerdict job={job} />
        <JobText label="What was done" value={job.done} usual="new wire from X6 to SP1" field="done" />
      </div>
      <div className="value-acts job-acts">
        <button type="button" className="button is-low" onClick={() => make(putJobAway)}>
          Put the job away
        </button>
        <TakeUp />
        <button type="button" className="button is-quiet is-low" onClick={() => dispatch({ do: "save-job" })}>
          Save to a file
        </button>
      </div>
    </>
  );
}
