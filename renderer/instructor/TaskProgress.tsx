import { useMemo } from "react";
import { GRADE_WORDS as WORDS } from "../../core/base/words/grade.ts";
import { learnersIn, progressOf, readTasks } from "../../core/lesson/tasks.ts";
import { Icon } from "../panels/Icon.tsx";
import { useApp } from "../state/AppContext.tsx";
import { allMarks, ownMarks } from "./handins.ts";
import { useHandins } from "./useHandins.ts";

/** How far each learner is with the school's task list. */
export function TaskProgress() {
  const { desk, ask } = useHandins();
  const typed = useApp(({ settings }) => settings.tasks);
  const tasks = useMemo(() => readTasks(typed), [typed]);
  const marks = useMemo(() => allMarks(desk), [desk]);
  // Whoever has a hand-in on the desk would only come back.
  const onDesk = new Set(ownMarks(desk).map(({ learner }) => learner));
  if (!tasks.ok || marks.length === 0) return null;
  return (
    <section className="handins-progress" aria-label="Progress with the task list">
      <h2>Progress with the task list</h2>
      <div className="handins-scroll">
        <table className="handins-table">
          <thead>
            <tr>
              <th scope="col">{WORDS.heads[0]}</th>
              {tasks.value.map(({ task }) => (
                <th scope="col" key={task}>
                  {task}
                </th>
              ))}
              <td />
            </tr>
          </thead>
          <tbody>
            {learnersIn(marks).map((learner) => (
              <tr key={learner}>
                <th scope="row">
                  <bdi>{learner}</bdi>
                </th>
                {tasks.value.map((task) => {
                  const progress = progressOf(task, marks, learner);
                  return (
                    <td key={task.task} className={`is-${progress}`}>
                      {WORDS.progress[progress]}
                    </td>
                  );
                })}
                <td>
                  {!onDesk.has(learner) && (
                    <button
                      type="button"
                      className="icon-button is-small"
                      aria-label={`Forget what ${learner} showed`}
                      title="Forget what this learner showed"
                      onClick={() => ask({ act: "forget", learner })}
                    >
                      <Icon name="close" size={16} />
                    </button>
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}
