import { SheetZoom } from "../panels/SheetZoom.tsx";
import { conditionPhrase } from "../words/condition.ts";
import { LEARNER_WORDS } from "../words/learner.ts";
import { useLearning } from "./useLearning.ts";

/** How the vehicle stands in words, what the drawing shows, and its zoom. */
export function LearnerStatus() {
  const phrase = useLearning(({ attempt }) => conditionPhrase(attempt.exercise.circuit, attempt.condition));
  return (
    <footer className="status">
      <span className="status-condition" title={phrase}>
        {phrase}
      </span>
      <span className="status-note">{LEARNER_WORDS.asDrawn}</span>
      <span className="status-end">
        <SheetZoom />
      </span>
    </footer>
  );
}
