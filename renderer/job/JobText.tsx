import { useId, useState } from "react";
import { sentence } from "../../core/base/words.ts";
import { changeJob } from "../../core/edit/commands/changeJob.ts";
import { useAppStore } from "../state/AppContext.tsx";
import { isToldOf } from "../state/reduceBench.ts";
import { benchOf } from "../state/state.ts";

interface Shown {
  readonly label: string;
  readonly value: string;
  readonly usual: string;
  readonly field: "told" | "done";
}

/** A text of the job in hand, of several lines. It is taken when the field is left; what is refused says why and stays typed. */
export function JobText({ label, value, usual, field }: Shown) {
  const { dispatch, getState } = useAppStore();
  const [typed, setTyped] = useState(value);
  const [known, setKnown] = useState(value);
  const [trouble, setTrouble] = useState<string | null>(null);
  const id = useId();
  if (known !== value) {
    setKnown(value);
    setTyped(value);
    setTrouble(null);
  }
  const take = (): void => {
    const bench = benchOf(getState());
    const text = typed.trim();
    const edit = bench && text !== value ? changeJob(bench, { [field]: text }) : null;
    setTrouble(edit && !edit.ok && isToldOf(edit.refusal) ? sentence(edit.refusal) : null);
    if (edit?.ok) dispatch({ do: "make", command: (now) => changeJob(now, { [field]: text }) });
  };
  return (
    <label className="scene-caption job-text">
      <span className="value-label small">{label}</span>
      <textarea
        rows={2}
        value={typed}
        placeholder={usual}
        aria-invalid={trouble !== null}
        aria-describedby={trouble === null ? undefined : id}
        onChange={(event) => setTyped(event.target.value)}
        onBlur={take}
      />
      {trouble !== null && (
        <span className="value-trouble small" id={id} role="alert">
          {trouble}
        </span>
      )}
    </label>
  );
}
