import { Empty } from "../panels/Empty.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { jobName } from "../words/job.ts";
import { deletedWords } from "../words/library.ts";
import { DeletedList } from "./DeletedList.tsx";
import { JobEntry } from "./JobEntry.tsx";

/** The jobs of the library, open ones first, or those that a search found. */
export function JobList() {
  const jobs = useApp(({ shelf }) => shelf.jobs);
  const search = useApp(({ shelf }) => shelf.search);
  const isSearching = search.trim() !== "";
  const open = jobs.filter(({ isSolved }) => !isSolved).length;
  if (isSearching && jobs.length === 0) return <DeletedJobs />;
  return (
    <section className="library-jobs">
      <h2 className="section-title">
        Jobs
        <span className="caption figures">
          {isSearching ? `${jobs.length} found` : jobs.length > 0 && `${open} open`}
        </span>
      </h2>
      {jobs.length === 0 && (
        <Empty title="No job yet">
          Open a circuit and press Begin a job: vehicle, complaint and readings then stand here until they are done.
        </Empty>
      )}
      <ul className="entries">
        {jobs.map((row) => (
          <JobEntry key={`${row.circuit} ${row.id}`} row={row} />
        ))}
      </ul>
      <DeletedJobs />
    </section>
  );
}

/** Jobs that were deleted and can still be brought back. */
function DeletedJobs() {
  const { dispatch } = useAppStore();
  const deleted = useApp(({ shelf }) => shelf.deletedJobs);
  const things = deleted.map((row) => ({
    key: `${row.circuit} ${row.id}`,
    name: jobName(row),
    about: deletedWords(row, Date.now()),
    restore: () => dispatch({ do: "restore-job", circuit: row.circuit, id: row.id }),
  }));
  return <DeletedList title="Deleted jobs" things={things} />;
}
