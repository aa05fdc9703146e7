import type { Outcome, Refusal } from "../../core/base/outcome.ts";
import type { Move } from "../../core/lesson/move.ts";
import type { KeptAttempt } from "../../schemas/calls.ts";
import { readExercise } from "../../schemas/exercise.ts";
import type { Host } from "../host/host.ts";
import type { Autosave } from "../state/autosave.ts";
import { type FilePage, fileSaved, refused } from "../state/going.ts";
import type { AppStore, Reaction } from "../state/store.ts";
import { counted } from "../words/figures.ts";
import { GONE_WORDS } from "../words/gone.ts";
import { handinSaved, LEARNER_WORDS } from "../words/learner.ts";
import { fileNameFor } from "../words/library.ts";
import type { LearnerAction } from "./action.ts";
import type { AskVehicle } from "./vehicle.ts";

/** What the errands of a learner need on their way. */
interface Going {
  readonly host: Host;
  readonly page: FilePage;
  readonly autosave: Autosave;
  readonly ask: AskVehicle;
  readonly store: AppStore;
  readonly now: () => Date;
  /** Keeps what the library has not yet. */
  readonly keep: () => Promise<void>;
  /** True until another exercise was asked for. */
  readonly isLast: () => boolean;
}

/**
 * Brings what a learner does to the vehicle and to the library, and what they answer back to the store. Every move is kept as soon
 * as it is answered; the vehicle answers one at a time.
 */
export function learnerReaction(
  host: Host,
  page: FilePage,
  autosave: Autosave,
  ask: AskVehicle,
  now: () => Date,
): Reaction {
  let opening = 0;
  let keeping: Promise<void> = Promise.resolve();
  return (action, _state, before, store) => {
    const isOpening = OPENS.includes(action.do);
    if (isOpening) opening += 1;
    const number = opening;
    // One after the other: each says how much of the route the library has by then.
    const keep = (): Promise<void> => {
      keeping = keeping.then(() => kept(going)).catch(() => troubled(going, "keep"));
      return keeping;
    };
    const going: Going = { host, page, autosave, ask, store, now, keep, isLast: () => number === opening };
    if (action.do === "shelved") void listed(going).catch(() => undefined);
    // While the vehicle answers, a second press asks nothing.
    if (action.do === "make-moves" && before.learning?.isAsking !== false) return;
    // What a copy of a circuit is to the bench, the hand-in is here.
    const asked = action.do === "save-file" && before.learning ? ({ do: "save-handin" } as const) : action;
    errandFor(asked as LearnerAction, going)?.catch(() => troubled(going, action.do));
  };
}

/** What brings something else to the bench. */
const OPENS: readonly string[] = [
  "open-exercise",
  "open-attempt",
  "restart-attempt",
  "open-circuit",
  "open-sample",
  "open-text",
  "open-packed",
  "new-circuit",
  "close",
];

function troubled({ store }: Going, asked: string): void {
  if (asked === "make-moves") store.dispatch({ do: "moves-ended" });
  store.dispatch({ do: "tell", notice: { title: "No answer.", words: GONE_WORDS, isError: true } });
}

function errandFor(action: LearnerAction, going: Going): Promise<void> | null {
  const { host } = going;
  switch (action.do) {
    case "open-exercise":
      return exerciseOpened(going, action.name, action.text);
    case "open-attempt":
      return attemptOpened(going, action.id);
    case "restart-attempt":
      return brought(going, host.ask("attempts.restart", { id: action.id }), LEARNER_WORDS.notRestarted);
    case "make-moves":
      return movesMade(going, action.moves);
    case "name-learner":
      return going.keep();
    case "save-handin":
      return handinMade(going);
    case "remove-attempt":
      return attemptRemoved(going, action.id);
    case "restore-attempt":
      return changed(going, host.ask("attempts.restore", { id: action.id }), LEARNER_WORDS.notRestored);
    default:
      return null;
  }
}

/** A file is tried in the worker before the library takes it: what cannot be opened is not kept. */
async function exerciseOpened(going: Going, name: string, text: string): Promise<void> {
  const { host, ask, autosave } = going;
  const title = LEARNER_WORDS.notOpened(name);
  const tried = await ask({ ask: "try", text });
  if (!tried.ok) return told(going, tried.refusal, title);
  await autosave.flush();
  const taken = await host.ask("attempts.take", { text });
  await brought(going, Promise.resolve(taken), title);
  if (taken.ok && taken.value.wasDeleted) cameBack(going, taken.value);
}

/**
 * Whoever opens a deleted exercise anew is told what is back with it. One to practise on can be begun again at once; of one that is
 * graded, the route is not to be had away so easily.
 */
function cameBack({ store }: Going, { id, route }: KeptAttempt): void {
  const { learning } = store.getState();
  if (learning?.id !== id || route.length === 0) return;
  const offers = learning.attempt.exercise.tellsAtOnce
    ? [{ words: LEARNER_WORDS.again, action: { do: "restart-attempt", id } } as const]
    : [];
  store.dispatch({
    do: "tell",
    notice: { ...LEARNER_WORDS.cameBack(counted(route.length, "act")), isError: false, offers },
  });
}

async function attemptOpened(going: Going, id: string): Promise<void> {
  await going.autosave.flush();
  await brought(going, going.host.ask("attempts.open", { id }), LEARNER_WORDS.notOpened(LEARNER_WORDS.exercise));
}

/** Brings an exercise to the bench once library and worker have it. */
async function brought(going: Going, asked: Promise<Outcome<KeptAttempt>>, title: string): Promise<void> {
  const { store, ask, isLast } = going;
  const kept = await asked;
  if (!kept.ok) return told(going, kept.refusal, title);
  if (!isLast()) return;
  const { text, route } = kept.value;
  const opened = await ask({ ask: "open", text, route });
  if (!opened.ok) return told(going, opened.refusal, title);
  const file = readExercise(text);
  if (!file.ok) return told(going, file.refusal, title);
  if (!isLast()) return;
  store.dispatch({
    do: "attempt-opened",
    kept: kept.value,
    exercise: file.value.exercise,
    told: opened.value.told,
  });
}

/** What was wrong is told; where nothing stands in the window yet the library is shown. */
function told({ store }: Going, refusal: Refusal, title: string): void {
  refused(store, refusal, title, "open");
  const { open, learning, shelf } = store.getState();
  if (!open && !learning && !shelf.isRead) store.dispatch({ do: "retry" });
}

async function movesMade(going: Going, moves: readonly Move[]): Promise<void> {
  const { ask, store, now } = going;
  const { learning } = store.getState();
  for (const move of learning ? moves : []) {
    const id = learning!.id;
    const answer = await ask({ ask: "move", id, move, time: now().toISOString() });
    if (store.getState().learning?.id !== id) return;
    if (!answer.ok) {
      refused(store, answer.refusal, LEARNER_WORDS.notDone, "edit");
      break;
    }
    store.dispatch({ do: "move-made", ...answer.value });
    void going.keep();
  }
  store.dispatch({ do: "moves-ended" });
}

/** Keeps what the library has not yet. One that was worked on elsewhere meanwhile is shown as it stands there. */
async function kept({ host, store }: Going): Promise<void> {
  const { learning } = store.getState();
  if (!learning) return;
  const { id, attempt, learner, kept: from } = learning;
  const moves = attempt.route.slice(from) as KeptAttempt["route"];
  const answer = await host.ask("attempts.add", { id, from, moves, learner });
  if (answer.ok) return store.dispatch({ do: "attempt-kept", id, moves: attempt.route.length });
  refused(store, answer.refusal, LEARNER_WORDS.notKept, "edit");
  if (answer.refusal.code === "attempt-elsewhere") store.dispatch({ do: "open-attempt", id });
}

async function handinMade({ host, page, store, ask }: Going): Promise<void> {
  const { learning } = store.getState();
  if (!learning) return;
  const { id, learner, attempt } = learning;
  const made = await ask({ ask: "hand-in", id, learner });
  if (!made.ok) return refused(store, made.refusal, LEARNER_WORDS.notSaved, "file");
  const name = fileNameFor({ title: handinSaved(learner, attempt.exercise.title) }, "handin.json");
  await fileSaved({ host, page, store }, name, made.value.text, "text");
}

async function attemptRemoved(going: Going, id: string): Promise<void> {
  const { host, store } = going;
  const answer = await host.ask("attempts.remove", { id });
  if (!answer.ok) return refused(store, answer.refusal, LEARNER_WORDS.notRemoved);
  store.dispatch({
    do: "tell",
    notice: {
      ...LEARNER_WORDS.removed(answer.value.title),
      isError: false,
      offers: [{ words: LEARNER_WORDS.bringBack, action: { do: "restore-attempt", id } }],
    },
  });
  await listed(going);
}

async function changed(going: Going, asked: Promise<Outcome<unknown>>, title: string): Promise<void> {
  const answer = await asked;
  if (!answer.ok) refused(going.store, answer.refusal, title);
  await listed(going);
}

async function listed({ host, store }: Going): Promise<void> {
  const [rows, deleted] = await Promise.all([
    host.ask("attempts.list", {}),
    host.ask("attempts.list", { where: "bin" }),
  ]);
  if (rows.ok && deleted.ok)
    store.dispatch({ do: "attempts-listed", attempts: { rows: rows.value.rows, deleted: deleted.value.rows } });
}
