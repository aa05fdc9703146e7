import { useId, useState } from "react";
import { sentence } from "../../core/base/words.ts";
import { readTasks } from "../../core/lesson/tasks.ts";
import { Trouble } from "../editor/Trouble.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";

/** The school's task list, typed one task a line; kept as it was typed, and counted once it can be read. */
export function TaskList() {
  const { dispatch } = useAppStore();
  const kept = useApp(({ settings }) => settings.tasks);
  const [typed, setTyped] = useState<string | null>(null);
  const id = useId();
  const text = typed ?? kept;
  const read = readTasks(text);
  const isEmpty = text.trim() === "";
  const keep = (): void => {
    if (typed === null) return;
    dispatch({ do: "set", settings: { tasks: typed } });
    setTyped(null);
  };
  const trouble = read.ok || isEmpty ? null : sentence(read.refusal);
  return (
    <section className="handins-tasks" aria-label="Task list">
      <h2>Task list</h2>
      <label className="labelled-text">
        <span className="small">One task a line, then the exercises by title that show it</span>
        <textarea
          rows={5}
          maxLength={20_000}
          value={text}
          spellCheck={false}
          placeholder={"Find an open feed: Horns; Vents\nVoltage drop, ground side: Rear lamps"}
          aria-invalid={trouble !== null}
          aria-describedby={trouble === null ? undefined : id}
          onChange={(event) => setTyped(event.target.value)}
          onBlur={keep}
        />
      </label>
      <Trouble words={trouble} id={id} />
    </section>
  );
}
