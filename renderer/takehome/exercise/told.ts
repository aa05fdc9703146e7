import { complaintWords } from "../../../core/diagnose/order.ts";
import { answerWords } from "../../../core/lesson/answerWords.ts";
import { complaintIn } from "../../../core/lesson/exercise.ts";
import { moveWords } from "../../../core/lesson/moveWords.ts";
import { routeLines } from "../../../core/lesson/routeText.ts";
import { exactMinutes, minutesText, unbroken } from "../../words/figures.ts";
import { LEARNER_WORDS as SAY } from "../../words/learner.ts";
import { build, typed } from "../build.ts";
import { onChange, type Piece } from "../view.ts";
import type { Work } from "./work.ts";

/** The complaint, the minutes so far, and what the last act showed. */
export function complaint({ attempt }: Work): Piece<Work> {
  const { exercise } = attempt;
  const minutes = build("b");
  const last = build("p", { role: "status", "aria-live": "polite" }, SAY.begin);
  const show = onChange((now: Work["attempt"]) => {
    minutes.textContent = `${exactMinutes(now.minutes)} so far`;
    const made = now.route.at(-1);
    if (!made) return;
    const shown = answerWords(exercise.circuit, made);
    last.textContent = `${moveWords(exercise.circuit, made.move)}, ${minutesText(made.minutes)}. ${unbroken(shown)}`;
  });
  const element = build(
    "section",
    { "aria-label": "Complaint" },
    build("h2", {}, typed(complaintWords(complaintIn(exercise)))),
    exercise.told === "" ? null : build("p", { class: "small" }, typed(`“${exercise.told}”`)),
    build("p", {}, minutes),
    last,
  );
  return { element, show: (work) => show(work.attempt) };
}

/** Everything that was done, in order, with what it cost and what the vehicle showed. */
export function route(): Piece<Work> {
  const list = build("ol", { class: "route" });
  const none = build("p", { class: "small" }, SAY.nothingDone);
  const fill = onChange((attempt: Work["attempt"]) => {
    const { circuit } = attempt.exercise;
    const lines = routeLines(attempt);
    none.hidden = lines.length > 0;
    list.replaceChildren(
      ...attempt.route.map((made, index) => {
        const { reading } = lines[index]!;
        const shown = answerWords(circuit, made);
        return build(
          "li",
          {},
          build("b", {}, moveWords(circuit, made.move)),
          shown === "" ? null : build("div", {}, unbroken(shown)),
          build(
            "div",
            { class: "small" },
            `${minutesText(made.minutes)}${reading === null ? "" : `, reading ${reading}`}`,
          ),
        );
      }),
    );
  });
  return {
    element: build("section", { "aria-labelledby": "done" }, build("h2", { id: "done" }, "Done so far"), none, list),
    show: (work) => fill(work.attempt),
  };
}
