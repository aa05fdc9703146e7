import { type FormEvent, useEffect, useId, useRef, useState } from "react";
import { capital } from "../../core/base/capital.ts";
import { INSTRUMENT_NAMES } from "../../core/base/words/exercise.ts";
import { sentence } from "../../core/base/words.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { INSTRUMENTS } from "../../core/diagnose/reading.ts";
import type { Instrument } from "../../core/diagnose/step.ts";
import { Trouble } from "../editor/Trouble.tsx";
import { Choice, SelectChoice } from "../panels/Choice.tsx";
import { LabelledField, LabelledText } from "../panels/LabelledField.tsx";
import { Toggle } from "../panels/Toggle.tsx";
import type { Draft, Taken } from "./cupboard.ts";
import { passphraseTyped } from "./draftChoice.ts";
import { useCupboard } from "./useCupboard.ts";
import { failsWords } from "./words.ts";

interface Shown {
  readonly circuit: Circuit;
  readonly draft: Draft;
  readonly taken: Taken;
}

/** An exercise as it is made: what learners are told and may use, what it costs them, and the passphrase that seals the fault. */
export function ExerciseForm({ circuit, draft, taken }: Shown) {
  const { cupboard, ask } = useCupboard();
  const head = useRef<HTMLHeadingElement>(null);
  useEffect(() => head.current?.focus(), []);
  const change = (next: Partial<Draft>): void => ask({ act: "draft", change: next });
  const fails = taken.fails ?? [];
  return (
    <>
      <header className="view-head">
        <h2 ref={head} tabIndex={-1}>
          New exercise
        </h2>
        <p className="small">Hidden in it: {taken.fault.title}. Learners see nothing of this.</p>
      </header>
      <div className="view-scroll exercise-form">
        <SelectChoice
          title="What is complained of"
          now={draft.check}
          choices={fails.map((each) => [each.check, failsWords(circuit, each)] as const)}
          onChoose={(check) => change({ check })}
        />
        <LabelledField
          label="Title"
          value={draft.title}
          usual={circuit.title}
          onChange={(title) => change({ title })}
        />
        <LabelledText
          label="In the customer's words"
          value={draft.told}
          usual="It has been dead since the rain last week."
          onChange={(told) => change({ told })}
        />
        <Instruments chosen={draft.instruments} choose={(instruments) => change({ instruments })} />
        {circuit.access.length > 0 && (
          <fieldset className="setting">
            <legend className="small">Minutes of trim in this exercise</legend>
            {circuit.access.map(({ id, label, minutes }) => (
              <LabelledField
                key={id}
                label={label}
                value={draft.access[id] ?? ""}
                usual={String(minutes)}
                unit="min"
                typed="number"
                onChange={(typed) => change({ access: { ...draft.access, [id]: typed } })}
              />
            ))}
          </fieldset>
        )}
        <fieldset className="setting">
          <legend className="small">Hints</legend>
          <LabelledField
            label="Hints allowed"
            value={draft.hints}
            usual="0"
            typed="number"
            onChange={(hints) => change({ hints })}
          />
          <LabelledField
            label="What each costs"
            value={draft.hintMinutes}
            unit="min"
            typed="number"
            onChange={(hintMinutes) => change({ hintMinutes })}
          />
        </fieldset>
        <Choice
          title="Once the verdict is filed"
          now={draft.tellsAtOnce ? "told" : "later"}
          choices={[
            ["told", "Say if it is right, and what it was"],
            ["later", "Say nothing until the hand-in is opened here"],
          ]}
          isColumn
          onChoose={(when) => change({ tellsAtOnce: when === "told" })}
        />
        <p className="small">Where it is graded choose the second: else a throwaway try tells what it was.</p>
        <LabelledText
          label="Note for yourself, sealed with the fault"
          value={draft.note}
          rows={2}
          usual="Second week, after the lesson on grounds."
          onChange={(note) => change({ note })}
        />
        <Seal
          isMaking={cupboard?.isMaking === true}
          refused={cupboard?.refused ?? null}
          make={(passphrase) => ask({ act: "make", passphrase })}
          leave={() => ask({ act: "draft", change: null })}
        />
      </div>
    </>
  );
}

interface Chosen {
  readonly chosen: readonly Instrument[];
  readonly choose: (instruments: readonly Instrument[]) => void;
}

function Instruments({ chosen, choose }: Chosen) {
  return (
    <fieldset className="setting exercise-instruments">
      <legend className="small">Allowed</legend>
      {INSTRUMENTS.map((each) => (
        <Toggle
          key={each}
          words={capital(INSTRUMENT_NAMES[each])}
          isOn={chosen.includes(each)}
          onChange={(on) => choose(INSTRUMENTS.filter((other) => (other === each ? on : chosen.includes(other))))}
        />
      ))}
    </fieldset>
  );
}

interface SealShown {
  readonly isMaking: boolean;
  readonly refused: string | null;
  readonly make: (passphrase: string) => void;
  readonly leave: () => void;
}

/** The passphrase, typed twice; it goes no further than to the file that is made with it. */
function Seal({ isMaking, refused, make, leave }: SealShown) {
  const [first, setFirst] = useState("");
  const [second, setSecond] = useState("");
  const [trouble, setTrouble] = useState<string | null>(null);
  const id = useId();
  const said = trouble ?? refused;
  const take = (event: FormEvent): void => {
    event.preventDefault();
    const passphrase = passphraseTyped(first, second);
    setTrouble(passphrase.ok ? null : sentence(passphrase.refusal));
    if (passphrase.ok) make(passphrase.value);
  };
  return (
    <form className="exercise-seal" aria-label="Seal the fault" onSubmit={take}>
      <LabelledField
        label="Passphrase"
        value={first}
        typed="secret"
        trouble={trouble === null ? undefined : id}
        onChange={setFirst}
      />
      <LabelledField
        label="The same again"
        value={second}
        typed="secret"
        trouble={trouble === null ? undefined : id}
        onChange={setSecond}
      />
      <p className="small">
        It opens the fault and the grading, here and on any machine. It keeps the fault from whoever reads the file, the
        window or the library; not from a programmer with a debugger, since the learner's own program must solve with
        the fault. It is kept nowhere: when it is forgotten, nobody can open this exercise.
      </p>
      <Trouble words={said} id={id} />
      <div className="value-acts">
        <button type="submit" className="button is-main" disabled={isMaking}>
          {isMaking ? "Sealing" : "Save the exercise"}
        </button>
        <button type="button" className="button is-low is-quiet" onClick={leave}>
          Leave it
        </button>
      </div>
    </form>
  );
}
