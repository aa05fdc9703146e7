import { EXERCISE_SAYS } from "../../core/base/words/exercise.ts";
import { verdictOf } from "../../core/lesson/attempt.ts";
import { moveWords } from "../../core/lesson/moveWords.ts";
import { LEARNER_WORDS as SAY } from "../words/learner.ts";
import { BeginAgain } from "./BeginAgain.tsx";
import { HandIn } from "./HandIn.tsx";
import { useLearning } from "./useLearning.ts";
import { VerdictForm } from "./VerdictForm.tsx";

/** What is wrong, and what proves it; once it is filed, what may be told of it. Then the hand-in. */
export function VerdictView() {
  const attempt = useLearning((learning) => learning.attempt);
  const told = useLearning((learning) => learning.told);
  const verdict = verdictOf(attempt);
  return (
    <div className="learner-work">
      {verdict ? (
        <section className="learner-filed">
          <h3>{moveWords(attempt.exercise.circuit, verdict)}</h3>
          <p>{told ? EXERCISE_SAYS.told(told.isRight, told.was) : SAY.filed}</p>
        </section>
      ) : (
        <VerdictForm />
      )}
      <HandIn isOver={verdict !== null} />
      {attempt.route.length > 0 && attempt.exercise.tellsAtOnce && <BeginAgain />}
    </div>
  );
}
