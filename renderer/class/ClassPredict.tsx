import { useMemo, useState } from "react";
import { sentence } from "../../core/base/words.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { testPointsOf } from "../../core/diagnose/testPoint.ts";
import { wiringOf } from "../../core/edit/wiring.ts";
import { questionAt } from "../../core/lesson/oneQuestion.ts";
import type { Question } from "../../core/lesson/question.ts";
import { SelectChoice } from "../panels/Choice.tsx";
import { Toggle } from "../panels/Toggle.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { benchOf } from "../state/state.ts";
import { conditionNow } from "../state/views.ts";
import { keptToAsk } from "./asking.ts";
import { ClassAsked } from "./ClassAsked.tsx";
import { FIRST_LESSON } from "./lesson.ts";

const KINDS: readonly (readonly [Question["asked"]["asks"], string])[] = [
  ["state", "its state"],
  ["volts", "its volts"],
  ["lamp", "a lamp there"],
];

/** Predict and reveal: states covered up until a class has committed to what they are, with questions or without. */
export function ClassPredict({ circuit }: { readonly circuit: Circuit }) {
  const { dispatch } = useAppStore();
  const bench = useApp(benchOf);
  const lesson = useApp(({ open }) => open?.lesson ?? FIRST_LESSON);
  const { asked, isCovered, isCoveredHere } = lesson;
  const kept = useMemo(() => (bench ? keptToAsk(bench, lesson).length : 0), [bench, lesson]);
  return (
    <section className="class-scene" aria-label="Predict, then show">
      <h3 className="place-name">Predict, then show</h3>
      {asked ? (
        <ClassAsked asked={asked} />
      ) : (
        <>
          <Toggle
            words="Cover the states up"
            about="Wires without state and volts, till you uncover them."
            isOn={isCovered}
            onChange={(on) => dispatch({ do: "teach", lesson: { isCovered: on } })}
          />
          <div className="class-acts">
            <button type="button" className="button is-low" onClick={() => dispatch({ do: "ask-next" })}>
              {kept > 0 ? `Ask what the scene asks (${kept})` : "Ask what the circuit asks"}
            </button>
          </div>
          <AskAbout circuit={circuit} />
        </>
      )}
      <Toggle
        words="Covered in this window too"
        about="For a learner who sits beside you."
        isOn={isCoveredHere}
        onChange={(on) => dispatch({ do: "teach", lesson: { isCoveredHere: on } })}
      />
    </section>
  );
}

/** A question about a point of the person's own choice: the one that is chosen on the drawing, or another. */
function AskAbout({ circuit }: { readonly circuit: Circuit }) {
  const { dispatch } = useAppStore();
  const condition = useApp(conditionNow);
  const chosen = useApp(({ open }) => (open?.chosen?.is === "point" ? open.chosen.id : null));
  const [picked, setPicked] = useState("");
  const [trouble, setTrouble] = useState("");
  const wiring = wiringOf(circuit);
  const points = testPointsOf(wiring).flatMap(({ point, doNotProbe }) => (doNotProbe === null ? [point] : []));
  const now = [chosen, picked].find((point) => point !== null && points.includes(point)) ?? points[0];
  if (now === undefined) return null;
  const ask = (asks: Question["asked"]["asks"]) => (): void => {
    const question = questionAt(wiring, condition, { point: now, asks });
    setTrouble(question.ok ? "" : sentence(question.refusal));
    if (question.ok) dispatch({ do: "ask", question: question.value });
  };
  return (
    <>
      <SelectChoice
        title="Or ask about a point as the drawing stands now"
        now={now}
        onChoose={(point) => {
          setPicked(point);
          dispatch({ do: "find-named", id: point });
        }}
        choices={points.map((point) => [point, point] as const)}
      />
      <div className="class-acts">
        {KINDS.map(([asks, words]) => (
          <button type="button" key={asks} className="button is-low" onClick={ask(asks)}>
            Ask {words}
          </button>
        ))}
      </div>
      {trouble !== "" && (
        <p className="small" role="alert">
          {trouble}
        </p>
      )}
    </>
  );
}
