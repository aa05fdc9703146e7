import { EXERCISE_SAYS } from "../../../core/base/words/exercise.ts";
import { verdictOf } from "../../../core/lesson/attempt.ts";
import type { Move } from "../../../core/lesson/move.ts";
import { verdictsFor } from "../../../core/lesson/verdicts.ts";
import type { VehicleAnswer } from "../../learner/keeper.ts";
import { targetsOf } from "../../words/fault.ts";
import { LEARNER_WORDS as SAY } from "../../words/learner.ts";
import { build } from "../build.ts";
import type { Piece } from "../view.ts";
import { said } from "./said.ts";
import type { Keeper, Work, WorkStore } from "./work.ts";

/** What is wrong, as the learner names it. Filed, the exercise is over, so that it asks once more; then it says what came of it. */
export function verdict(store: WorkStore, make: (...moves: readonly Move[]) => void): Piece<Work> {
  const { circuit } = store.getState().attempt.exercise;
  const target = build("input", { id: "target", list: "targets", autocomplete: "off", spellcheck: "false" });
  const how = build("select", { "aria-label": SAY.howItFails, hidden: true });
  const proof = build("input", { id: "proof", placeholder: "1, 3", autocomplete: "off" });
  const button = build("button", { type: "submit", class: "button" }, SAY.file);
  const about = build("p", { class: "small", "aria-live": "polite" });
  let isSure = false;
  const unsure = (): void => {
    isSure = false;
    button.textContent = SAY.file;
    about.textContent = "";
  };
  const name = (): void => {
    unsure();
    how.hidden = verdictsFor(circuit, target.value.trim()).length === 0;
    how.replaceChildren(
      ...verdictsFor(circuit, target.value.trim()).map(({ suspect, title }) =>
        build("option", { value: suspect }, title),
      ),
    );
  };
  target.addEventListener("input", name);
  how.addEventListener("change", unsure);
  const submit = (event: Event): void => {
    event.preventDefault();
    if (how.value === "") about.textContent = SAY.nameFirst;
    else if (!isSure) {
      isSure = true;
      button.textContent = SAY.fileIt;
      about.textContent = SAY.fileSure;
    } else make({ do: "verdict", suspect: how.value, proof: (proof.value.match(/\d+/g) ?? []).map(Number) });
  };
  const form = build(
    "form",
    { submit },
    build("label", { for: "target" }, SAY.whatIsWrong),
    " ",
    target,
    " ",
    how,
    build(
      "datalist",
      { id: "targets" },
      ...targetsOf(circuit).map(({ id, about: words }) => build("option", { value: id }, words)),
    ),
    build(
      "p",
      {},
      build("label", { for: "proof" }, `${SAY.proof}, by their numbers; with none named all of them count `),
      proof,
    ),
    button,
    about,
  );
  const told = build("p", { role: "status", "aria-live": "polite" });
  const show = ({ attempt, told: came }: Work): void => {
    const isOver = verdictOf(attempt) !== null;
    form.hidden = isOver;
    const words = !isOver ? "" : came ? EXERCISE_SAYS.told(came.isRight, came.was) : SAY.filed;
    if (told.textContent !== words) told.textContent = words;
  };
  return {
    element: build("section", { "aria-labelledby": "verdict" }, build("h2", { id: "verdict" }, "Verdict"), form, told),
    show,
  };
}

/** Who hands in, and the file with the whole route. */
export function handIn(store: WorkStore, keeper: Keeper): Piece<Work> {
  const name = build("input", { id: "learner", autocomplete: "name", maxlength: "160" });
  const submit = async (event: Event): Promise<void> => {
    event.preventDefault();
    const { id, attempt } = store.getState();
    const learner = name.value.replace(/\p{Cc}/gu, " ").trim();
    const answer = await keeper({ ask: "hand-in", id, learner });
    if (!answer.ok) return store.setState({ trouble: said(answer.refusal) });
    const { text } = answer.value as Extract<VehicleAnswer, { readonly text: string }>;
    save(text, [learner, attempt.exercise.title].filter((word) => word !== "").join(", "));
  };
  const form = build(
    "form",
    { submit: (event) => void submit(event) },
    build("label", { for: "learner" }, SAY.yourName),
    " ",
    name,
    " ",
    build("button", { type: "submit", class: "button" }, SAY.save),
  );
  const about = build("p", { class: "small" });
  const show = ({ attempt }: Work): void => {
    about.textContent = verdictOf(attempt) ? SAY.handInAbout : SAY.handInOpen;
  };
  return {
    element: build("section", { "aria-labelledby": "handin" }, build("h2", { id: "handin" }, SAY.handIn), form, about),
    show,
  };
}

function save(text: string, title: string): void {
  const url = URL.createObjectURL(new Blob([text], { type: "application/json" }));
  const plain = title.replace(/[^\p{L}\p{N} ,_-]+/gu, " ").trim();
  build("a", { href: url, download: `${plain}.handin.json` }).click();
  URL.revokeObjectURL(url);
}
