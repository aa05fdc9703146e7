import { type FormEvent, useEffect, useId, useRef, useState } from "react";
import { Trouble } from "../editor/Trouble.tsx";
import { Icon } from "../panels/Icon.tsx";
import { LabelledField } from "../panels/LabelledField.tsx";
import { minutesText } from "../words/figures.ts";
import type { ExerciseIn } from "./handins.ts";
import { useHandins } from "./useHandins.ts";

/** The exercises on the desk, and one field for the passphrase: it opens all of those that it fits. */
export function ExercisesIn() {
  const { desk } = useHandins();
  const { exercises } = desk;
  const head = useRef<HTMLHeadingElement>(null);
  const hasShut = exercises.some(({ seen }) => seen === null);
  useEffect(() => {
    // The field goes once there is nothing left to open.
    if (!hasShut && document.activeElement === document.body) head.current?.focus();
  }, [hasShut]);
  return (
    <section className="handins-exercises" aria-label="Exercises">
      <h2 ref={head} tabIndex={-1}>
        Exercises
      </h2>
      {exercises.length === 0 && (
        <p className="small">
          Hand-ins are graded with the exercise that they are of: open its file as well, then type its passphrase.
        </p>
      )}
      {hasShut && <OpenThem />}
      <ul>
        {exercises.map((exercise) => (
          <Exercise key={exercise.text} exercise={exercise} />
        ))}
      </ul>
    </section>
  );
}

function OpenThem() {
  const { desk, ask } = useHandins();
  const [passphrase, setPassphrase] = useState("");
  const id = useId();
  const troubles = desk.exercises.flatMap(({ trouble }) => (trouble === null ? [] : [trouble]));
  const open = (event: FormEvent): void => {
    event.preventDefault();
    if (passphrase === "") return;
    ask({ act: "open", passphrase });
    setPassphrase("");
  };
  const shut = desk.exercises.filter(({ seen }) => seen === null).length;
  return (
    <form className="handins-open" aria-label="Open exercises" onSubmit={open}>
      <LabelledField
        label="Passphrase"
        value={passphrase}
        typed="secret"
        trouble={troubles.length === 0 ? undefined : id}
        onChange={setPassphrase}
      />
      <button type="submit" className="button is-low">
        {desk.isOpening ? "Opening" : shut === 1 ? "Open the exercise" : `Open ${shut} exercises`}
      </button>
      <Trouble words={troubles.length === 0 ? null : troubles.join(" ")} id={id} />
    </form>
  );
}

function Exercise({ exercise }: { readonly exercise: ExerciseIn }) {
  const { ask } = useHandins();
  const { title, seen, text, name } = exercise;
  return (
    <li className="handins-exercise">
      <div className="handins-exercise-head">
        <b title={name}>{title}</b>
        <button
          type="button"
          className="icon-button is-small"
          aria-label={`Put away: ${title}`}
          title="Put away"
          onClick={() => ask({ act: "put-exercise-away", text })}
        >
          <Icon name="close" size={16} />
        </button>
      </div>
      {seen === null ? (
        <p className="small">Shut</p>
      ) : (
        <>
          <p className="small">{seen.complaint}</p>
          <p>
            <span className="small">Hidden: </span>
            <b>{seen.fault}</b>
            {seen.seed !== null && <span className="small">, drawn by seed {seen.seed}</span>}
          </p>
          {seen.note !== "" && <p className="small">{seen.note}</p>}
          {seen.minutes !== null && (
            <details>
              <summary>
                <Icon name="onward" size={16} />
                <span className="small">The probe order needs {minutesText(seen.minutes)}</span>
              </summary>
              <ol className="handins-way small">
                {seen.way.map((row) => (
                  <li key={row}>{row}</li>
                ))}
              </ol>
            </details>
          )}
        </>
      )}
    </li>
  );
}
