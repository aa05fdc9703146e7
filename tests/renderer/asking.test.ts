import { describe, expect, test } from "vitest";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { PLAIN_WEIGHING } from "../../core/diagnose/weighing.ts";
import { chooseComplaint } from "../../core/edit/commands/chooseComplaint.ts";
import { movePart } from "../../core/edit/commands/movePart.ts";
import { plantFault } from "../../core/edit/commands/plantFault.ts";
import type { Action } from "../../renderer/state/action.ts";
import { askingReaction } from "../../renderer/state/asking.ts";
import { createAppStore } from "../../renderer/state/store.ts";
import { answerTo } from "../../renderer/workers/answer.ts";
import { type Asker, type WorkerPort, workerAsker } from "../../renderer/workers/asker.ts";
import { type PicturePort, workerDrawer } from "../../renderer/workers/drawer.ts";
import type { Answers, Asked, Question } from "../../renderer/workers/question.ts";
import type { SheetsWanted } from "../../renderer/workers/sheets.ts";
import { VENTS } from "../edit/given.ts";
import { openIn } from "./stage.ts";

const complain = (check: string): Action => ({ do: "make", command: (bench) => chooseComplaint(bench, check) });
const opened = (circuit: Circuit): Action => {
  return { do: "opened", opened: { id: "c1", version: 1, circuit, bench: null, benchVersion: 0, known: false } };
};
const settle = () => new Promise<void>((resolve) => setTimeout(resolve, 0));
const ORDER = answerTo(VENTS, {
  ask: "order",
  complaint: "rear-open-own",
  observed: {},
  readings: [],
  batteryVolts: null,
  sleepingAmps: null,
  when: [],
  wiggled: [],
  weighing: PLAIN_WEIGHING,
}) as Answers["order"];
const orderWith = (complaint: string): Answers["order"] => ({ ...ORDER, order: { ...ORDER.order, complaint } });

/** A page whose worker answers when the test does. */
function asking() {
  const asked: { readonly question: Question; readonly circuit: Circuit; answer(with_: unknown): Promise<void> }[] = [];
  const ask = (circuit: Circuit, question: Question) =>
    new Promise((resolve, reject) => {
      const answer = (value: unknown): Promise<void> => {
        if (value instanceof Error) reject(value);
        else resolve(value);
        return settle();
      };
      asked.push({ question, circuit, answer });
    });
  const store = createAppStore("light", [askingReaction({ ask } as Asker)]);
  store.dispatch(opened(VENTS));
  return { store, asked };
}

describe("asking", () => {
  test("nothing is asked before there is a complaint", () => expect(asking().asked).toEqual([]));

  test("the old answer stays, marked old, until the new one is there", async () => {
    const { store, asked } = asking();
    store.dispatch(complain("rear-open-own"));
    await asked[0]!.answer(orderWith("first"));
    store.dispatch(complain("rear-close-own"));
    expect(openIn(store).order).toMatchObject({ isOld: true, answer: { order: { complaint: "first" } } });
    await asked[1]!.answer(orderWith("second"));
    expect(openIn(store).order).toMatchObject({ isOld: false, answer: { order: { complaint: "second" } } });
    expect(openIn(store).step).toBe(ORDER.order.steps[0]!.number);
  });

  test("an older answer that comes late is let go", async () => {
    const { store, asked } = asking();
    store.dispatch(complain("rear-open-own"));
    store.dispatch(complain("rear-close-own"));
    await asked[1]!.answer(orderWith("second"));
    await asked[0]!.answer(orderWith("first"));
    expect(openIn(store).order).toMatchObject({ isOld: false, answer: { order: { complaint: "second" } } });
  });

  test("an older answer that comes first does not pass for the new one", async () => {
    const { store, asked } = asking();
    store.dispatch(complain("rear-open-own"));
    store.dispatch(complain("rear-close-own"));
    await asked[0]!.answer(orderWith("first"));
    expect(openIn(store).order).toMatchObject({ isOld: true, answer: null });
  });

  test("an answer about a bench that was put away does not reach the next", async () => {
    const { store, asked } = asking();
    store.dispatch(complain("rear-open-own"));
    store.dispatch(opened({ ...VENTS, title: "Other" }));
    await asked[0]!.answer(orderWith("first"));
    expect(openIn(store).order.answer).toBeNull();
    store.dispatch({ do: "close" });
    expect(store.getState().open).toBeNull();
  });

  test("the same circuit brought out again is asked about again", async () => {
    const { store, asked } = asking();
    store.dispatch(complain("rear-open-own"));
    await asked[0]!.answer(ORDER);
    store.dispatch({ do: "close" });
    store.dispatch(opened(VENTS));
    store.dispatch(complain("rear-open-own"));
    expect(asked).toHaveLength(2);
  });

  test("what moves no volt asks nothing", async () => {
    const { store, asked } = asking();
    store.dispatch(complain("rear-open-own"));
    store.dispatch({ do: "make", command: (bench) => movePart(bench, "S6", { x: 100, y: 60 }) });
    store.dispatch({ do: "choose", thing: { is: "part", id: "S6" } });
    store.dispatch({ do: "throw", control: "S1", position: "on" });
    expect(openIn(store).desk.history.done).toHaveLength(3);
    expect(asked).toHaveLength(1);
  });

  test("what the program got wrong stands beside the old answer", async () => {
    const { store, asked } = asking();
    store.dispatch(complain("rear-open-own"));
    await asked[0]!.answer(orderWith("first"));
    store.dispatch(complain("rear-close-own"));
    await asked[1]!.answer(new Error("no convergence"));
    expect(openIn(store).order).toMatchObject({
      isOld: false,
      trouble: "no convergence",
      answer: { order: { complaint: "first" } },
    });
  });

  test("a table is asked for with the faults that are shown, of one connector or of all", () => {
    const { store, asked } = asking();
    store.dispatch({ do: "open-panel", panel: "table" });
    store.dispatch({ do: "make", command: (bench) => plantFault(bench, "W13:open") });
    store.dispatch({ do: "show-table", connector: "" });
    expect(asked.map(({ question }) => question)).toMatchObject([
      { ask: "table", connectors: ["X3"], faults: [] },
      { ask: "table", connectors: ["X3"], faults: [{ target: "W13", mode: "open" }] },
      { ask: "table", connectors: VENTS.connectors.map(({ id }) => id) },
    ]);
  });

  test("pages are asked for only while they are to be printed", async () => {
    const { store, asked } = asking();
    store.dispatch({ do: "print-what", sheets: { page: "p2" } });
    expect(asked).toEqual([]);
    store.dispatch({ do: "open-print" });
    expect(asked[0]!.question).toMatchObject({ ask: "pages", wanted: { what: "sheet", page: "p2", paper: "a4" } });
    store.dispatch({ do: "set", settings: { paper: "a3" } });
    expect(asked[1]!.question).toMatchObject({ ask: "pages", wanted: { paper: "a3" } });
  });
});

/** A worker that answers when the test does. */
function fakeWorker() {
  const sent: Asked[] = [];
  const port: WorkerPort = { postMessage: (message) => sent.push(message), onmessage: null, onerror: null };
  const reply = (data: object): Promise<void> => {
    port.onmessage?.({ data } as Parameters<NonNullable<WorkerPort["onmessage"]>>[0]);
    return settle();
  };
  return { port, sent, reply };
}

describe("the worker's queue", () => {
  const table = (connector: string) => ({ ask: "table", connectors: [connector], faults: [] }) as const;
  const verdicts = { ask: "verdicts", faults: [] } as const;

  test("one question is under way, and of each kind only the newest waits", async () => {
    const { port, sent, reply } = fakeWorker();
    const asker = workerAsker(() => port);
    const answers = ["X3", "X4", "X5"].map((connector) => asker.ask(VENTS, table(connector)));
    expect(sent.map(({ question }) => question)).toEqual([table("X3")]);
    await reply({ number: 1, answer: ["of X3"] });
    expect(sent.map(({ question }) => question)).toEqual([table("X3"), table("X5")]);
    await reply({ number: 2, answer: ["of X5"] });
    expect(await Promise.all(answers)).toEqual([["of X3"], null, ["of X5"]]);
  });

  test("the circuit travels once, as long as it is the same", async () => {
    const { port, sent, reply } = fakeWorker();
    const asker = workerAsker(() => port);
    void asker.ask(VENTS, table("X3"));
    void asker.ask(VENTS, verdicts);
    await reply({ number: 1, answer: [] });
    await reply({ number: 2, answer: {} });
    void asker.ask({ ...VENTS }, verdicts);
    expect(sent.map(({ circuit }) => circuit !== undefined)).toEqual([true, false, true]);
  });

  test("a question that fails is told, and the next goes on", async () => {
    const { port, sent, reply } = fakeWorker();
    const asker = workerAsker(() => port);
    const first = asker.ask(VENTS, table("X3"));
    const second = asker.ask(VENTS, verdicts);
    const failing = expect(first).rejects.toThrow("no convergence");
    await reply({ number: 1, trouble: "no convergence" });
    await failing;
    await reply({ number: 2, answer: { a: "works" } });
    expect(await second).toEqual({ a: "works" });
    expect(sent).toHaveLength(2);
  });

  test("a worker that fails outside a question leaves none waiting, and is sent the circuit anew", async () => {
    const { port, sent } = fakeWorker();
    const asker = workerAsker(() => port);
    const first = asker.ask(VENTS, table("X3"));
    const failing = expect(first).rejects.toThrow("the worker does not answer");
    port.onerror?.({ message: "" } as ErrorEvent);
    await failing;
    void asker.ask(VENTS, verdicts);
    expect(sent.at(-1)!.circuit).toBe(VENTS);
  });
});

describe("pictures", () => {
  test("are drawn by one worker, and where it fails there are none", async () => {
    let started = 0;
    let ended = 0;
    const port: PicturePort = {
      postMessage: () => {},
      onmessage: null,
      onerror: null,
      terminate: () => {
        ended += 1;
      },
    };
    const draw = workerDrawer(() => {
      started += 1;
      return port;
    });
    const both = Promise.all([draw(VENTS), draw(VENTS)]);
    port.onmessage?.({ data: { number: 1, picture: { light: "l", dark: "d" } } } as MessageEvent);
    port.onerror?.({ message: "" } as ErrorEvent);
    expect(await both).toEqual([{ light: "l", dark: "d" }, null]);
    expect([started, ended]).toEqual([1, 1]);
    void draw(VENTS);
    expect(started).toBe(2);
  });
});

describe("answers", () => {
  test("an order comes with the state of its point for every setting of every row", () => {
    const { order, states } = ORDER;
    expect(order.steps.length).toBeGreaterThan(0);
    expect(states.map((row) => row.length)).toEqual(order.steps.map(({ settings }) => settings.length));
  });

  test("a check that is not there gives an order without steps", () => {
    expect(
      answerTo(VENTS, {
        ask: "order",
        complaint: "nothing",
        observed: {},
        readings: [],
        batteryVolts: null,
        sleepingAmps: null,
        when: [],
        wiggled: [],
        weighing: PLAIN_WEIGHING,
      }),
    ).toMatchObject({
      order: { steps: [], suspects: [] },
      states: [],
      wiggle: null,
    });
  });

  test("verdicts tell what a fault does to each check", () => {
    const good = answerTo(VENTS, { ask: "verdicts", faults: [] });
    expect(new Set(Object.values(good))).toEqual(new Set(["works"]));
    expect(answerTo(VENTS, { ask: "verdicts", faults: [{ target: "F1", mode: "blown" }] })).toMatchObject({
      "rear-open-own": "dead",
    });
  });

  test("all pages of a circuit are printed, or the one that is named", () => {
    const wanted = {
      what: "sheet",
      page: null,
      condition: {},
      faults: [],
      complaint: null,
      others: [],
      readings: [],
      batteryVolts: null,
      sleepingAmps: null,
      when: [],
      wiggled: [],
      weighing: PLAIN_WEIGHING,
      connector: "",
      load: "",
      look: "iec",
      paper: "a4",
      palette: "black",
    } as const;
    const all = answerTo(VENTS, { ask: "pages", wanted }) as Answers["pages"];
    expect(all).toHaveLength(VENTS.pages.length);
    expect(all.every(({ svg }) => svg.startsWith("<svg"))).toBe(true);
    expect(answerTo(VENTS, { ask: "pages", wanted: { ...wanted, page: "p2" } })).toEqual([all[1]]);
    expect(answerTo(VENTS, { ask: "pages", wanted: { ...wanted, what: "checklist" } })).toEqual([]);
  });

  test("what was found is proven, printed and handed over; while nothing is found, nothing", () => {
    const check = VENTS.checks.find(({ id }) => id === "rear-open-own")!;
    const found = ORDER.order.suspects[0]!;
    const asked = {
      ask: "proof",
      complaint: check.id,
      found,
      living: ORDER.order.suspects,
      batteryVolts: null,
    } as const;
    const { run } = answerTo(VENTS, asked) as Answers["proof"];
    expect(run?.rows.length).toBeGreaterThan(0);
    expect(answerTo(VENTS, { ...asked, complaint: "nothing" })).toEqual({ run: null });

    const wanted = {
      what: "handover",
      page: null,
      condition: {},
      faults: [],
      complaint: { check, word: "dead" },
      others: [],
      readings: [],
      batteryVolts: null,
      when: [],
      wiggled: [],
      weighing: PLAIN_WEIGHING,
      connector: "",
      load: "",
      look: "iec",
      paper: "a4",
      palette: "black",
    } as const;
    const pages = (more: Partial<SheetsWanted>): Answers["pages"] =>
      answerTo(VENTS, { ask: "pages", wanted: { ...wanted, ...more } }) as Answers["pages"];
    expect(pages({})).toEqual([]);
    const said = { told: "It stopped.", done: "", after: "", watch: "", job: "2207", readings: [] };
    const [page] = pages({ found: found.faults, handover: said });
    expect(page?.svg).toContain("It stopped.");
    expect(page?.svg).toContain("Job 2207");
    expect(pages({ what: "proof", found: found.faults })[0]?.svg).toContain("Proof run");
  });

  test("a straight branch is printed of the load named; of none, nothing", () => {
    const wanted = {
      what: "straight",
      page: null,
      condition: { set: { S1: "on", S5: "open" } },
      faults: [],
      complaint: null,
      others: [],
      readings: [],
      batteryVolts: null,
      sleepingAmps: null,
      when: [],
      wiggled: [],
      weighing: PLAIN_WEIGHING,
      connector: "",
      load: "M3",
      look: "iec",
      paper: "letter",
      palette: "black",
    } as const;
    const pages = answerTo(VENTS, { ask: "pages", wanted }) as Answers["pages"];
    expect(pages).toHaveLength(3);
    expect(pages[0]!.svg).toContain("Position drawn");
    expect(answerTo(VENTS, { ask: "pages", wanted: { ...wanted, load: "" } })).toEqual([]);
  });
});
