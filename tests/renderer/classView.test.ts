import { describe, expect, test } from "vitest";
import { lotsFrom } from "../../core/base/seed.ts";
import { WIRE_STATES } from "../../core/base/states.ts";
import { strokesOf } from "../../core/drawing/ink.ts";
import { clipLead } from "../../core/edit/commands/clipLead.ts";
import { layInstrument } from "../../core/edit/commands/layInstrument.ts";
import { plantFault } from "../../core/edit/commands/plantFault.ts";
import { setUp } from "../../core/edit/commands/setUp.ts";
import { cupboardFor } from "../../core/lesson/cupboard.ts";
import { questionAt } from "../../core/lesson/oneQuestion.ts";
import { questionsOf } from "../../core/lesson/questions.ts";
import { travelling } from "../../core/lesson/travelling.ts";
import { CLASS_WORDS } from "../../core/lesson/wall.ts";
import { branchNow } from "../../renderer/branch/branchNow.ts";
import { leadsAlone, leadsHere } from "../../renderer/canvas/leadTags.ts";
import { actionOf } from "../../renderer/class/acts.ts";
import { type ClassRoom, classShown } from "../../renderer/class/classShown.ts";
import { type ClassChannel, linkToClass, type ToClass } from "../../renderer/class/link.ts";
import { playingReaction } from "../../renderer/class/playing.ts";
import type { Action } from "../../renderer/state/action.ts";
import { actionForKey } from "../../renderer/state/keys.ts";
import { reduce } from "../../renderer/state/reduce.ts";
import { benchOf } from "../../renderer/state/state.ts";
import { createAppStore } from "../../renderer/state/store.ts";
import { countsNow, differsWire, liveShown } from "../../renderer/state/views.ts";
import { got, VENTS } from "../edit/given.ts";
import { openAfter, openIn, stateAfter } from "./stage.ts";

const ROOM: ClassRoom = { width: 1280, height: 460, screen: 720 };
/** Colours that only a wire in a state has on the wall. */
const TELLING = WIRE_STATES.filter((state) => state !== "clash").map(
  (state) => strokesOf(`wire-${state}`, "light").strokes[0]!.colour,
);
const plant = (fault: string): Action => ({ do: "make", command: (bench) => plantFault(bench, fault) });
const toScene = (at: number): Action => ({
  do: "play-scenes",
  play: { at, shown: 0, isPlaying: false },
  isAnew: true,
});
const shownOf = (...actions: readonly Action[]) => classShown(stateAfter(VENTS, ...actions), ROOM);

describe("what the class sees", () => {
  test("is the scene with its place, the state of its focus in words, and the states of the drawing", () => {
    const { sheet, theme } = shownOf(toScene(2), { do: "teach", lesson: { focus: { is: "load", load: "M3" } } });
    expect(theme).toBe("light");
    expect(sheet).toMatchObject({ title: VENTS.scenes[2]!.label, place: `Scene 3 of ${VENTS.scenes.length}` });
    expect(sheet!.said).toMatch(/^M3 runs forward, .*\sA, from powered at .*\sV to grounded at .*\sV\.$/);
    expect(sheet!.key.map(({ words }) => words)).toEqual(["powered", "grounded"]);
    expect(sheet!.picture!.lit).toContain('data-of="M3"');
  });

  test("tells where no current flows, and of many loads those that work", () => {
    const apart: Action = {
      do: "make",
      command: (bench) => setUp(bench, { set: { S1: "on", S5: "open" }, apart: ["X7"] }),
    };
    const focus: Action = { do: "teach", lesson: { focus: { is: "load", load: "M3" } } };
    expect(shownOf(apart, focus).sheet!.said).toMatch(/^12\.\d.V on both sides of M3: no current\.$/);
    expect(shownOf(toScene(2)).sheet!.said).toContain("M3 runs forward");
  });

  test("has the controls of its focus to throw, those thrown lately first", () => {
    const focus: Action = { do: "teach", lesson: { focus: { is: "load", load: "M3" } } };
    const state = stateAfter(VENTS, toScene(2), focus);
    const { controls } = classShown(state, ROOM).sheet!;
    expect(controls[0]).toEqual({ key: "S5", words: "S5 open", isThrown: true, next: expect.any(String) });
    expect(controls.every(({ key }) => key !== "S6")).toBe(true);
    const thrown = reduce(state, actionOf({ act: "class-throw", control: "S5", position: "close" }, state)!);
    expect(openIn(thrown).desk.bench.condition.set).toMatchObject({ S5: "close" });
    expect(classShown(thrown, ROOM).sheet!.controls[0]!.words).toBe("S5 close");
  });

  test("is nothing while it is blank", () => {
    const shown = shownOf(toScene(2), { do: "class", classroom: { isBlank: true } });
    expect(shown.sheet).toBeNull();
    expect(JSON.stringify(shown)).not.toContain("M3");
  });

  test("never has the notes of the instructor, nor the scene that comes next; what is sent out has none either", () => {
    const scenes = VENTS.scenes.map((scene, at) => ({ ...scene, notes: `Say nothing of ${at}.` }));
    const noted = { ...VENTS, scenes };
    for (const at of scenes.keys()) {
      const told = JSON.stringify(classShown(stateAfter(noted, toScene(at)), ROOM));
      expect(told).not.toContain("Say nothing");
      if (scenes[at + 1]) expect(told).not.toContain(scenes[at + 1]!.caption!);
    }
    expect(JSON.stringify(travelling(noted))).not.toContain("Say nothing");
  });

  test("never has a fault that was put in: it is the same with it, unless what it does is to be seen", () => {
    const check = VENTS.checks.find(({ load }) => load === "M3")!;
    const stock = cupboardFor(VENTS, check).map(({ possible }) => possible);
    const lots = lotsFrom(7);
    const set: Action = { do: "make", command: (bench) => setUp(bench, check.condition) };
    const plain = shownOf(set);
    for (let trial = 0; trial < 8; trial++) {
      const { id, title } = stock[Math.floor(lots() * stock.length)]!;
      const planted = id.split("+").map(plant);
      expect(shownOf(set, ...planted), id).toEqual(plain);
      const seen = JSON.stringify(shownOf(set, ...planted, { do: "teach", lesson: { showsFaults: true } }));
      expect(seen).not.toContain(title);
      for (const one of id.split("+")) expect(seen).not.toContain(one);
    }
  });
});

describe("predict, then show", () => {
  const at = VENTS.checks.find(({ load }) => load === "M3")!.condition;
  const set: Action = { do: "make", command: (bench) => setUp(bench, at) };
  const ask = (point: string): Action => ({
    do: "ask",
    question: got(questionAt(VENTS, at, { point, asks: "state" })),
  });
  const hand = (choice: number): Action => ({ do: "hand", choice });

  test("covered up, nothing that the class is sent tells a state, volts or a work, nor what the scene says of them", () => {
    for (const scene of VENTS.scenes.keys()) {
      const text = JSON.stringify(shownOf(toScene(scene), { do: "teach", lesson: { isCovered: true } }).sheet);
      for (const colour of TELLING) expect(text).not.toContain(colour);
      expect(text).not.toMatch(/\d\s?V\b/);
      expect(text).not.toContain(VENTS.scenes[scene]!.caption);
    }
  });

  test("a question covers the drawing up, shows hands and answer only together, and then the drawing", () => {
    const question = got(questionAt(VENTS, at, { point: "X5-4", asks: "state" }));
    const asked = shownOf(set, ask("X5-4"), hand(1), hand(1), hand(0)).sheet!;
    expect(asked.title).toBe(question.text);
    expect(asked.question).toEqual({
      choices: question.choices.map(({ answer }) => ({ answer, told: null })),
      answered: 3,
      reason: null,
    });
    const before = JSON.stringify(asked);
    for (const sentence of question.reason) expect(before).not.toContain(sentence);
    for (const colour of TELLING) expect(before).not.toContain(colour);
    const shown = shownOf(set, ask("X5-4"), hand(1), hand(1), hand(0), { do: "reveal" }).sheet!;
    expect(shown.question!.choices.map(({ told }) => [told?.isRight, told?.hands])).toEqual([
      [true, 1],
      [false, 2],
      [false, 0],
      [false, 0],
    ]);
    expect(shown.question!.reason).toBe(
      [question.reason[1], question.reason.slice(2).at(-1)].filter(Boolean).join(" "),
    );
    expect(shown.key.length).toBeGreaterThan(0);
  });

  test("a question is asked of the circuit with nothing wrong, set up as it says, also where it was thrown since", () => {
    const away: Action = { do: "make", command: (bench) => setUp(bench, {}) };
    const state = stateAfter(VENTS, set, plant("W13:open"), ask("X5-4"), away, hand(0), { do: "reveal" });
    expect(openIn(state).desk.bench.condition).toEqual(at);
    const plain = shownOf(set, ask("X5-4"), hand(0), { do: "reveal" });
    const faulty = [set, plant("W13:open"), { do: "teach", lesson: { showsFaults: true } }] as const;
    expect(shownOf(...faulty, ask("X5-4"), hand(0), { do: "reveal" })).toEqual(plain);
  });

  test("what the scene keeps to ask comes first, each once", () => {
    const questions = [
      { asks: "state", point: "X5-4" },
      { asks: "volts", point: "X5-5", black: "battery -" },
    ] as const;
    const asking = { ...VENTS, scenes: VENTS.scenes.with(2, { ...VENTS.scenes[2]!, questions }) };
    const asked = (count: number): string =>
      openAfter(asking, toScene(2), ...Array.from({ length: count }, (): Action => ({ do: "ask-next" }))).lesson.asked!
        .question.text;
    const words = questionsOf(VENTS, asking.scenes[2]!).map(({ text }) => text);
    expect([asked(1), asked(2)]).toEqual(words);
    expect(words).not.toContain(asked(3));
  });

  test("the next question is another one; a scene that is stepped to takes it away", () => {
    const texts = [1, 2, 3].map((count) => {
      const asks = Array.from({ length: count }, (): Action => ({ do: "ask-next" }));
      return openAfter(VENTS, ...asks).lesson.asked!.question.text;
    });
    expect(new Set(texts).size).toBe(3);
    expect(openAfter(VENTS, { do: "ask-next" }, toScene(2)).lesson.asked).toBeNull();
  });

  test("covered in this window too, the drawing and its key tell nothing; else they do", () => {
    const cover: Action = { do: "teach", lesson: { isCovered: true } };
    expect(countsNow(stateAfter(VENTS, set, cover)).length).toBeGreaterThan(0);
    const both = stateAfter(VENTS, set, cover, { do: "teach", lesson: { isCoveredHere: true } });
    expect([countsNow(both), liveShown(both)!.wires.size]).toEqual([[], 0]);
    expect(countsNow(stateAfter(VENTS, set, { do: "teach", lesson: { isCoveredHere: true } })).length).toBeGreaterThan(
      0,
    );
  });

  test("covered in this window too, neither branch nor leads nor marks of a fault tell what they did before", () => {
    const meter: Action = {
      do: "make",
      command: (bench) => layInstrument(bench, "voltmeter"),
    };
    const onto: Action = { do: "make", command: (bench) => clipLead(bench, "1", "red", "S5.6") };
    const load: Action = { do: "print-what", sheets: { load: "M3" } };
    const open = stateAfter(VENTS, set, load, meter, onto, plant("W16:open"));
    const cover = { isCovered: true, isCoveredHere: true };
    const covered = reduce(open, { do: "teach", lesson: cover });
    expect(branchNow(open)).not.toBeNull();
    expect(branchNow(covered)).toBeNull();
    expect([differsWire(open, "W16"), differsWire(covered, "W16")]).toEqual([true, false]);
    const bench = benchOf(covered)!;
    expect(leadsHere(bench).some(({ words }) => words !== "")).toBe(true);
    expect(leadsAlone(bench).map(({ words }) => words)).toEqual(["", ""]);
  });
});

describe("the keys of the class view", () => {
  const press = (key: string) => ({ key, code: "", ctrlKey: false, metaKey: false, shiftKey: false, altKey: false });

  test("step, play, blank, grow and leave, over the window; beside it they are the drawing's", () => {
    const here = stateAfter(VENTS, { do: "class", classroom: { where: "here" } });
    expect(actionForKey(press("PageDown"), here)).toMatchObject({ do: "play-scenes", play: { at: 1 } });
    expect(actionForKey(press(" "), here)).toMatchObject({ do: "play-scenes", play: { isPlaying: true } });
    expect(actionForKey(press("b"), here)).toEqual({ do: "class", classroom: { isBlank: true } });
    expect(actionForKey(press("Escape"), here)).toEqual({ do: "close-class" });
    expect(actionForKey(press("F1"), here)).toBeNull();
    expect(actionForKey(press("b"), stateAfter(VENTS))).toBeNull();
    expect(actionForKey(press("F5"), stateAfter(VENTS))).toEqual({ do: "open-class", where: "any" });
  });

  test("words are never lower than a class can read, nor higher than fits", () => {
    const state = stateAfter(VENTS);
    expect(actionOf({ act: "class-smaller" }, state)).toEqual({
      do: "set",
      settings: { classWords: CLASS_WORDS.least },
    });
    const large = stateAfter(VENTS, { do: "set", settings: { classWords: CLASS_WORDS.most } });
    expect(actionOf({ act: "class-larger" }, large)).toEqual({ do: "set", settings: { classWords: CLASS_WORDS.most } });
  });
});

/** An instructor's window with a class window beside it: what it was told, and what it tells. */
function twoWindows() {
  const told: ToClass[] = [];
  const channel: ClassChannel = { postMessage: (said) => told.push(structuredClone(said) as ToClass), onmessage: null };
  const link = linkToClass(channel, (run) => run());
  const store = createAppStore("light", [link.reaction]);
  link.listen(store);
  store.dispatch({
    do: "opened",
    opened: { id: "c1", version: 1, circuit: VENTS, bench: null, benchVersion: 0, known: false },
  });
  const say = (said: unknown): void => channel.onmessage?.({ data: said } as MessageEvent<unknown>);
  return { store, told, say };
}

describe("a window beside this one", () => {
  test("asks to be shown, is told of each change once, and is sent away", () => {
    const { store, told, say } = twoWindows();
    expect(told).toEqual([{ say: "who" }]);
    say({ say: "here", room: ROOM });
    expect(store.getState().classroom.where).toBe("window");
    expect(told.at(-1)).toMatchObject({
      say: "show",
      shown: { sheet: { place: `Scene 1 of ${VENTS.scenes.length}` } },
    });
    const count = told.length;
    store.dispatch({ do: "hover", thing: { is: "part", id: "M3" } });
    expect(told).toHaveLength(count);
    say({ say: "act", asked: { act: "class-next" } });
    expect(told.at(-1)).toMatchObject({ shown: { sheet: { title: VENTS.scenes[1]!.label } } });
    store.dispatch({ do: "close-class" });
    expect(told.at(-1)).toEqual({ say: "leave" });
  });

  test("that goes is known to be gone; what is no word of it is left alone", () => {
    const { store, say } = twoWindows();
    say({ say: "here", room: ROOM });
    for (const said of [
      null,
      "here",
      { say: "act", asked: { act: "undo" } },
      { say: "act", asked: { act: "class-hand", choice: 9 } },
      { say: "here", room: { width: 0 } },
    ])
      say(said);
    expect(store.getState().classroom.where).toBe("window");
    expect(openIn(store).lesson.play.at).toBe(0);
    say({ say: "gone" });
    expect(store.getState().classroom.where).toBeNull();
  });
});

test("scenes go on by themselves while they are played, wherever they are shown, and are undone as one", () => {
  const clock: { tick: (() => void) | null } = { tick: null };
  const every = (run: () => void): (() => void) => {
    clock.tick = run;
    return () => {
      clock.tick = null;
    };
  };
  const store = createAppStore("light", [playingReaction(every)]);
  store.dispatch({
    do: "opened",
    opened: { id: "c1", version: 1, circuit: VENTS, bench: null, benchVersion: 0, known: false },
  });
  const act = (id: "class-play" | "class-next"): void => store.dispatch(actionOf({ act: id }, store.getState())!);
  act("class-play");
  for (let tick = 0; tick < 34; tick++) clock.tick?.();
  expect(openIn(store).lesson.play).toMatchObject({ at: 1, isPlaying: true });
  act("class-next");
  expect(openIn(store).desk.bench.condition).toEqual(VENTS.scenes[2]!.condition);
  act("class-play");
  expect(clock.tick).toBeNull();
  store.dispatch({ do: "undo" });
  expect(openIn(store).desk.bench.condition).toEqual({});
});
