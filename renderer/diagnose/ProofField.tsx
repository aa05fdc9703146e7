import { type FormEvent, useId, useState } from "react";
import { sentence } from "../../core/base/words.ts";
import type { Shows } from "../../core/diagnose/reading.ts";
import { readValue } from "../../core/diagnose/readValue.ts";
import type { Expected, Step } from "../../core/diagnose/step.ts";

interface Shown {
  readonly step: Step;
  readonly nominalVolts: number;
  /** "before" or "after": which of the two the field is for. */
  readonly when: "before" | "after";
  /** What is expected, over the field. */
  readonly expected: string;
  /** The same as figures: "ok" stands for it, and a bare number has its unit. */
  readonly expect: Expected;
  /** What was read last and what it means; "" where nothing was. */
  readonly said: string;
  readonly onTaken: (shows: Shows) => void;
}

/** One reading of a proof run: what to expect, a field to type into, and what was read there last. */
export function ProofField({ step, nominalVolts, when, expected, expect, said, onTaken }: Shown) {
  const [typed, setTyped] = useState("");
  const [trouble, setTrouble] = useState<string | null>(null);
  const id = useId();
  const take = (event: FormEvent): void => {
    event.preventDefault();
    const read = readValue(typed, { instrument: step.instrument, nominalVolts, expect });
    if (!read.ok) {
      setTrouble(sentence(read.refusal));
      return;
    }
    setTyped("");
    onTaken(read.value);
  };
  return (
    <form className="proof-field" onSubmit={take}>
      <label htmlFor={id} className="small">
        {when === "before" ? "Before" : "After"} <b className="figures together">{expected}</b>
      </label>
      <span className={trouble === null ? "field" : "field is-wrong"}>
        <input
          id={id}
          value={typed}
          aria-label={`Read ${when} the repair in row ${step.number} of the proof`}
          aria-invalid={trouble !== null}
          aria-describedby={`${id}-says`}
          autoComplete="off"
          onChange={(event) => {
            setTyped(event.target.value);
            setTrouble(null);
          }}
        />
        <span className="unit">{expect.unit}</span>
      </span>
      <span id={`${id}-says`} className="small proof-says" aria-live="polite">
        {trouble === null ? said : <span className="value-trouble">{trouble}</span>}
      </span>
    </form>
  );
}
