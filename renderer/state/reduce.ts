import type { Refusal } from "../../core/base/outcome.ts";
import { REPORT_WORDS } from "../../core/base/words/report.ts";
import { sentence } from "../../core/base/words.ts";
import { type Desk, namesOf } from "../../core/edit/history.ts";
import type { Settings } from "../../schemas/settings.ts";
import { topicOf } from "../help/topic.ts";
import { reduceHandins } from "../instructor/handins.ts";
import { LEARNER_ACTIONS, type LearnerAction } from "../learner/action.ts";
import type { LearnerSight, Learning } from "../learner/learning.ts";
import { lookedAt } from "../learner/looking.ts";
import { reduceLearner } from "../learner/reduce.ts";
import { comingsSaid } from "../words/fault.ts";
import { type ShownLives, saidBetween, saidWith, undoneWords } from "../words/said.ts";
import type { Action, BenchAction } from "./action.ts";
import type { Remaining } from "./hostAction.ts";
import { reduceAnswer } from "./reduceAnswer.ts";
import { isToldOf, reduceBench } from "./reduceBench.ts";
import type { AppState, Notice, Open, Theme } from "./state.ts";
import { succeeded } from "./succeeded.ts";
import { liveOnSheet, shownWith } from "./suspectNow.ts";

/** The state after an action. Pure: what must reach the host is an errand. */
export function reduce(state: AppState, action: Action): AppState {
  switch (action.do) {
    case "system-theme":
      return { ...state, systemTheme: action.theme, theme: themeOf(state.settings, action.theme) };
    case "open-find":
      return state.open || state.learning ? { ...state, isFinding: true } : state;
    case "close-find":
      return { ...state, isFinding: false };
    case "open-print":
      return state.open ? { ...state, isPrinting: true } : state;
    case "close-print":
      return { ...state, isPrinting: false };
    case "open-export":
      return state.open ? { ...state, isPrinting: false, isExporting: true } : state;
    case "close-export":
      return { ...state, isExporting: false };
    case "bring-in":
      return state.open && action.files.length > 0 ? { ...state, bringing: action.files } : state;
    case "close-bring-in":
      return { ...state, bringing: null };
    case "class":
      return { ...state, classroom: { ...state.classroom, ...action.classroom } };
    case "close-class":
      return { ...state, classroom: { ...state.classroom, where: null, isBlank: false } };
    case "open-help":
      return { ...state, help: action.topic ?? topicOf(state) };
    case "close-help":
      return { ...state, help: null };
    case "about-told":
      return { ...state, about: action.about };
    case "open-keys":
      return { ...state, isShowingKeys: true };
    case "close-keys":
      return { ...state, isShowingKeys: false };
    case "open-class":
    case "arrange":
    case "cancel-arrange":
      return state;
    case "arranging":
      return { ...state, arranging: action.attempt };
    case "tell":
      return told(state, action.notice);
    case "mishap":
      return told({ ...state, report: action.report }, MISHAP);
    case "show-report":
      return { ...state, isShowingReport: state.report !== null };
    case "close-report":
      return { ...state, isShowingReport: false };
    case "save-report":
      return state;
    case "put-away":
      return { ...state, notices: state.notices.filter(({ id }) => id !== action.notice) };
    case "handins":
      return { ...state, handins: reduceHandins(state.handins, action.act) };
    case "say":
      return { ...state, said: action.words };
    case "set":
      return withSettings(state, { ...state.settings, ...action.settings });
    case "settled":
      return { ...withSettings(state, action.settings), isStarted: true };
    default:
      if (isOfTheLearner(action)) return reduceLearner(state, action);
      return isOfTheBench(action) ? onTheBench(state, action) : reduceAnswer(state, action);
  }
}

const MISHAP: Omit<Notice, "id"> = {
  title: REPORT_WORDS.title,
  words: REPORT_WORDS.kept,
  isError: true,
  offers: [{ words: REPORT_WORDS.show, action: { do: "show-report" } }],
};

function isOfTheLearner(action: BenchAction | Remaining | LearnerAction): action is LearnerAction {
  return Object.hasOwn(LEARNER_ACTIONS, action.do);
}

/** The look in force: what is set, or what the system asks for. */
export function themeOf({ theme }: Settings, systemTheme: Theme): Theme {
  return theme === "system" ? systemTheme : theme;
}

const BENCH: Readonly<Record<BenchAction["do"], true>> = {
  make: true,
  "begin-drag": true,
  "keep-drag": true,
  "cancel-drag": true,
  undo: true,
  redo: true,
  "take-arranged": true,
  throw: true,
  hold: true,
  "let-go": true,
  pin: true,
  "show-page": true,
  "look-at": true,
  wish: true,
  choose: true,
  hover: true,
  adjust: true,
  add: true,
  "show-printed": true,
  "choose-also": true,
  "choose-all": true,
  "use-tool": true,
  "edit-part": true,
  find: true,
  "find-named": true,
  "go-to-step": true,
  "show-suspect": true,
  "with-suspect": true,
  "show-changed": true,
  "show-table": true,
  "show-shares": true,
  "seek-sneaks": true,
  "begin-trace": true,
  "pass-time": true,
  "pass-to-next": true,
  "let-time-pass": true,
  teach: true,
  ask: true,
  "ask-next": true,
  hand: true,
  "hand-back": true,
  reveal: true,
  "play-scenes": true,
  "set-jumper": true,
  cupboard: true,
  "open-panel": true,
};

/** Whether only time passes: nobody has done anything. */
function isTime(action: BenchAction): boolean {
  return action.do === "pass-time" || action.do === "pass-to-next";
}

function isOfTheBench(action: BenchAction | Remaining): action is BenchAction {
  return Object.hasOwn(BENCH, action.do);
}

function onTheBench(state: AppState, action: BenchAction): AppState {
  const { open, learning } = state;
  if (learning) return lookingAt(state, learning, lookedAt(learning, action));
  if (!open) return state;
  const after = reduceBench(open, action);
  if (!after.ok) return isToldOf(after.refusal) ? told(state, refused(after.refusal)) : state;
  if (after.value === open) return state;
  const { desk } = after.value;
  const isEdit = desk.bench !== open.desk.bench && !isTime(action);
  const said = saidAfter(action, open, after.value) ?? state.said;
  return { ...(isEdit ? succeeded(state, "edit") : state), open: after.value, said };
}

function lookingAt(state: AppState, learning: Learning, sight: LearnerSight): AppState {
  return sight === learning.sight ? state : { ...state, learning: { ...learning, sight } };
}

/** What is told of an action; null where it neither changed the bench nor what is supposed of it. */
function saidAfter(action: BenchAction, before: Open, after: Open): string | null {
  // What comes and goes by itself three times a second would drown everything else.
  if (action.do === "pass-time") return null;
  const lives: ShownLives = [liveOnSheet(before).shown, liveOnSheet(after).shown];
  if (action.do === "show-suspect" || action.do === "with-suspect")
    return saidWith(shownWith(after)?.title ?? null, lives);
  const [was, is] = [before.desk, after.desk];
  return saidBetween(was.bench, is.bench, editWords(action, was, is), lives);
}

/** What an action did to the bench, in words; null where it only took back what was not done yet. */
function editWords({ do: done }: BenchAction, before: Desk, after: Desk): string | null {
  if (done === "cancel-drag") return null;
  if (done === "pass-to-next") return comingsSaid(after.bench);
  return done === "undo" ? undoneWords(namesOf(before).undo) : namesOf(after).undo;
}

/** A refusal of an edit as a notice. */
export function refused(refusal: Refusal, title = "Not done."): Omit<Notice, "id"> {
  return { title, words: sentence(refusal), isError: true, kind: "edit" };
}

const MOST_NOTICES = 3;

/**
 * A notice more; the oldest go, errors last. The same words twice are one, two errors under one title or another too, and a success takes
 * errors of its kind away.
 */
export function told(state: AppState, notice: Omit<Notice, "id">): AppState {
  const current = notice.isError ? state.notices : succeeded(state, notice.kind).notices;
  const isOld = ({ words, title, isError, isOfOthers = false }: Notice): boolean =>
    (words === notice.words && (title === notice.title || (isError && notice.isError))) ||
    (isOfOthers && notice.isOfOthers === true);
  const others = current.filter((each) => !isOld(each));
  const id = Math.max(0, ...state.notices.map((each) => each.id)) + 1;
  const leaves =
    others.length < MOST_NOTICES
      ? -1
      : Math.max(
          0,
          others.findIndex(({ isError }) => !isError),
        );
  return { ...state, notices: [...others.filter((_, index) => index !== leaves), { ...notice, id }] };
}

function withSettings(state: AppState, settings: Settings): AppState {
  return { ...state, settings, theme: themeOf(settings, state.systemTheme) };
}
