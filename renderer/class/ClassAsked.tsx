import { capital } from "../../core/base/capital.ts";
import { QUESTION_WORDS } from "../../core/base/words/question.ts";
import { answersOf, outcomeOf, type Predict } from "../../core/lesson/predict.ts";
import { Icon } from "../panels/Icon.tsx";
import { useAppStore } from "../state/AppContext.tsx";
import { counted } from "../words/figures.ts";
import { ideaSaid } from "./classQuestion.ts";

/** The question that is put to the class, on the instructor's side: hands are counted here, and the right answer is known. */
export function ClassAsked({ asked }: { readonly asked: Predict }) {
  const { dispatch } = useAppStore();
  const { question, hands, isRevealed } = asked;
  const answers = answersOf(asked);
  return (
    <section className="class-asked" aria-label="Question put to the class">
      <p>
        <b>{question.text}</b>
      </p>
      <ol className="class-choices">
        {question.choices.map(({ answer, ideas }, at) => (
          <li key={answer}>
            <button
              type="button"
              className="button is-low class-hand"
              disabled={isRevealed}
              title="One hand more"
              onClick={() => dispatch({ do: "hand", choice: at })}
            >
              <span>{answer}</span>
              <b className="figures">
                {hands[at]}
                <span className="unseen"> {hands[at] === 1 ? "hand" : "hands"}</span>
              </b>
            </button>
            <span className="small">
              {at === question.right ? (
                <>
                  <Icon name="tick" size={16} /> right
                </>
              ) : (
                capital(ideaSaid(ideas))
              )}
            </span>
          </li>
        ))}
      </ol>
      <div className="class-acts">
        {isRevealed ? (
          <button type="button" className="button is-main is-low" onClick={() => dispatch({ do: "ask-next" })}>
            Ask next
          </button>
        ) : (
          <>
            <button
              type="button"
              className="button is-main is-low"
              disabled={answers === 0}
              title={answers === 0 ? "Count the hands first: press an answer for each" : undefined}
              onClick={() => dispatch({ do: "reveal" })}
            >
              Show the answer
            </button>
            <button
              type="button"
              className="button is-low"
              disabled={answers === 0}
              onClick={() => dispatch({ do: "hand-back" })}
            >
              One hand back
            </button>
          </>
        )}
        <button
          type="button"
          className="button is-quiet is-low"
          onClick={() => dispatch({ do: "ask", question: null })}
        >
          {isRevealed ? "Done" : "Leave it"}
        </button>
      </div>
      <p className="small" aria-live="polite">
        {isRevealed ? outcomeSaid(asked) : `${counted(answers, "answer")} counted; press one for each hand.`}
      </p>
      {isRevealed && <p className="small">{question.reason.join(" ")}</p>}
    </section>
  );
}

/** How many were right, and how many hold which wrong idea. */
function outcomeSaid(asked: Predict): string {
  const { counts, ideas } = outcomeOf(asked);
  const right = `${counts[asked.question.right] ?? 0} of ${answersOf(asked)} right.`;
  const held = [...ideas].map(([idea, count]) => `${count} may think that ${QUESTION_WORDS.ideas[idea]}.`);
  return [right, ...held].join(" ");
}
