import type { JobRow } from "../../schemas/calls.ts";
import { Icon } from "../panels/Icon.tsx";
import { useAppStore } from "../state/AppContext.tsx";
import { versionKey } from "../state/shelf.ts";
import { jobComplaint, jobName, jobStands } from "../words/job.ts";
import { shownTitle, sinceWords } from "../words/library.ts";
import { CircuitPicture } from "./CircuitPicture.tsx";

/** One job of the library: its complaint, vehicle and circuit, and how far it is. */
export function JobEntry({ row }: { readonly row: JobRow }) {
  const { dispatch } = useAppStore();
  const { circuit, id } = row;
  return (
    <li className="entry">
      <button type="button" className="entry-open is-job" onClick={() => dispatch({ do: "open-job", circuit, id })}>
        <CircuitPicture picture={versionKey(circuit, row.version)} />
        <span className="entry-words">
          <b title={jobComplaint(row)}>
            <bdi>{jobComplaint(row)}</bdi>
          </b>
          <span className="small entry-vehicle">
            <bdi>{jobName(row)}</bdi>, {shownTitle(row.title)}
          </span>
          <span className="caption figures">{jobStands(row)}</span>
        </span>
        <span className="entry-since caption">{sinceWords(row.edited, Date.now())}</span>
        <Icon name="onward" />
      </button>
      <button
        type="button"
        className="icon-button entry-bin"
        aria-label={`Delete the job ${jobName(row)}`}
        title="Delete the job"
        onClick={() => dispatch({ do: "remove-job", circuit, id })}
      >
        <Icon name="bin" size={16} />
      </button>
    </li>
  );
}
