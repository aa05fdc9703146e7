import type { ClassChoice, ClassQuestion } from "./classQuestion.ts";
import { Unparted } from "./Unparted.tsx";

/** The answers to a question on the wall, and once the right one is shown, why it is right and what the others show. */
export function WallQuestion({ question: { choices, answered, reason } }: { readonly question: ClassQuestion }) {
  const ideas = choices.flatMap(({ told }) => (told && told.idea !== "" && told.hands > 0 ? [told] : []));
  return (
    <section className="wall-strip" aria-label="Answers" aria-live="polite">
      <ol className="wall-choices">
        {choices.map((choice, at) => (
          <Choice key={choice.answer} choice={choice} number={at + 1} />
        ))}
      </ol>
      {reason === null && (
        <p className="wall-caption">{answered === 0 ? "Say it before it is shown." : `${answered} answered.`}</p>
      )}
      {ideas.map(({ hands, idea }) => (
        <p key={idea}>{`${hands} may think that ${idea}.`}</p>
      ))}
      {reason !== null && (
        <p className="wall-caption">
          <Unparted words={reason} />
        </p>
      )}
    </section>
  );
}

function Choice({ choice: { answer, told }, number }: { readonly choice: ClassChoice; readonly number: number }) {
  return (
    <li className={told?.isRight ? "is-right" : ""}>
      <b className="wall-number">{number}</b> {answer}
      {told?.isRight && ", right"}
      {told && <span className="wall-hands">{told.hands}</span>}
    </li>
  );
}
