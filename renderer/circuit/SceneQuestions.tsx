import { useMemo } from "react";
import type { Circuit, Scene } from "../../core/circuit/circuit.ts";
import { changeScene } from "../../core/edit/commands/changeScene.ts";
import { wiringOf } from "../../core/edit/wiring.ts";
import type { Question } from "../../core/lesson/question.ts";
import { keptBy } from "../../core/lesson/questions.ts";
import { useMake } from "../state/useMake.ts";
import { AskInScene } from "./AskInScene.tsx";
import { RowMenu } from "./RowMenu.tsx";

interface Shown {
  readonly circuit: Circuit;
  readonly scene: Scene;
  /** Its place among the scenes, counted from 0. */
  readonly at: number;
}

/** What a scene asks the class: each question with its choices; opened, the answer and why it is so. The dots change the list. */
export function SceneQuestions({ circuit, scene, at }: Shown) {
  const make = useMake();
  const wiring = wiringOf(circuit);
  const kept = useMemo(() => keptBy(wiring, scene), [wiring, scene]);
  const { questions = [] } = scene;
  const moved = (from: number, to: number) => (): void => {
    const others = questions.filter((_, index) => index !== from);
    make((bench) =>
      changeScene(bench, at, { questions: [...others.slice(0, to), questions[from]!, ...others.slice(to)] }),
    );
  };
  return (
    <div className="scene-asks">
      {kept.length > 0 && (
        <ol className="scene-questions small" aria-label={`Questions of ${scene.label}`}>
          {kept.map(({ asked, text, question }, index) => (
            <li key={JSON.stringify(asked)}>
              <div className="scene-question">
                <p>{question?.text ?? text}</p>
                <RowMenu
                  label={`More for question ${index + 1} of ${scene.label}`}
                  acts={[
                    {
                      icon: "up",
                      words: "Ask it earlier",
                      act: moved(index, index - 1),
                      isOff: index === 0 ? "It is the first" : undefined,
                    },
                    {
                      icon: "bin",
                      words: "Do not ask it",
                      act: () =>
                        make((bench) =>
                          changeScene(bench, at, { questions: questions.filter((_, other) => other !== index) }),
                        ),
                    },
                  ]}
                />
              </div>
              {question ? (
                <Answer {...question} />
              ) : (
                <p className="caption">As the scene stands, this has no answer.</p>
              )}
            </li>
          ))}
        </ol>
      )}
      <AskInScene circuit={circuit} scene={scene} at={at} />
    </div>
  );
}

function Answer({ choices, right, reason }: Pick<Question, "choices" | "right" | "reason">) {
  return (
    <>
      <p className="scene-choices">{choices.map(({ answer }) => answer).join(" · ")}</p>
      <details>
        <summary>Answer</summary>
        <p>
          <b>{choices[right]!.answer}.</b> {reason.slice(1).join(" ")}
        </p>
      </details>
    </>
  );
}
