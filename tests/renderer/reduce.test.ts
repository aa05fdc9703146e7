import { describe, expect, test } from "vitest";
import { refuse } from "../../core/base/outcome.ts";
import { NO_ORDER } from "../../core/diagnose/order.ts";
import { changeLength } from "../../core/edit/commands/changeLength.ts";
import { chooseComplaint } from "../../core/edit/commands/chooseComplaint.ts";
import { plantFault } from "../../core/edit/commands/plantFault.ts";
import { removeThings } from "../../core/edit/commands/removeThings.ts";
import { renamePart } from "../../core/edit/commands/renamePart.ts";
import { keyCommand } from "../../renderer/canvas/keyCommands.ts";
import type { Action } from "../../renderer/state/action.ts";
import { reduce } from "../../renderer/state/reduce.ts";
import { createAppStore } from "../../renderer/state/store.ts";
import { conditionNow, redoName, showsFaults, undoName } from "../../renderer/state/views.ts";
import { notKept, ofLibrary } from "../../renderer/words/saving.ts";
import { VENTS } from "../edit/given.ts";
import { openAfter, openIn, stateAfter } from "./stage.ts";

const KEY_ON: Action = { do: "throw", control: "S1", position: "on" };
const HOLD: Action = { do: "hold", control: "S6", position: "open" };
const LET_GO: Action = { do: "let-go", control: "S6" };
const PIN: Action = { do: "pin", control: "S6" };
const BREAK: Action = { do: "make", command: (bench) => plantFault(bench, "W13:open") };
const set = (...actions: readonly Action[]) => conditionNow(stateAfter(VENTS, ...actions)).set ?? {};

describe("throwing", () => {
  test("a throw stays, and is lately thrown", () => {
    expect(set(KEY_ON)).toEqual({ S1: "on" });
    expect(openAfter(VENTS, KEY_ON, { do: "throw", control: "S5", position: "open" }).recent).toEqual(["S5", "S1"]);
  });

  test("of the controls thrown lately only the last four are kept, each once", () => {
    const throws = ["S1 on", "S3 open", "S4 open", "S1 off", "S5 open", "S6 open"].map((thrown): Action => {
      const [control = "", position = ""] = thrown.split(" ");
      return { do: "throw", control, position };
    });
    expect(openAfter(VENTS, ...throws).recent).toEqual(["S6", "S5", "S1", "S4"]);
  });

  test("a throw to where it stands changes nothing and says nothing", () => {
    const thrown = stateAfter(VENTS, KEY_ON);
    const again = reduce(thrown, KEY_ON);
    expect(openIn(again).desk).toBe(openIn(thrown).desk);
    expect(again.notices).toEqual([]);
  });

  test("a control that is not there is told of, and the bench stays", () => {
    const wrong = stateAfter(VENTS, { do: "throw", control: "S99", position: "on" });
    expect(openIn(wrong).desk.history.done).toEqual([]);
    expect(wrong.notices).toMatchObject([{ title: "Not done.", isError: true }]);
  });

  test("what is held springs back when it is let go, and hold and letting go are one step", () => {
    expect(openAfter(VENTS, HOLD)).toMatchObject({ held: ["S6"], gesture: 1 });
    expect(set(HOLD)).toEqual({ S6: "open" });
    const free = openAfter(VENTS, HOLD, LET_GO);
    expect(free.held).toEqual([]);
    expect(free.desk.bench.condition.set ?? {}).toEqual({});
    expect(free.desk.history.done).toHaveLength(1);
    expect(set(HOLD, LET_GO, { do: "undo" })).toEqual({});
  });

  test("each hold is a step of its own", () => {
    expect(openAfter(VENTS, HOLD, LET_GO, HOLD, LET_GO).desk.history.done).toHaveLength(2);
  });

  test("a hold that is pinned stays; held and let go again it springs back", () => {
    expect(openAfter(VENTS, HOLD, PIN)).toMatchObject({ held: [] });
    expect(set(HOLD, PIN)).toEqual({ S6: "open" });
    expect(set(HOLD, PIN, HOLD, LET_GO)).toEqual({});
  });

  test("letting go of what nobody holds changes nothing and says nothing", () => {
    const state = stateAfter(VENTS, LET_GO);
    expect(openIn(state).desk.history.done).toEqual([]);
    expect(state.notices).toEqual([]);
  });

  test("two fingers hold two controls, and one lets go", () => {
    const two = openAfter(VENTS, HOLD, { do: "hold", control: "S5", position: "close" }, LET_GO);
    expect(two.held).toEqual(["S5"]);
    expect(two.desk.bench.condition.set).toEqual({ S5: "close" });
  });
});

describe("undo and redo", () => {
  test("go back and forth by name", () => {
    const done = stateAfter(VENTS, KEY_ON, BREAK);
    const [first, second] = openIn(done).desk.history.done.map(({ edit }) => edit.name);
    expect([undoName(done), redoName(done)]).toEqual([second, null]);
    const undone = reduce(done, { do: "undo" });
    expect([undoName(undone), redoName(undone)]).toEqual([first, second]);
    expect(openIn(undone).desk.bench.faults).toEqual([]);
    const again = reduce(undone, { do: "redo" });
    expect(openIn(again).desk.bench).toEqual(openIn(done).desk.bench);
  });

  test("with nothing to undo nothing is done or told", () => {
    const state = stateAfter(VENTS);
    expect(reduce(state, { do: "undo" })).toBe(state);
    expect(reduce(state, { do: "redo" })).toBe(state);
  });

  test("undo takes every finger off", () => {
    expect(openAfter(VENTS, HOLD, { do: "undo" }).held).toEqual([]);
  });

  test("a screen reader is told what was undone, not what was done before it", () => {
    const two = stateAfter(VENTS, BREAK, { do: "make", command: (bench) => plantFault(bench, "M4:open") });
    const name = undoName(two);
    expect(reduce(two, { do: "undo" }).said.startsWith(`Undone: ${name}.`)).toBe(true);
  });

  test("a drag is one step, or none where it is abandoned", () => {
    const length = (metres: string): Action => ({ do: "make", command: (bench) => changeLength(bench, "W13", metres) });
    const drag: readonly Action[] = [{ do: "begin-drag" }, length("4"), length("5")];
    expect(openAfter(VENTS, ...drag, { do: "keep-drag" }).desk.history.done).toHaveLength(1);
    const left = openAfter(VENTS, ...drag, { do: "cancel-drag" });
    expect(left.desk.history.done).toEqual([]);
    expect(left.desk.bench.circuit).toBe(VENTS);
  });
});

describe("edits", () => {
  test("a fault is put in and shown", () => {
    const state = stateAfter(VENTS, BREAK);
    expect(openIn(state).desk.bench.faults).toEqual([{ target: "W13", mode: "open" }]);
    expect(showsFaults(state)).toBe(true);
  });

  test("a fault that cannot be is told in one sentence, and nothing is put in", () => {
    const state = stateAfter(VENTS, { do: "make", command: (bench) => plantFault(bench, "W999:open") });
    expect(openIn(state).desk.bench.faults).toEqual([]);
    expect(state.notices).toHaveLength(1);
    expect(state.notices[0]!.words).toMatch(/^\S.*\.$/);
  });

  test("edits of one group are undone as one", () => {
    const length = (metres: string): Action => {
      return { do: "make", command: (bench) => changeLength(bench, "W13", metres), group: "length W13" };
    };
    const state = stateAfter(VENTS, length("4"), length("5"), length("6"));
    expect(openIn(state).desk.history.done).toHaveLength(1);
    expect(openIn(reduce(state, { do: "undo" })).desk.bench.circuit).toEqual(VENTS);
  });

  test("a sample is a trial until its circuit is edited, however it is played with", () => {
    const sample = (...actions: readonly Action[]) =>
      [{ do: "sample-opened", circuit: VENTS } as const, ...actions].reduce(reduce, createAppStore().getState()).open;
    const edit: Action = { do: "make", command: (bench) => changeLength(bench, "W13", "4") };
    expect(sample(KEY_ON, BREAK)).toMatchObject({ isTrial: true, id: null });
    expect(sample(edit)).toMatchObject({ isTrial: false });
    expect(sample(edit, { do: "undo" })).toMatchObject({ isTrial: false });
  });
});

describe("several chosen, tools and the part editor", () => {
  const part = (id: string) => ({ is: "part", id }) as const;
  const edit: Action = { do: "edit-part", part: "S6" };
  const rename: Action = { do: "make", command: (bench) => renamePart(bench, "S6", "S16") };
  const remove: Action = { do: "make", command: (bench) => removeThings(bench, ["S6"]) };

  test("one more is chosen beside the others, and let go by choosing it again", () => {
    const both = openAfter(VENTS, { do: "choose", thing: part("S6") }, { do: "choose-also", thing: part("M4") });
    expect([both.chosen, both.also]).toEqual([part("S6"), [part("M4")]]);
    const left = openAfter(
      VENTS,
      { do: "choose-all", things: [part("S6"), part("M4")] },
      { do: "choose-also", thing: part("S6") },
    );
    expect([left.chosen, left.also]).toEqual([part("M4"), []]);
  });

  test("a tool in hand lets go of what is chosen; what is deleted is not chosen any more", () => {
    const all: Action = { do: "choose-all", things: [part("M4"), part("S6")] };
    expect(openAfter(VENTS, all, { do: "use-tool", tool: { is: "wire" } })).toMatchObject({ chosen: null, also: [] });
    expect(openAfter(VENTS, all, remove)).toMatchObject({ chosen: part("M4"), also: [] });
  });

  test("the editor follows its part to another designator and back, and closes once it is gone or another page is shown", () => {
    expect(openAfter(VENTS, edit, rename).editing).toBe("S16");
    expect(openAfter(VENTS, edit, rename, { do: "undo" }).editing).toBe("S6");
    expect(openAfter(VENTS, edit, remove).editing).toBeNull();
    expect(openAfter(VENTS, edit, { do: "show-page", page: "p1" }).editing).toBeNull();
  });
});

describe("what is in sight", () => {
  test("the page with most controls is shown first", () => expect(openAfter(VENTS).page).toBe("p2"));

  test("choosing the same again is no change", () => {
    const state = stateAfter(VENTS, { do: "choose", thing: { is: "part", id: "S6" } });
    expect(openIn(state).chosen).toEqual({ is: "part", id: "S6" });
    expect(reduce(state, { do: "choose", thing: { is: "part", id: "S6" } }).open).toBe(state.open);
  });

  test("what is found on another page brings that page into sight", () => {
    const open = openAfter(VENTS, { do: "show-page", page: "p1" }, { do: "find", thing: { is: "part", id: "S6" } });
    expect(open).toMatchObject({
      page: VENTS.placement.parts.S6!.page,
      chosen: { is: "part", id: "S6" },
      wish: { want: { show: { is: "part", id: "S6" } }, count: 1 },
    });
  });

  test("a name that nothing bears finds nothing", () => {
    const state = stateAfter(VENTS);
    expect(reduce(state, { do: "find-named", id: "Z1" }).open).toBe(state.open);
    expect(openAfter(VENTS, { do: "find-named", id: "W1" }).chosen).toEqual({ is: "wire", id: "W1" });
    expect(openAfter(VENTS, { do: "find-named", id: "X5-6" }).chosen).toEqual({ is: "point", id: "X5-6" });
  });

  test("every wish has a number of its own, over benches too", () => {
    const fit: Action = { do: "wish", want: { zoom: "fit" } };
    const twice = stateAfter(VENTS, fit, fit);
    expect(openIn(twice).wish?.count).toBe(2);
    const opened = { id: "c2", version: 1, circuit: VENTS, bench: null, benchVersion: 0, known: false };
    expect(openIn(reduce(reduce(twice, { do: "opened", opened }), fit)).wish?.count).toBe(3);
  });

  test("each page keeps the view it was left in", () => {
    const viewport = { scale: 2, x: 3, y: 4 };
    expect(openAfter(VENTS, { do: "look-at", page: "p3", viewport }).viewports).toEqual({ p3: viewport });
  });
});

describe("answers", () => {
  const asked: Action = { do: "asked", about: "verdicts" };

  test("the old answer stays while a new one is worked out, and goes when it is there", () => {
    const first = stateAfter(VENTS, { do: "judged", answer: { a: "works" } });
    const waiting = reduce(first, asked);
    expect(openIn(waiting).verdicts).toEqual({ answer: { a: "works" }, isOld: true, trouble: null });
    const second = reduce(waiting, { do: "judged", answer: { a: "dead" } });
    expect(openIn(second).verdicts).toEqual({ answer: { a: "dead" }, isOld: false, trouble: null });
  });

  test("a worker's trouble is kept beside the old answer", () => {
    const words = "no convergence";
    const state = stateAfter(VENTS, { do: "judged", answer: { a: "works" } }, asked, {
      do: "worker-troubled",
      about: "verdicts",
      words,
      fault: new Error(words),
    });
    expect(openIn(state).verdicts).toEqual({ answer: { a: "works" }, isOld: false, trouble: words });
  });

  test("the library's count is that without a search", () => {
    const actions: readonly Action[] = [
      { do: "shelved", circuits: [], deleted: [], jobs: [], deletedJobs: [], count: 7 },
      { do: "search", words: "horn" },
      { do: "shelved", circuits: [], deleted: [], jobs: [], deletedJobs: [], count: 1 },
    ];
    expect(actions.reduce(reduce, createAppStore().getState()).shelf.count).toBe(7);
  });
});

describe("notices", () => {
  const tell = (words: string): Action => ({ do: "tell", notice: { title: "Note.", words, isError: false } });

  test("the newest three stay, the same words once", () => {
    const words = (...said: readonly string[]) =>
      said
        .map(tell)
        .reduce(reduce, createAppStore().getState())
        .notices.map((notice) => notice.words);
    expect(words("a", "b", "c", "d")).toEqual(["b", "c", "d"]);
    expect(words("a", "b", "a")).toEqual(["b", "a"]);
  });

  test("what the library says stays while notes of successes come and go, once, and until it can be written again", () => {
    const lost: Action = { do: "tell", notice: ofLibrary(refuse("store-edits-lost", { kept: "x.db" }).refusal) };
    const looked: Action = { do: "tell", notice: ofLibrary(refuse("store-looked-at").refusal) };
    const again: Action = { do: "tell", notice: ofLibrary(refuse("store-own-again").refusal) };
    const after = (...actions: readonly Action[]) =>
      actions.reduce(reduce, stateAfter(VENTS)).notices.map(({ title, words }) => (title === "Note." ? words : title));
    const [first] = after(lost);
    expect(after(lost, tell("a"), tell("b"), tell("c"))).toEqual([first, "b", "c"]);
    const unkept: Action = {
      do: "tell",
      notice: notKept(openIn(stateAfter(VENTS)), refuse("store-looked-at").refusal, false),
    };
    expect(after(looked, unkept)).toEqual([expect.stringMatching(/not kept yet/)]);
    expect(after(lost, looked, again)).toEqual([first, expect.stringMatching(/kept again/)]);
  });

  test("an error goes with the next success of its kind, and no other", () => {
    const refusal: Action = { do: "throw", control: "S99", position: "on" };
    const wrong = stateAfter(VENTS, refusal, {
      do: "tell",
      notice: { title: "Not saved.", words: "x", isError: true, kind: "file" },
    });
    expect(wrong.notices).toHaveLength(2);
    const titles = (...actions: readonly Action[]) => actions.reduce(reduce, wrong).notices.map(({ title }) => title);
    expect(titles({ do: "choose", thing: null })).toEqual(["Not done.", "Not saved."]);
    expect(titles(KEY_ON)).toEqual(["Not saved."]);
    const saved = { title: "Saved.", words: "x", isError: false, kind: "file" } as const;
    expect(titles({ do: "tell", notice: saved })).toEqual(["Not done.", "Saved."]);
    expect(titles(tell("a"))).toEqual(["Not done.", "Not saved.", "Note."]);
  });

  test("what cannot be opened is forgotten once something is", () => {
    const failed = { title: "x was not opened.", words: "y", isError: true, kind: "open" } as const;
    const told = reduce(createAppStore().getState(), { do: "tell", notice: failed });
    expect(told.notices).toHaveLength(1);
    const opened = { id: "c1", version: 1, circuit: VENTS, bench: null, benchVersion: 0, known: false };
    expect(reduce(told, { do: "opened", opened }).notices).toEqual([]);
  });

  test("deleting with nothing chosen says so", () => {
    const state = stateAfter(VENTS);
    const command = keyCommand("remove", openIn(state).desk.bench, [])!;
    expect(reduce(state, { do: "make", command }).notices).toMatchObject([
      { title: "Not done.", words: "Nothing is chosen." },
    ]);
  });

  test("one is put away", () => {
    const state = [tell("a"), tell("b")].reduce(reduce, createAppStore().getState());
    expect(reduce(state, { do: "put-away", notice: state.notices[0]!.id }).notices).toMatchObject([{ words: "b" }]);
  });
});

describe("the window", () => {
  test("the look follows the system until it is set", () => {
    const start = createAppStore("dark").getState();
    expect(start.theme).toBe("dark");
    const light = reduce(start, { do: "set", settings: { theme: "light" } });
    expect(light.theme).toBe("light");
    expect(reduce(light, { do: "system-theme", theme: "dark" }).theme).toBe("light");
    const system = reduce(light, { do: "set", settings: { theme: "system" } });
    expect(reduce(system, { do: "system-theme", theme: "light" }).theme).toBe("light");
  });

  test("nothing is found or printed in the library", () => {
    const start = createAppStore().getState();
    expect(reduce(start, { do: "open-find" })).toBe(start);
    expect(reduce(start, { do: "open-print" })).toBe(start);
    expect(reduce(start, KEY_ON)).toBe(start);
  });

  test("a complaint is chosen", () => {
    const command: Action = { do: "make", command: (bench) => chooseComplaint(bench, "rear-open-own") };
    expect(openAfter(VENTS, command).desk.bench.complaint).toBe("rear-open-own");
  });
});

describe("the answer before", () => {
  const ordered = (complaint: string, minutes: number): Action => ({
    do: "ordered",
    answer: { order: { ...NO_ORDER, complaint, minutes }, states: [], wiggle: null },
  });

  test("is kept to compare with while the complaint is the same, and never for another one", () => {
    const same = openAfter(VENTS, ordered("Middle vent opens: dead", 9), ordered("Middle vent opens: dead", 4));
    expect(same.earlier?.order.minutes).toBe(9);
    expect(openAfter(VENTS, ordered("Middle vent opens: dead", 9)).earlier).toBeNull();
    const other = openAfter(VENTS, ordered("Middle vent opens: dead", 9), ordered("Rear vent opens: dead", 4));
    expect(other.earlier).toBeNull();
  });
});
