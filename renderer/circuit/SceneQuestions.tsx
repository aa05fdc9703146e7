import { useMemo } from "react";
import type { Circuit, Scene } from "../../core/circuit/circuit.ts";
import { questionsOf } from "../../core/lesson/questions.ts";

/** What a scene asks the class: each question with its choices; opened, the answer and why it is so. */
export function SceneQuestions({ circuit, scene }: { readonly circuit: Circuit; readonly scene: Scene }) {
  const questions = useMemo(() => questionsOf(circuit, scene), [circuit, scene]);
  if (questions.length === 0) return null;
  return (
    <ol className="scene-questions small" aria-label={`Questions of ${scene.label}`}>
      {questions.map(({ text, choices, right, reason }) => (
        <li key={text}>
          <p>{text}</p>
          <p className="scene-choices">{choices.map(({ answer }) => answer).join(" · ")}</p>
          <details>
            <summary>Answer</summary>
            <p>
              <b>{choices[right]!.answer}.</b> {reason.slice(1).join(" ")}
            </p>
          </details>
        </li>
      ))}
    </ol>
  );
}
