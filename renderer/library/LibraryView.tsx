import { AttemptList } from "../learner/AttemptList.tsx";
import { useApp } from "../state/AppContext.tsx";
import { CircuitList } from "./CircuitList.tsx";
import { Deference } from "./Deference.tsx";
import { FirstStart } from "./FirstStart.tsx";
import { JobList } from "./JobList.tsx";
import { LibraryBar } from "./LibraryBar.tsx";
import { Samples } from "./Samples.tsx";
import { useReturning } from "./useReturning.ts";

/** The library: circuits and samples; on a first start, what the program is for. */
export function LibraryView() {
  const isRead = useApp(({ shelf }) => shelf.isRead);
  const trouble = useApp(({ shelf }) => shelf.trouble);
  const isFirst = useApp(
    ({ shelf, attempts }) =>
      shelf.isRead &&
      shelf.count === 0 &&
      shelf.search === "" &&
      shelf.trouble === null &&
      attempts.rows.length + attempts.deleted.length === 0,
  );
  useReturning();
  return (
    <div className="library">
      <LibraryBar />
      <main className={isFirst ? "library-body is-first" : "library-body"}>
        {isFirst ? (
          <FirstStart />
        ) : (
          isRead && (
            <div className="library-columns">
              <div className="library-own">
                {trouble === null && <JobList />}
                {trouble === null && <AttemptList />}
                <CircuitList trouble={trouble} />
              </div>
              <div className="library-samples">
                <Samples title="Start a lesson" note="scenes, questions and hidden faults" are="lessons" />
                <Samples title="Samples" note="open one and throw its switches" are="vehicles" />
              </div>
            </div>
          )
        )}
        <Deference />
      </main>
    </div>
  );
}
