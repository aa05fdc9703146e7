import { useMemo } from "react";
import { GRADE_WORDS as WORDS } from "../../core/base/words/grade.ts";
import { learnersIn, marksOf, progressOf, readTasks } from "../../core/lesson/tasks.ts";
import { useApp } from "../state/AppContext.tsx";
import { markedHandins } from "./handins.ts";
import { useHandins } from "./useHandins.ts";

/** How far each learner is with the school's task list. */
export function TaskProgress() {
  const { desk } = useHandins();
  const typed = useApp(({ settings }) => settings.tasks);
  const tasks = useMemo(() => readTasks(typed), [typed]);
  const marks = useMemo(() => marksOf(markedHandins(desk)), [desk]);
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
            </tr>
          </thead>
          <tbody>
            {learnersIn(marks).map((learner) => (
              <tr key={learner}>
                <th scope="row">{learner}</th>
                {tasks.value.map((task) => {
                  const progress = progressOf(task, marks, learner);
                  return (
                    <td key={task.task} className={`is-${progress}`}>
                      {WORDS.progress[progress]}
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}
