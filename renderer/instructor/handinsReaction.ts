import { refuse } from "../../core/base/outcome.ts";
import { sentence } from "../../core/base/words.ts";
import type { AppStore, Reaction } from "../state/store.ts";
import { type DeskAsker, type DeskPort, deskAsker } from "./deskAsker.ts";
import { type HandinsAct, isWaiting, momentText, type RouteMoment, unread } from "./handins.ts";

/** Opens exercises, grades hand-ins one after the other, and draws their routes, all in the instructor's worker. */
export function handinsReaction(start: () => DeskPort): Reaction {
  let begun = 0;
  let theStore: AppStore | null = null;
  const asker = deskAsker(() => {
    begun += 1;
    // A worker that takes the place of one that failed holds nothing.
    if (begun > 1 && theStore) say(theStore, { act: "shut" });
    return start();
  });
  const turn = { grading: 0, drawing: 0 };
  return (action, _state, _before, store) => {
    theStore = store;
    if (action.do !== "handins") return;
    const { act } = action;
    switch (act.act) {
      case "take":
        void inTrouble(store, marked(store, asker, turn));
        return;
      case "open":
        void inTrouble(
          store,
          opened(store, asker, act.passphrase).then(() => marked(store, asker, turn)),
        );
        return;
      case "stop-grading":
        turn.grading += 1;
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

async function opened(store: AppStore, asker: DeskAsker, passphrase: string): Promise<void> {
  for (const { text, seen } of store.getState().handins.exercises) {
    if (seen) continue;
    const answer = await asker.ask<"open">({ ask: "open", text, passphrase });
    if (answer)
      say(store, {
        act: "opened",
        text,
        seen: answer.ok ? answer.value : null,
        trouble: answer.ok ? null : sentence(answer.refusal),
      });
  }
  say(store, { act: "set", change: { isOpening: false } });
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

/** Only the picture asked for last is shown. */
async function drawn(store: AppStore, asker: DeskAsker, moment: RouteMoment, turn: { drawing: number }): Promise<void> {
  turn.drawing += 1;
  const own = turn.drawing;
  const svg = await asker.ask<"picture">({ ask: "picture", ...moment });
  if (svg !== null && turn.drawing === own)
    say(store, { act: "set", change: { picture: { of: momentText(moment), svg } } });
}
