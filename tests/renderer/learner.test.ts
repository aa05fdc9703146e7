import { describe, expect, test } from "vitest";
import { sentence } from "../../core/base/words.ts";
import { verdictOf } from "../../core/lesson/attempt.ts";
import { cupboardFor } from "../../core/lesson/cupboard.ts";
import type { Move } from "../../core/lesson/move.ts";
import { parseMoves } from "../../core/lesson/moveText.ts";
import { plantOf } from "../../core/lesson/plant.ts";
import { memoryHost } from "../../renderer/host/memory.ts";
import { learnerReaction } from "../../renderer/learner/errands.ts";
import { vehicleKeeper } from "../../renderer/learner/keeper.ts";
import { askVehicle, type VehiclePort } from "../../renderer/learner/vehicle.ts";
import { openFile } from "../../renderer/state/openFile.ts";
import { createAppStore } from "../../renderer/state/store.ts";
import { formatExercise, openForInstructor, readExercise } from "../../schemas/exercise.ts";
import { checkedHandin, readHandin } from "../../schemas/handin.ts";
import { ROUNDS_LIMITS } from "../../schemas/seal.ts";
import { got } from "../edit/given.ts";
import { exerciseWith, HORN, LAMP } from "../lesson/given.ts";

const PASSPHRASE = "correct horse";

/** An exercise's file on the first check of a circuit. */
async function fileOf(
  circuit: typeof LAMP,
  fault: string,
  choice: Parameters<typeof exerciseWith>[2] = {},
): Promise<string> {
  const { exercise } = exerciseWith(circuit, fault, choice);
  return got(await formatExercise(exercise, { fault, seed: 3, note: "secret note" }, PASSPHRASE, ROUNDS_LIMITS.least));
}

/** A page with a learner's bench over a host, its vehicle behind a port that writes down what passes. */
function benchOn(host = memoryHost(new Map(), () => "2026-03-02T08:00:00Z")) {
  const messages: string[] = [];
  const downloads: { readonly name: string; readonly content: string }[] = [];
  const start = (): VehiclePort => {
    const answer = vehicleKeeper();
    let last: Promise<unknown> = Promise.resolve();
    const port: VehiclePort = {
      onmessage: null,
      onerror: null,
      postMessage: ({ number, question }) => {
        messages.push(JSON.stringify(question));
        last = last.then(async () => {
          const outcome = await answer(question);
          messages.push(JSON.stringify(outcome));
          port.onmessage?.({ data: { number, outcome } } as MessageEvent);
        });
      },
    };
    return port;
  };
  const autosave = {
    reaction: () => undefined,
    flush: async () => undefined,
    leave: () => {},
    look: async () => undefined,
    isAllKept: () => true,
  };
  const page = {
    chooseFile: () => undefined,
    download: (name: string, content: string) => void downloads.push({ name, content }),
  };
  const now = () => new Date("2026-03-02T08:00:00Z");
  const store = createAppStore("light", [learnerReaction(host, page, autosave, askVehicle(start), now)]);
  const rest = () => new Promise((resolve) => setTimeout(resolve, 40));
  const open = async (text: string) => {
    store.dispatch({ do: "open-exercise", name: "lamp.exercise.json", text });
    await expect.poll(() => store.getState().learning !== null || store.getState().notices.length > 0).toBe(true);
  };
  const learning = () => store.getState().learning!;
  const make = async (...texts: readonly string[]) => {
    for (const text of texts) {
      const { exercise, condition } = learning().attempt;
      const moves: readonly Move[] = got(parseMoves(exercise.circuit, text, condition));
      store.dispatch({ do: "make-moves", moves });
      await expect.poll(() => learning().isAsking).toBe(false);
    }
    await rest();
  };
  const notices = () => store.getState().notices.map(({ title, words }) => `${title} ${words}`);
  return { host, store, open, make, learning, messages, downloads, notices, rest };
}

describe("a learner's bench", () => {
  test("keeps each move, and a page that opens the exercise again goes on where it was left", async () => {
    const text = await fileOf(LAMP, "W4:open");
    const bench = benchOn();
    await bench.open(text);
    await bench.make("throw S1=on", "open panel", "probe X1-2");
    expect(bench.learning()).toMatchObject({ kept: 3, isAsking: false });
    expect(bench.store.getState().said).toBe("Volts at X1-2, 0.5\u00a0min: 12.6\u00a0V.");
    const later = benchOn(bench.host);
    await later.open(text);
    expect(later.learning().attempt).toEqual(bench.learning().attempt);
    await later.make("verdict W4:open by 1");
    expect(later.learning().told).toEqual({ isRight: true, was: "W4 broken" });
    later.store.dispatch({ do: "name-learner", learner: "Ann" });
    later.store.dispatch({ do: "save-handin" });
    await expect.poll(() => later.downloads.length).toBe(1);
    later.store.dispatch({ do: "save-file" });
    await expect.poll(() => later.downloads.length).toBe(2);
    expect(later.downloads[0]!.name).toBe(`Ann, ${LAMP.title}.handin.json`);
    const opened = got(await openForInstructor(got(readExercise(text)), PASSPHRASE));
    const handin = got(await checkedHandin(got(await readHandin(later.downloads[0]!.content)), opened));
    expect([handin.learner, verdictOf(handin)?.suspect]).toEqual(["Ann", "W4:open"]);
  });

  test("can be begun again once the verdict is told", async () => {
    const bench = benchOn();
    await bench.open(await fileOf(LAMP, "W4:open"));
    await bench.make("throw S1=on", "verdict F1:blown");
    expect(bench.learning().told?.isRight).toBe(false);
    bench.store.dispatch({ do: "restart-attempt", id: bench.learning().id });
    await expect.poll(() => bench.learning().attempt.route).toEqual([]);
    await bench.make("look F1");
    expect(bench.learning()).toMatchObject({ kept: 1, told: null });
  });

  test("deleted and opened again, says what is back with it; one to practise on is begun again from there", async () => {
    const bench = benchOn();
    const [text, graded] = [await fileOf(LAMP, "W4:open"), await fileOf(LAMP, "W4:open", { tellsAtOnce: false })];
    for (const each of [text, graded]) {
      await bench.open(each);
      await expect.poll(() => bench.store.getState().learning?.attempt.exercise.tellsAtOnce).toBe(each === text);
      await bench.make("throw S1=on", "look F1");
      const { id } = bench.learning();
      await bench.host.ask("attempts.remove", { id });
      bench.store.dispatch({ do: "close" });
      await bench.open(each);
      await expect.poll(() => bench.store.getState().learning?.id).toBe(id);
      await expect.poll(() => bench.store.getState().notices.at(-1)?.words).toContain("2\u00a0acts");
      expect(bench.learning().attempt.route).toHaveLength(2);
      const offers = bench.store.getState().notices.at(-1)!.offers!;
      expect(offers.map(({ action }) => action)).toEqual(each === text ? [{ do: "restart-attempt", id }] : []);
      for (const { action } of offers) bench.store.dispatch(action);
      if (each === text) await expect.poll(() => bench.learning().attempt.route).toEqual([]);
    }
  });

  test("is opened by a file that says what it is, whatever its name", async () => {
    const bench = benchOn();
    await openFile(bench.store, new File([await fileOf(LAMP, "W4:open")], "homework.json"));
    await expect.poll(() => bench.learning()?.attempt.exercise.title).toBe(LAMP.title);
  });

  test("makes several moves that were typed at once, up to the first that cannot be made", async () => {
    const bench = benchOn();
    await bench.open(await fileOf(LAMP, "W4:open"));
    await bench.make("probe X1-1 @ S1=on");
    expect(bench.learning().attempt.route.map(({ move }) => move.do)).toEqual(["throw"]);
    expect(bench.notices()).toEqual([expect.stringMatching(/^Not done\. X1-1 cannot be reached yet/)]);
  });

  test("shows what another window made of it, and loses nothing of that", async () => {
    const text = await fileOf(LAMP, "W4:open");
    const one = benchOn();
    const other = benchOn(one.host);
    await one.open(text);
    await other.open(text);
    await one.make("throw S1=on");
    await other.make("look F1");
    await expect.poll(() => other.learning().attempt.route.map(({ move }) => move.do)).toEqual(["throw"]);
    expect(other.notices()).toEqual([expect.stringMatching(/another window/)]);
  });

  test.each([
    ["cut off", (text: string) => text.slice(0, 900), "file-json"],
    ["of a newer version", (text: string) => text.replace('"version": 1', '"version": 2'), "file-newer"],
    ["changed after it was sealed", (text: string) => text.replace('"told": ""', '"told": "x"'), "exercise-changed"],
  ])("is told in one sentence of a file that is %s, and what is on the bench stays", async (_, spoil) => {
    const text = await fileOf(LAMP, "W4:open");
    const bench = benchOn();
    await bench.open(text);
    await bench.make("throw S1=on");
    const before = bench.learning();
    bench.store.dispatch({ do: "open-exercise", name: "b.exercise.json", text: spoil(text) });
    await expect.poll(bench.notices).toHaveLength(1);
    expect(bench.notices()[0]).toMatch(/^b\.exercise\.json was not opened\. \S.*\.$/);
    expect(bench.learning()).toBe(before);
    await bench.make("look F1");
    expect(bench.learning().attempt.route).toHaveLength(2);
  });

  test("an exercise of another make of the circuit is refused without a word of what is hidden", async () => {
    const { exercise } = exerciseWith(LAMP, "W4:open");
    const text = got(
      await formatExercise(exercise, { fault: "E1:burst", seed: null, note: "" }, PASSPHRASE, ROUNDS_LIMITS.least),
    );
    const bench = benchOn();
    await bench.open(text);
    expect(bench.notices()).toEqual([expect.stringContaining(sentence({ code: "exercise-version", about: {} }))]);
    expect(JSON.stringify(bench.store.getState()) + bench.messages.join()).not.toMatch(/E1:burst|burst/);
  });
});

describe("nothing shows the fault before the verdict", () => {
  const DONE = [
    "throw S1=pressed",
    "open bonnet",
    "look F2",
    "listen K1",
    "probe K1.30",
    "probe X11-1",
    "renew F2",
    "try high-horn",
  ];
  const names = [...HORN.parts, ...HORN.wires, ...HORN.connectors].map(({ id }) => id);

  test("for faults all over the circuit: no message, no state and nothing kept has a name that another fault's has not", async () => {
    const check = HORN.checks[0]!;
    const stock = cupboardFor(HORN, check).filter(({ word }) => word === "dead");
    const some = stock.filter((_, index) => index % 9 === 0);
    expect(some.length).toBeGreaterThan(5);
    const said: string[] = [];
    for (const { possible } of some) {
      const bench = benchOn();
      const text = await fileOf(HORN, possible.id);
      await bench.open(text);
      await bench.make(...DONE);
      const { id } = bench.learning();
      const kept = got(await bench.host.ask("attempts.open", { id }));
      const answers = bench.messages.map((message) => message.replace(JSON.stringify(text), '""'));
      const all = `${answers.join("\n")}\n${JSON.stringify(kept.route)}\n${bench.notices().join("\n")}`;
      const state = JSON.stringify({ ...bench.learning(), attempt: { ...bench.learning().attempt, exercise: null } });
      for (const where of [text, all, state, JSON.stringify(bench.store.getState())]) {
        expect([possible.id, where.includes(possible.id)]).toEqual([possible.id, false]);
        expect([possible.id, where.includes(got(plantOf(HORN, possible.id)).title)]).toEqual([possible.id, false]);
        expect(where).not.toContain("secret note");
      }
      said.push(names.filter((name) => new RegExp(`\\b${name}\\b`).test(all + state)).join());
    }
    expect(new Set(said).size).toBe(1);
  });
});
