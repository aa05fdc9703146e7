import { type FormEvent, useEffect, useId, useRef, useState } from "react";
import { sentence } from "../../core/base/words.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { readEntry, readingsOf } from "../../core/diagnose/entry.ts";
import { isBySense, type Step } from "../../core/diagnose/step.ts";
import { takeReadings } from "../../core/edit/commands/takeReadings.ts";
import { useApp } from "../state/AppContext.tsx";
import { useMake } from "../state/useMake.ts";
import { orderNow } from "../state/views.ts";
import { entryHint, entryUnit, likelyWords, previewWords, sweepSoFar } from "../words/reading.ts";

interface Shown {
  readonly circuit: Circuit;
  readonly step: Step;
  /** All rows: what is typed may name another by its number. */
  readonly steps: readonly Step[];
  /** A reading was taken: the field of the next row is wanted. */
  readonly onTaken: () => void;
}

/** The field of the active row: what was read, and under it what that will do before Enter. */
export function ReadingEntry({ circuit, step, steps, onTaken }: Shown) {
  const make = useMake();
  const [typed, setTyped] = useState("");
  const [trouble, setTrouble] = useState<string | null>(null);
  // Till the new order is there, this row is an old one: nothing more is read into it.
  const { isOld } = useApp(orderNow);
  const says = useRef<HTMLSpanElement>(null);
  const id = useId();
  const entry = typed.trim() === "" ? null : readEntry(typed, step, steps, circuit.nominalVolts);
  const take = (text: string): void => {
    if (isOld) return;
    const read = readEntry(text, step, steps, circuit.nominalVolts);
    if (!read.ok) {
      setTrouble(sentence(read.refusal));
      return;
    }
    const time = new Date().toISOString();
    const readings = read.value.flatMap((each) => readingsOf(each, time));
    make((bench) => takeReadings(bench, readings));
    setTyped("");
    onTaken();
  };
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    take(typed);
  };
  const soFar = sweepSoFar(step, typed);
  const preview = entry?.ok ? entry.value.map(previewWords) : soFar === null ? [] : [soFar];
  const said = trouble ?? preview.join(" ");

  // What Enter will do is of use only in sight: the foot of the view fades, and may cut it off.
  useEffect(() => {
    if (said !== "") says.current?.scrollIntoView({ block: "nearest" });
  }, [said]);

  return (
    <form className="reading-entry" onSubmit={submit}>
      <span className="reading-line">
        <span className={trouble === null ? "field reading-field" : "field reading-field is-wrong"}>
          <input
            id={id}
            value={typed}
            aria-label={`Reading of step ${step.number} at ${step.point}`}
            aria-invalid={trouble !== null}
            aria-describedby={`${id}-says`}
            autoComplete="off"
            data-when-empty="bench"
            readOnly={isOld}
            placeholder={entryHint(step)}
            onChange={(event) => {
              setTyped(event.target.value);
              setTrouble(null);
            }}
          />
          {!isBySense(step.instrument) && step.lampTo !== "black" && <span className="unit">{entryUnit(step)}</span>}
        </span>
        <button type="submit" className="button is-main reading-enter">
          Enter
        </button>
      </span>
      {likelyWords(step).length > 0 && (
        <span className="reading-words">
          {likelyWords(step).map((word) => (
            <button key={word} type="button" className="button is-low" onClick={() => take(word)}>
              {word}
            </button>
          ))}
        </span>
      )}
      <span ref={says} id={`${id}-says`} className="reading-says small" aria-live="polite">
        {trouble === null ? (
          preview.map((words) => <span key={words}>{words}</span>)
        ) : (
          <span className="value-trouble">{trouble}</span>
        )}
      </span>
    </form>
  );
}
