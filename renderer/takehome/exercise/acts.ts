import { costOf, refusalOf, verdictOf } from "../../../core/lesson/attempt.ts";
import type { Move } from "../../../core/lesson/move.ts";
import { moveText, parseMoves } from "../../../core/lesson/moveText.ts";
import { moveWords } from "../../../core/lesson/moveWords.ts";
import { offersAt, type Spot } from "../../../core/lesson/offers.ts";
import { minutesText } from "../../words/figures.ts";
import { LEARNER_WORDS as SAY } from "../../words/learner.ts";
import { build } from "../build.ts";
import { onChange, type Piece, refill } from "../view.ts";
import { said } from "./said.ts";
import { throwsOf } from "./sheet.ts";
import type { Work, WorkStore } from "./work.ts";

type Make = (...moves: readonly Move[]) => void;

/** One act with its price; pressed, it is done. */
function act({ attempt }: Work, move: Move, make: Make): HTMLElement {
  const words = `${moveWords(attempt.exercise.circuit, move)}, ${minutesText(costOf(attempt, move))}`;
  return build("button", { type: "button", class: "button act", click: () => make(move) }, words);
}

/** What can be done at the part or wire that is chosen, on the drawing or from the list, and what has to wait, with the reason. */
export function offers(store: WorkStore, make: Make): Piece<Work> {
  const { parts, wires } = store.getState().attempt.exercise.circuit;
  const option = (is: Spot["is"], id: string, about: string): HTMLElement =>
    build("option", { value: `${is} ${id}` }, `${id} ${about}`.trim());
  const choose = ({ target }: Event): void => {
    const [is = "", id = ""] = (target as HTMLSelectElement).value.split(" ");
    store.setState({ spot: is === "" ? null : { is: is as Spot["is"], id } });
  };
  const list = build(
    "select",
    { id: "thing", change: choose },
    build("option", { value: "" }, "a part or a wire"),
    ...parts.map(({ id, label = "" }) => option("part", id, label)),
    ...wires.map(({ id, colour = "" }) => option("wire", id, colour)),
  );
  const found = build("div", { class: "acts", tabindex: "-1" });
  const fill = onChange((...[attempt, spot]: readonly [Work["attempt"], Spot | null]) => {
    const all = spot === null || verdictOf(attempt) ? [] : offersAt(attempt, spot);
    const held = all.flatMap(({ refusal }) => (refusal ? [said(refusal)] : []));
    const can = all.filter(({ refusal }) => refusal === null);
    refill(
      found,
      ...can.map(({ move }) => act(store.getState(), move, make)),
      ...[...new Set(held)].map((why) => build("p", { class: "small" }, why)),
      ...(spot !== null && all.length === 0 ? [build("p", { class: "small" }, SAY.nothingHere)] : []),
    );
  });
  const show = ({ attempt, spot }: Work): void => {
    list.value = spot === null ? "" : `${spot.is} ${spot.id}`;
    fill(attempt, spot);
  };
  const name = build("label", { for: "thing" }, "At");
  return {
    element: build(
      "section",
      { "aria-label": "What can be done" },
      build("h2", {}, "On the vehicle"),
      name,
      " ",
      list,
      found,
    ),
    show,
  };
}

/** What is done, typed: `probe X5-6 @ S1=on`. */
export function entry(store: WorkStore, make: Make): Piece<Work> {
  const field = build("input", { id: "act", placeholder: SAY.typedExample, autocomplete: "off", spellcheck: "false" });
  const submit = (event: Event): void => {
    event.preventDefault();
    const { attempt } = store.getState();
    const moves = parseMoves(attempt.exercise.circuit, field.value, attempt.condition);
    if (!moves.ok) store.setState({ trouble: said(moves.refusal) });
    else {
      make(...moves.value);
      field.value = "";
    }
  };
  const form = build("form", { submit }, build("label", { for: "act" }, SAY.type), " ", field);
  const trouble = build("p", { class: "trouble", role: "status" });
  const show = (work: Work): void => {
    form.hidden = verdictOf(work.attempt) !== null;
    if (trouble.textContent !== work.trouble) trouble.textContent = work.trouble;
  };
  return { element: build("section", { "aria-label": SAY.type }, form, trouble), show };
}

/** Switches, functions to try, trim, what is apart, and a hint where any is left: all that can be done now, in lists. */
export function lists(make: Make): Piece<Work> {
  const box = build("div", { tabindex: "-1" });
  const opened = new Set<string>();
  const fill = onChange((attempt: Work["attempt"], work: Work) => {
    const { circuit } = attempt.exercise;
    const { apart = [], out = [] } = attempt.condition;
    const groups: readonly (readonly [string, readonly Move[]])[] = [
      ["Switches", throwsOf(work)],
      [SAY.functions, circuit.checks.map(({ id }): Move => ({ do: "try", check: id }))],
      [SAY.trim, circuit.access.map(({ id }): Move => ({ do: "open", access: id }))],
      [
        SAY.standing,
        [
          ...apart.map((connector): Move => ({ do: "plug-in", connector })),
          ...out.map((part): Move => ({ do: "put-in", part })),
        ],
      ],
      ["Help", [{ do: "hint" }]],
    ];
    refill(
      box,
      ...groups.flatMap(([title, moves]) => {
        const can = verdictOf(attempt) ? [] : moves.filter((move) => refusalOf(attempt, move) === null);
        if (can.length === 0) return [];
        const buttons = can.map((move) => {
          const button = act(work, move, make);
          button.dataset.move = moveText(move);
          return button;
        });
        const toggled = ({ currentTarget }: Event): void => {
          if ((currentTarget as HTMLDetailsElement).open) opened.add(title);
          else opened.delete(title);
        };
        const summary = build("summary", {}, title);
        return [
          build(
            "details",
            { open: opened.has(title), toggle: toggled },
            summary,
            build("div", { class: "acts" }, ...buttons),
          ),
        ];
      }),
    );
  });
  return { element: box, show: (work) => fill(work.attempt, work) };
}
