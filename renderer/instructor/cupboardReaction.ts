import { EXERCISE_SAYS as SAY } from "../../core/base/words/exercise.ts";
import { sentence } from "../../core/base/words.ts";
import { INSTRUMENTS } from "../../core/diagnose/reading.ts";
import { wiringOf } from "../../core/edit/wiring.ts";
import type { Host } from "../host/host.ts";
import { type FilePage, fileSaved } from "../state/going.ts";
import type { Open } from "../state/state.ts";
import type { AppStore, Reaction } from "../state/store.ts";
import { fileNameFor } from "../words/library.ts";
import type { Cupboard } from "./cupboard.ts";
import { type DeskAsker, type DeskPort, deskAsker } from "./deskAsker.ts";
import { makeWanted } from "./draftChoice.ts";

/** What the errands of the cupboard need. */
interface Going {
  readonly host: Host;
  readonly page: FilePage;
  readonly store: AppStore;
  readonly open: Open;
}

/** Has the worker grade faults, find what they make fail, and make exercises; a bench that is put away takes its errands with it. */
export function cupboardReaction(host: Host, page: FilePage, start: () => DeskPort): Reaction {
  const grading = deskAsker(start);
  const asker = deskAsker(start);
  return (action, state, before, store) => {
    if (before.open && before.open.number !== state.open?.number) {
      grading.stop();
      asker.stop();
    }
    if (action.do !== "cupboard" || !state.open) return;
    const going = { host, page, store, open: state.open };
    switch (action.act.act) {
      case "grade":
        grading.stop();
        void inTrouble(going, graded(going, grading, action.act.check));
        return;
      case "stop-grading":
        return grading.stop();
      case "take":
        void inTrouble(going, failing(going, asker));
        return;
      case "make":
        void inTrouble(going, made(going, asker, action.act.passphrase));
        return;
    }
  };
}

/** Changes the cupboard of the same bench, if it is still there. */
function set({ store, open }: Going, change: Partial<Omit<Cupboard, "draft">>): void {
  if (store.getState().open?.number === open.number) store.dispatch({ do: "cupboard", act: { act: "set", change } });
}

/** What the program itself gets wrong is told in the view. */
async function inTrouble(going: Going, errand: Promise<void>): Promise<void> {
  try {
    await errand;
  } catch (error) {
    const trouble = error instanceof Error ? error.message : String(error);
    set(going, { trouble, done: null, isMaking: false });
  }
}

async function graded(going: Going, asker: DeskAsker, check: string): Promise<void> {
  const circuit = wiringOf(going.open.desk.bench.circuit);
  const question = { ask: "grade", circuit, check, instruments: INSTRUMENTS } as const;
  let shown = 0;
  const faults = await asker.ask<"grade">(question, (done) => {
    // A hundred steps are enough to see that it goes on.
    if (done - shown < 0.01) return;
    shown = done;
    set(going, { done });
  });
  if (faults) set(going, { graded: { circuit, faults }, done: null });
}

async function failing(going: Going, asker: DeskAsker): Promise<void> {
  const { taken } = going.open.cupboard;
  if (!taken) return;
  const circuit = wiringOf(going.open.desk.bench.circuit);
  const fails = await asker.ask<"fails">({ ask: "fails", circuit, fault: taken.fault.id });
  if (fails && going.store.getState().open?.cupboard.taken?.fault === taken.fault)
    set(going, { taken: { ...taken, fails } });
}

async function made(going: Going, asker: DeskAsker, passphrase: string): Promise<void> {
  const { desk, cupboard } = going.open;
  const { circuit } = desk.bench;
  const { draft, taken } = cupboard;
  if (!draft || !taken) return;
  const wanted = makeWanted(circuit, draft, taken, passphrase);
  const answer = wanted.ok ? await asker.ask<"make">({ ask: "make", circuit, wanted: wanted.value }) : wanted;
  if (!answer) return;
  set(going, { isMaking: false, refused: answer.ok ? null : sentence(answer.refusal) });
  if (!answer.ok) return;
  await fileSaved(
    going,
    fileNameFor({ title: draft.title.trim() || circuit.title }, "exercise.json"),
    answer.value.text,
    "text",
  );
  // Of a drawn fault nothing more is said: whoever draws it may want to find it.
  const { alike } = answer.value;
  if (taken.seed === null && alike.length > 0)
    going.store.dispatch({
      do: "tell",
      notice: { title: "Not to be proven.", words: SAY.alike(alike), isError: false },
    });
}
