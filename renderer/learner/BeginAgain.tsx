import { useState } from "react";
import { useAppStore } from "../state/AppContext.tsx";
import { LEARNER_WORDS as SAY } from "../words/learner.ts";
import { useLearning } from "./useLearning.ts";

/** An exercise to practise on, which tells at once how the verdict is, can be worked on anew. It asks once more. */
export function BeginAgain() {
  const { dispatch } = useAppStore();
  const id = useLearning((learning) => learning.id);
  const [isSure, setSure] = useState(false);
  return (
    <section className="learner-again">
      <button
        type="button"
        className="button is-quiet is-low"
        onClick={() => (isSure ? dispatch({ do: "restart-attempt", id }) : setSure(true))}
      >
        {isSure ? SAY.againSure : SAY.again}
      </button>
      <p className="small" aria-live="polite">
        {isSure ? SAY.againAbout : ""}
      </p>
    </section>
  );
}
