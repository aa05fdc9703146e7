import { complaintWords } from "../../core/diagnose/order.ts";
import { answerWords } from "../../core/lesson/answerWords.ts";
import { costOf, hintsIn, verdictOf } from "../../core/lesson/attempt.ts";
import { complaintIn } from "../../core/lesson/exercise.ts";
import { moveWords } from "../../core/lesson/moveWords.ts";
import { counted, exactMinutes, minutesText, unbroken } from "../words/figures.ts";
import { LEARNER_WORDS as SAY } from "../words/learner.ts";
import { useLearning } from "./useLearning.ts";
import { useMoves } from "./useMoves.ts";

/** The complaint, the minutes so far, what the last act showed, and a hint where any are allowed. */
export function LearnerHead() {
  const attempt = useLearning((learning) => learning.attempt);
  const make = useMoves();
  const { exercise, minutes } = attempt;
  const { title, told, hints, circuit } = exercise;
  const vehicle = circuit.vehicle ?? "";
  const left = hints.count - hintsIn(attempt);
  const isOver = verdictOf(attempt) !== null;
  return (
    <header className="learner-head">
      <p className="caption">
        <bdi>{[title, vehicle].filter((words, at, all) => words !== "" && all.indexOf(words) === at).join(", ")}</bdi>
      </p>
      <h2>
        <bdi>{complaintWords(complaintIn(exercise))}</bdi>
      </h2>
      {told !== "" && (
        <p className="small learner-told">
          <bdi>“{told}”</bdi>
        </p>
      )}
      <div className="learner-cost">
        <b className="figures">{exactMinutes(minutes)}</b>
        <span className="caption">so far</span>
        {hints.count > 0 && (
          <button
            type="button"
            className="button is-quiet is-low"
            disabled={left <= 0 || isOver}
            onClick={() => make({ do: "hint" })}
          >
            {SAY.hint(minutesText(costOf(attempt, { do: "hint" })))}
          </button>
        )}
        {hints.count > 0 && (
          <span className="caption">{left <= 0 ? SAY.noHints : `${counted(left, "hint")} left`}</span>
        )}
      </div>
      <LastMove />
    </header>
  );
}

/** What was done last, and what the vehicle showed. */
function LastMove() {
  const attempt = useLearning((learning) => learning.attempt);
  const isAsking = useLearning((learning) => learning.isAsking);
  const last = attempt.route.at(-1);
  const asking = isAsking && <p className="caption learner-asking">{SAY.asking}</p>;
  if (!last)
    return (
      <div className="learner-last">
        <p className="small">{SAY.begin}</p>
        {asking}
      </div>
    );
  const { circuit } = attempt.exercise;
  const shown = answerWords(circuit, last);
  return (
    <div className={isAsking ? "learner-last is-old" : "learner-last"}>
      <p className="small">
        {moveWords(circuit, last.move)}, {minutesText(last.minutes)}
      </p>
      {shown !== "" && <p className="learner-shown figures">{unbroken(shown)}</p>}
      {asking}
    </div>
  );
}
