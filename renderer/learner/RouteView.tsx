import { answerWords } from "../../core/lesson/answerWords.ts";
import { moveWords } from "../../core/lesson/moveWords.ts";
import { routeLines } from "../../core/lesson/routeText.ts";
import { Empty } from "../panels/Empty.tsx";
import { minutesText, unbroken } from "../words/figures.ts";
import { clockText, LEARNER_WORDS as SAY } from "../words/learner.ts";
import { useLearning } from "./useLearning.ts";

/** Everything that was done, in order, with what it cost, when, and what the vehicle showed. */
export function RouteView() {
  const attempt = useLearning((learning) => learning.attempt);
  const { route, exercise } = attempt;
  if (route.length === 0) return <Empty title={SAY.nothingDone}>{SAY.howToBegin}</Empty>;
  const lines = routeLines(attempt);
  const renewed = route.findIndex(({ move }) => move.do === "renew");
  return (
    <ol className="learner-route">
      {route.map((made, index) => {
        const { move, minutes, time } = made;
        const { reading } = lines[index]!;
        const shown = answerWords(exercise.circuit, made);
        return (
          <li key={index} className="learner-step">
            <span className="knot figures">{index + 1}</span>
            <div className="learner-words">
              <b>{moveWords(exercise.circuit, move)}</b>
              {shown !== "" && <span className="learner-shown figures">{unbroken(shown)}</span>}
              <span className="caption figures">
                {[
                  minutesText(minutes),
                  ...(time === null ? [] : [clockText(time)]),
                  ...(reading === null ? [] : [`reading ${reading}`]),
                ].join(", ")}
              </span>
              {index === renewed && <span className="caption">{SAY.otherVehicle}</span>}
            </div>
          </li>
        );
      })}
    </ol>
  );
}
