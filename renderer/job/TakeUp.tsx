import { Popover } from "../panels/Popover.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { jobNow } from "../state/views.ts";
import { jobComplaint, jobName } from "../words/job.ts";

/** Most jobs that are offered; the library lists and searches all of them. */
const MOST_OFFERED = 8;

/** Offers the other jobs of this circuit to be taken up, open ones first; not there where there is none. */
export function TakeUp() {
  const { dispatch } = useAppStore();
  const jobs = useApp(({ open }) => open?.jobs ?? null);
  const inHand = useApp(jobNow)?.id;
  const others = (jobs ?? []).filter(({ id }) => id !== inHand).slice(0, MOST_OFFERED);
  if (others.length === 0) return null;
  return (
    <Popover label="Take up a job" className="button is-quiet is-low" place="below" button="Take up a job">
      {(close) => (
        <ul className="menu is-right job-menu">
          {others.map((row) => (
            <li key={row.id}>
              <button
                type="button"
                className="menu-item"
                onClick={() => {
                  close();
                  dispatch({ do: "open-job", circuit: row.circuit, id: row.id });
                }}
              >
                <b className="together">{jobName(row)}</b>
                <span className="menu-about">{jobComplaint(row)}</span>
              </button>
            </li>
          ))}
        </ul>
      )}
    </Popover>
  );
}
