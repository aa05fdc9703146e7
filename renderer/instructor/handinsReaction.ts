import { type Outcome, refuse } from "../../core/base/outcome.ts";
import { GRADE_WORDS } from "../../core/base/words/grade.ts";
import { sentence } from "../../core/base/words.ts";
import { type ClassRow, classRows } from "../../core/lesson/classRows.ts";
import { gradeTable } from "../../core/lesson/gradeTable.ts";
import { readTasks, taskRows } from "../../core/lesson/tasks.ts";
import { csvOf } from "../../core/paper/csv.ts";
import type { Answer, Argument } from "../../schemas/calls.ts";
import type { Host } from "../host/host.ts";
import { type FilePage, fileSaved, refused } from "../state/going.ts";
import type { AppStore, Reaction } from "../state/store.ts";
import { GONE_WORDS } from "../words/gone.ts";
import { type DeskAsker, type DeskPort, deskAsker } from "./deskAsker.ts";
import {
  allMarks,
  type HandinsAct,
  isWaiting,
  markedHandins,
  momentText,
  ownMarks,
  type RouteMoment,
  unread,
} from "./handins.ts";

const WORDS = GRADE_WORDS.sheet;

/** Opens exercises, grades hand-ins one after the other, and draws their routes, all in the instructor's worker. */
export function handinsReaction(host: Host, page: FilePage, start: () => DeskPort): Reaction {
  let begun = 0;
  let theStore: AppStore | null = null;
  const asker = deskAsker(() => {
    begun += 1;
    // A worker that takes the place of one that failed holds nothing.
    if (begun > 1 && theStore) say(theStore, { act: "shut" });
    return start();
  });
  const turn = { opening: 0, grading: 0, drawing: 0 };
  return (action, _state, before, store) => {
    theStore = store;
    if (action.do !== "handins") return;
    const { act } = action;
    const graded = async (): Promise<void> => {
      await marked(store, asker, turn);
      await marksKept(store, host.ask("marks.keep", { marks: [...ownMarks(store.getState().handins)] }));
    };
    switch (act.act) {
      case "show":
        void inTrouble(store, marksKept(store, host.ask("marks.list", {})));
        return;
      case "forget":
        void inTrouble(store, marksKept(store, host.ask("marks.forget", { learner: act.learner })));
        return;
      case "take":
        void inTrouble(store, graded());
        return;
      case "open":
        void inTrouble(store, opened(store, asker, act.passphrase, turn).then(graded));
        return;
      case "stop-grading":
        turn.grading += 1;
        return;
      case "put-exercise-away": {
        const seen = before.handins.exercises.find(({ text }) => text === act.text)?.seen;
        if (seen)
          void inTrouble(
            store,
            asker.ask<"shut">({ ask: "shut", id: seen.id }).then(() => {}),
          );
        return;
      }
      case "save":
        void inTrouble(store, saved({ host, page, store }, act.as));
        return;
      case "draw":
        void inTrouble(store, drawn(store, asker, act.moment, turn));
        return;
    }
  };
}

function say(store: AppStore, act: HandinsAct): void {
  store.dispatch({ do: "handins", act });
}

/** What the program itself gets wrong is told on the desk; nothing of what lies there is lost. */
async function inTrouble(store: AppStore, errand: Promise<void>): Promise<void> {
  try {
    await errand;
  } catch (error) {
    const trouble = error instanceof Error ? error.message : String(error);
    say(store, { act: "set", change: { trouble, done: null, isOpening: false } });
  }
}

/** Tries a passphrase on what is shut. One that is typed before the last was tried through does not wait for it. */
async function opened(store: AppStore, asker: DeskAsker, passphrase: string, turn: { opening: number }): Promise<void> {
  turn.opening += 1;
  const own = turn.opening;
  for (const { text, seen } of store.getState().handins.exercises) {
    if (seen) continue;
    const answer = await asker.ask<"open">({ ask: "open", text, passphrase });
    // What another passphrase opened meanwhile is not shut again.
    if (answer && (answer.ok || turn.opening === own))
      say(store, {
        act: "opened",
        text,
        seen: answer.ok ? answer.value : null,
        trouble: answer.ok ? null : sentence(answer.refusal),
      });
  }
  if (turn.opening === own) say(store, { act: "set", change: { isOpening: false } });
}

/** Grades what waits, one after the other; begun anew, or stopped, by a newer turn. */
async function marked(store: AppStore, asker: DeskAsker, turn: { grading: number }): Promise<void> {
  turn.grading += 1;
  const own = turn.grading;
  const waiting = store.getState().handins.handins.filter(isWaiting);
  for (const [index, { key, name, text }] of waiting.entries()) {
    if (turn.grading !== own) return;
    say(store, { act: "set", change: { done: index / waiting.length } });
    const answer = await asker
      .ask<"mark">({ ask: "mark", name, text: text ?? "" })
      .catch((error: Error) => unread(name, refuse("handin-failed", { words: error.message }).refusal));
    if (answer) say(store, { act: "marked", key, marked: answer });
  }
  if (turn.grading === own) say(store, { act: "set", change: { done: null } });
}

/** What the library keeps of all learners; where it cannot be read, what lies on the desk still counts. */
async function marksKept(store: AppStore, asked: Promise<Outcome<Answer<"marks.list">>>): Promise<void> {
  const answer = await asked.catch(() => null);
  if (answer?.ok) say(store, { act: "set", change: { kept: answer.value.marks } });
  else if (answer) refused(store, answer.refusal, "Progress was not kept.");
  else store.dispatch({ do: "tell", notice: { title: "Progress was not kept.", words: GONE_WORDS, isError: true } });
}

/** The table as it is listed, and after it the task list. */
async function saved(going: Parameters<typeof fileSaved>[0], as: "csv" | "pdf"): Promise<void> {
  const { handins, settings } = going.store.getState();
  const marked = markedHandins(handins);
  if (as === "csv") return fileSaved(going, `${WORDS.title}.csv`, csvOf(gradeTable(marked)), "text");
  const tasks = readTasks(settings.tasks);
  const rows = tasks.ok ? taskRows(tasks.value, allMarks(handins)) : [];
  const printed = await going.host.ask("print.class", {
    rows: classRows(marked).map(unfrozen),
    tasks: rows.map(({ learner, done, tried }) => ({ learner, done: [...done], tried: [...tried] })),
    paper: settings.paper,
  });
  if (!printed.ok) return refused(going.store, printed.refusal, "Not printed.", "file");
  await fileSaved(going, printed.value.name, printed.value.pdf, "base64");
}

/** A row as a call carries it. */
function unfrozen({ named, minutes, readings, ...row }: ClassRow): Argument<"print.class">["rows"][number] {
  return { ...row, named: [...named], minutes: [...minutes], readings: [...readings] };
}

/** Only the picture asked for last is shown. */
async function drawn(store: AppStore, asker: DeskAsker, moment: RouteMoment, turn: { drawing: number }): Promise<void> {
  turn.drawing += 1;
  const own = turn.drawing;
  const svg = await asker.ask<"picture">({ ask: "picture", ...moment });
  if (svg !== null && turn.drawing === own)
    say(store, { act: "set", change: { picture: { of: momentText(moment), svg } } });
}
