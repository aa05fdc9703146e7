import { useId } from "react";
import { changeJob } from "../../core/edit/commands/changeJob.ts";
import { useTyped } from "../panels/useTyped.ts";

interface Shown {
  readonly label: string;
  readonly value: string;
  readonly usual: string;
  readonly field: "told" | "done";
}

/** A text of the job in hand, of several lines. It is taken when the field is left; what is refused says why and stays typed. */
export function JobText({ label, value, usual, field }: Shown) {
  const { typed, setTyped, trouble, take } = useTyped(
    value,
    (text) => (bench) => changeJob(bench, { [field]: text.trim() }),
  );
  const id = useId();
  return (
    <label className="labelled-text job-text">
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
