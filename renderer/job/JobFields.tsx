import { CIRCUMSTANCES } from "../../core/diagnose/comesAndGoes.ts";
import type { JobAbout } from "../../core/diagnose/job.ts";
import { changeJob } from "../../core/edit/commands/changeJob.ts";
import { putJobAway } from "../../core/edit/commands/putJobAway.ts";
import { setWhen } from "../../core/edit/commands/setWhen.ts";
import { Toggle } from "../panels/Toggle.tsx";
import { ValueField } from "../panels/ValueField.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { useMake } from "../state/useMake.ts";
import { whenNow } from "../state/views.ts";
import { CIRCUMSTANCE_TITLES } from "../words/job.ts";
import { JobText } from "./JobText.tsx";
import { JobVerdict } from "./JobVerdict.tsx";
import { TakeUp } from "./TakeUp.tsx";

/** All that is said of the job in hand, each typed in place, and what can be done with the job as a whole. */
export function JobFields({ job }: { readonly job: JobAbout }) {
  const { dispatch } = useAppStore();
  const make = useMake();
  const when = useApp(whenNow);
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
              isOn={when.includes(each)}
              onChange={(isOn) => make((bench) => setWhen(bench, each, isOn))}
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
