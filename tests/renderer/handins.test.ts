import { describe, expect, test } from "vitest";
import { progressOf, readTasks } from "../../core/lesson/tasks.ts";
import { memoryHost } from "../../renderer/host/memory.ts";
import { deskAnswer, emptyDesk } from "../../renderer/instructor/deskAnswer.ts";
import type { DeskPort } from "../../renderer/instructor/deskAsker.ts";
import type { DeskSaid } from "../../renderer/instructor/deskQuestion.ts";
import { takeFiles } from "../../renderer/instructor/handinFiles.ts";
import { allMarks, type HandinsAct, listedHandins, momentText } from "../../renderer/instructor/handins.ts";
import { handinsReaction } from "../../renderer/instructor/handinsReaction.ts";
import { openFile } from "../../renderer/state/openFile.ts";
import { createAppStore } from "../../renderer/state/store.ts";
import type { CallName } from "../../schemas/callNames.ts";
import { type Argument, CALLS } from "../../schemas/calls.ts";
import { formatExercise, openForLearner, readExercise } from "../../schemas/exercise.ts";
import { formatHandin } from "../../schemas/handin.ts";
import { ROUNDS_LIMITS } from "../../schemas/seal.ts";
import { got } from "../edit/given.ts";
import { exerciseWith, HORN, LAMP, worked } from "../lesson/given.ts";

const PASSPHRASE = "green pear 7";

/** An exercise, and what learners hand in of it. */
async function given(title: string, passphrase = PASSPHRASE, circuit = LAMP, fault = "W4:open") {
  const made = exerciseWith(circuit, fault, { title });
  const hidden = { fault, seed: null, note: "" };
  const text = got(await formatExercise(made.exercise, hidden, passphrase, ROUNDS_LIMITS.least));
  const opened = got(await openForLearner(got(readExercise(text))));
  const handin = (learner: string, ...moves: readonly string[]) =>
    formatHandin(learner, opened, worked(made, ...moves).route);
  return { text, handin };
}

const lamp = await given("Dark lamp");
const PROVEN = ["throw S1=on", "open panel", "probe X1-2", "lamp battery+/GP1.stud", "verdict W4:open"];
const anna = await lamp.handin("Anna", ...PROVEN);
const bo = await lamp.handin("Bo", "verdict W4:open");
const file = (name: string, text: string): File => new File([text], name);

/** A page with an instructor's desk whose worker answers in this thread; `kill` is what becomes of a worker that fails. */
function page(library = memoryHost(new Map(), () => "2026-03-02T08:00:00Z")) {
  const ports: DeskPort[] = [];
  const sent: { readonly name: string; readonly argument: Readonly<Record<string, unknown>> }[] = [];
  const host = {
    name: "loopback",
    ask: (name: CallName, argument: Readonly<Record<string, unknown>>) => {
      if (name.startsWith("marks.")) return library.ask(name, argument as Argument<CallName>);
      sent.push({ name, argument });
      const printed = { pdf: "JVBERi0=", name: "Class.pdf", sheets: 1 };
      return Promise.resolve({ ok: true, value: name === "print.class" ? printed : { done: "saved", where: "here" } });
    },
  } as unknown as Parameters<typeof handinsReaction>[0];
  const reaction = handinsReaction(host, { chooseFile() {}, download() {} }, () => {
    const desk = emptyDesk();
    const port: DeskPort = {
      onmessage: null,
      onerror: null,
      terminate() {},
      postMessage({ number, question }) {
        const say = (data: DeskSaid): void => port.onmessage?.({ data } as MessageEvent<DeskSaid>);
        void deskAnswer(desk, question, () => {}).then(
          (answer) => say({ number, answer }),
          (error: Error) => say({ number, trouble: error.message }),
        );
      },
    };
    ports.push(port);
    return port;
  });
  const store = createAppStore("light", [reaction]);
  const act = (next: HandinsAct): void => store.dispatch({ do: "handins", act: next });
  const desk = () => store.getState().handins;
  const until = (is: () => boolean) => expect.poll(is, { timeout: 5_000, interval: 5 }).toBe(true);
  const rests = () => until(() => desk().done === null && !desk().isOpening);
  return {
    act,
    desk,
    until,
    rests,
    store,
    sent,
    kill: () => ports.at(-1)?.onerror?.({ message: "gone" } as ErrorEvent),
  };
}

const codes = (desk: ReturnType<ReturnType<typeof page>["desk"]>) =>
  desk.handins.map(({ marked }) => marked?.refusal?.code ?? marked?.grade?.is);

describe("the instructor's desk", () => {
  test("many files at once: what cannot be graded says why, and the rest is graded", async () => {
    const { act, desk, rests } = page();
    const other = await given("Other lamp");
    const remade = await given("Dark lamp");
    act(
      await takeFiles([
        file("anna.handin.json", anna),
        file("Lamp.exercise.json", lamp.text),
        file("again.handin.json", anna),
        file("edited.handin.json", anna.replace('"minutes": 0.1', '"minutes": 0')),
        file("renamed.handin.json", anna.replace('"learner": "Anna"', '"learner": "Cleo"')),
        file("cut.handin.json", anna.slice(0, 900)),
        file("elsewhere.handin.json", await other.handin("Dan", "verdict W4:open")),
        file("remade.handin.json", await remade.handin("Eva", "verdict W4:open")),
        file("notes.txt", "buy bread"),
        file("broken.exercise.json", lamp.text.replace('"word": "dead"', '"word": "sad"')),
      ]),
    );
    await rests();
    // Shut, nothing is graded, and what is wrong with a file by itself is known already.
    expect(codes(desk())[0]).toBe("handin-waits");
    act({ act: "open", passphrase: PASSPHRASE });
    await rests();
    expect(desk().exercises).toMatchObject([{ title: "Dark lamp", trouble: null, seen: { fault: "W4 broken" } }]);
    const names = desk().handins.map(({ name, marked }) => [name, marked?.refusal?.code ?? marked?.grade?.is]);
    expect(Object.fromEntries(names)).toEqual({
      "anna.handin.json": "right",
      "edited.handin.json": "handin-edited",
      "renamed.handin.json": "handin-head",
      "cut.handin.json": "file-json",
      "elsewhere.handin.json": "handin-waits",
      "remade.handin.json": "handin-other",
      "notes.txt": "file-not-json",
      "broken.exercise.json": "file-choice",
    });
  });

  test("with several exercises a passphrase opens those that it fits; the others are named and stay shut", async () => {
    const { act, desk, rests, store } = page();
    const other = await given("Other lamp", "blue plum 9");
    act(await takeFiles([file("a.exercise.json", lamp.text), file("b.exercise.json", other.text)]));
    act({ act: "open", passphrase: PASSPHRASE });
    await rests();
    expect(desk().exercises.map(({ seen }) => seen !== null)).toEqual([true, false]);
    expect(desk().exercises[1]!.trouble).toContain('"Other lamp"');
    act({ act: "open", passphrase: "blue plum 9" });
    await rests();
    expect(desk().exercises.every(({ seen, trouble }) => seen !== null && trouble === null)).toBe(true);
    expect(JSON.stringify(store.getState())).not.toContain(PASSPHRASE);
  });

  test("a hand-in that is opened elsewhere in the window comes onto the desk; an exercise put away is shut again", async () => {
    const { act, desk, rests, store } = page();
    await openFile(store, file("anna.handin.json", anna));
    expect(desk()).toMatchObject({ isShown: true, handins: [{ name: "anna.handin.json" }] });
    act(await takeFiles([file("l", lamp.text)]));
    act({ act: "open", passphrase: PASSPHRASE });
    await rests();
    expect(codes(desk())).toEqual(["right"]);
    act({ act: "put-exercise-away", text: lamp.text });
    act(await takeFiles([file("bo.handin.json", bo)]));
    await rests();
    expect(codes(desk())).toEqual(["right", "handin-waits"]);
  });

  test("the table is sorted by any column, up and down; those with nothing in it stay last", async () => {
    const { act, desk, rests } = page();
    act(await takeFiles([file("x.json", "?"), file("b", bo), file("a", anna), file("l", lamp.text)]));
    act({ act: "open", passphrase: PASSPHRASE });
    await rests();
    const listed = () => listedHandins(desk()).map(({ marked }) => marked!.learner);
    expect(listed()).toEqual(["x.json", "Bo", "Anna"]);
    act({ act: "sort", by: "result" });
    expect(listed()).toEqual(["Anna", "Bo", "x.json"]);
    act({ act: "sort", by: "minutes" });
    expect(listed()).toEqual(["Bo", "Anna", "x.json"]);
    act({ act: "sort", by: "minutes" });
    expect(listed()).toEqual(["Anna", "Bo", "x.json"]);
    act({ act: "put-away", key: desk().handins[0]!.key });
    expect(listed()).toEqual(["Anna", "Bo"]);
  });

  test("a route is drawn move by move with the fault in it, and what was read stands at its point", async () => {
    const { act, desk, rests, until } = page();
    const horns = await given("Horns", PASSPHRASE, HORN, "W15:open");
    const route = await horns.handin("Anna", "throw S1=pressed", "open headlamp", "probe X10-1b", "lamp X10-1b");
    act(await takeFiles([file("a", route), file("h", horns.text)]));
    act({ act: "open", passphrase: PASSPHRASE });
    await rests();
    const marked = desk().handins[0]!.marked!;
    expect(marked.steps.map(({ move, reading }) => [move, reading])).toEqual([
      ["throw S1=pressed", null],
      ["open headlamp", null],
      ["probe X10-1b", 1],
      ["4 A lamp X10-1b", 2],
    ]);
    expect(marked.steps[2]).toMatchObject({ condition: { set: { S1: "pressed" } }, leads: ["X10-1b", "battery -"] });
    expect(marked.steps[2]!.off.length).toBeGreaterThan(0);
    expect(marked.pageOf).toHaveLength(5);
    const drawn = async (step: number): Promise<string> => {
      const moment = { handin: marked.id!, step, page: marked.pages[0]!.id, palette: "light", look: "iec" } as const;
      act({ act: "draw", moment });
      await until(() => desk().picture?.of === momentText(moment));
      return desk().picture!.svg;
    };
    const before = await drawn(2);
    expect(before).not.toContain(">1: ");
    // The plug before the broken wire has the feed, and the flag says so where it was read.
    expect(await drawn(3)).toContain(">1: 12.");
    expect(await drawn(4)).toMatch(/>2: [^<]*\(2\)</);
  });

  test("the table goes out as CSV and as a PDF in the order in which it is listed, with the school's tasks", async () => {
    const { act, rests, sent, store, until } = page();
    store.dispatch({ do: "set", settings: { tasks: "Find an open ground: Dark lamp" } });
    act(await takeFiles([file("b", bo), file("a", anna), file("x.json", "?"), file("l", lamp.text)]));
    act({ act: "open", passphrase: PASSPHRASE });
    await rests();
    act({ act: "sort", by: "learner" });
    act({ act: "save", as: "csv" });
    await until(() => sent.length === 1);
    expect(sent[0]!.argument.content).toMatch(
      /^Learner,[^\n]*\nAnna,Dark lamp,"right, proven",[^\n]*\nBo,[^\n]*\nx.json,/,
    );
    act({ act: "save", as: "pdf" });
    await until(() => sent.length === 3);
    const asked = CALLS["print.class"].argument.parse(sent[1]!.argument);
    expect(asked.rows.map(({ learner, result }) => [learner, result])).toEqual([
      ["Anna", "Right, proven"],
      ["Bo", "Right, not proven"],
      ["x.json", ""],
    ]);
    expect(asked.tasks).toEqual([
      { learner: "Anna", done: ["Find an open ground"], tried: [] },
      { learner: "Bo", done: [], tried: ["Find an open ground"] },
    ]);
    expect(sent[2]).toMatchObject({ name: "files.save", argument: { name: "Class.pdf", encoding: "base64" } });
  });

  test("what learners showed is kept: a later desk knows it without their files, until they are forgotten", async () => {
    const library = memoryHost(new Map(), () => "2026-03-02T08:00:00Z");
    const first = page(library);
    first.act(await takeFiles([file("a", anna), file("b", bo), file("l", lamp.text)]));
    first.act({ act: "open", passphrase: PASSPHRASE });
    await first.until(() => first.desk().kept?.length === 2);
    const later = page(library);
    later.act({ act: "show" });
    await later.until(() => later.desk().kept !== null);
    const [task] = got(readTasks("Find an open ground: Dark lamp"));
    const progress = (learner: string) => progressOf(task!, allMarks(later.desk()), learner);
    expect([progress("Anna"), progress("Bo")]).toEqual(["done", "tried"]);
    // Graded again, they are no others.
    later.act(await takeFiles([file("a", anna), file("l", lamp.text)]));
    later.act({ act: "open", passphrase: PASSPHRASE });
    await later.rests();
    expect(allMarks(later.desk())).toHaveLength(2);
    later.act({ act: "forget", learner: "Bo" });
    await later.until(() => later.desk().kept?.length === 1);
    expect(progress("Bo")).toBe("none");
  });

  test("a worker that fails is said; the exercises are to be opened again, and no file is lost", async () => {
    const { act, desk, rests, kill } = page();
    act(await takeFiles([file("a", anna), file("l", lamp.text)]));
    act({ act: "open", passphrase: PASSPHRASE });
    await rests();
    kill();
    act(await takeFiles([file("b", bo)]));
    await rests();
    expect(desk().exercises[0]!.seen).toBeNull();
    expect(codes(desk())).toEqual(["right", "handin-waits"]);
    act({ act: "open", passphrase: PASSPHRASE });
    await rests();
    expect(codes(desk())).toEqual(["right", "right"]);
  });
});
