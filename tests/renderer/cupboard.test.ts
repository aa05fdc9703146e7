import { describe, expect, test } from "vitest";
import { possibleFaults } from "../../core/diagnose/possible.ts";
import { drawnFrom } from "../../core/lesson/draw.ts";
import type { GradedFault } from "../../core/lesson/graded.ts";
import { plantOf } from "../../core/lesson/plant.ts";
import type { CupboardAct } from "../../renderer/instructor/cupboard.ts";
import { cupboardReaction } from "../../renderer/instructor/cupboardReaction.ts";
import { cupboardPlaces } from "../../renderer/instructor/cupboardRows.ts";
import { deskAnswer, emptyDesk } from "../../renderer/instructor/deskAnswer.ts";
import { type DeskPort, deskAsker } from "../../renderer/instructor/deskAsker.ts";
import type { DeskAsked, DeskSaid } from "../../renderer/instructor/deskQuestion.ts";
import { makeWanted, passphraseTyped } from "../../renderer/instructor/draftChoice.ts";
import { createAppStore } from "../../renderer/state/store.ts";
import { openForInstructor, readExercise } from "../../schemas/exercise.ts";
import { codeOf, got } from "../edit/given.ts";
import { HORN, LAMP } from "../lesson/given.ts";
import { openIn } from "./stage.ts";

const PASSPHRASE = "green pear 7";

/** A worker's port that answers in this thread, and what was asked of it; `isAsleep` answers nothing. */
function port(isAsleep = false) {
  const asked: DeskAsked[] = [];
  const desk = emptyDesk();
  const made: DeskPort & { isLetGo: boolean } = {
    onmessage: null,
    onerror: null,
    isLetGo: false,
    terminate() {
      made.isLetGo = true;
    },
    postMessage(message) {
      asked.push(message);
      const say = (data: DeskSaid): void => made.onmessage?.({ data } as MessageEvent<DeskSaid>);
      const { number, question } = message;
      if (!isAsleep)
        void deskAnswer(desk, question, (done) => say({ number, done })).then((answer) => say({ number, answer }));
    },
  };
  return { made, asked };
}

/** A page with the lamp's circuit open, and what it saved. */
function page(isAsleep = false) {
  const saved: { readonly name: string; readonly content: string }[] = [];
  const ports: ReturnType<typeof port>[] = [];
  const host = {
    name: "loopback",
    ask: (_: string, file: { readonly name: string; readonly content: string }) => {
      saved.push(file);
      return Promise.resolve({ ok: true, value: { done: "saved", where: file.name } });
    },
  } as unknown as Parameters<typeof cupboardReaction>[0];
  const reaction = cupboardReaction(host, { chooseFile() {}, download() {} }, () => {
    const next = port(isAsleep);
    ports.push(next);
    return next.made;
  });
  const store = createAppStore("light", [reaction]);
  store.dispatch({ do: "sample-opened", circuit: LAMP });
  const act = (next: CupboardAct): void => store.dispatch({ do: "cupboard", act: next });
  const cupboard = () => openIn(store.getState()).cupboard;
  const until = (is: () => boolean) => expect.poll(is, { timeout: 5_000, interval: 5 }).toBe(true);
  return { store, act, cupboard, saved, ports, until };
}

describe("the fault cupboard", () => {
  test("holds every fault once, each under the thing that is mended; typing narrows it", () => {
    const all = cupboardPlaces(HORN, "").flatMap(({ rows }) => rows.flatMap(({ faults }) => faults));
    expect(all).toHaveLength(possibleFaults(HORN).length);
    expect(new Set(all).size).toBe(all.length);
    const plug = cupboardPlaces(HORN, "X20 come apart").flatMap(({ rows }) => rows);
    expect(plug.map(({ target, faults }) => [target, faults.length])).toEqual([["X20", 1]]);
    expect(cupboardPlaces(HORN, "no such thing")).toEqual([]);
  });

  test("grades with progress, and gives that up; a fault taken out says what it makes fail", async () => {
    const { act, cupboard, until, ports } = page();
    act({ act: "grade", check: "lights" });
    expect(cupboard()).toMatchObject({ behind: "lights", graded: null });
    // This port answers at once, and has told how far it is.
    expect(cupboard().done).toBeGreaterThan(0.3);
    await until(() => cupboard().graded !== null);
    expect(cupboard().done).toBeNull();
    const drawn = drawnFrom(LAMP, cupboard().graded!.faults, 3)!;
    act({ act: "take", fault: drawn.possible, seed: 3 });
    await until(() => cupboard().taken?.fails !== null);
    expect(cupboard().taken!.fails).toEqual([{ check: "lights", word: drawn.word }]);
    const asleep = page(true);
    asleep.act({ act: "grade", check: "lights" });
    asleep.act({ act: "stop-grading" });
    expect(asleep.cupboard()).toMatchObject({ behind: null, done: null });
    expect(asleep.ports[0]!.made.isLetGo).toBe(true);
    expect(ports[0]!.made.isLetGo).toBe(false);
  });

  test("a file is made of what was typed; it opens with the passphrase and shows the fault", async () => {
    const { act, cupboard, until, saved, store } = page();
    act({ act: "take", fault: got(plantOf(LAMP, "W4:open")), seed: null });
    await until(() => cupboard().taken?.fails !== null);
    act({ act: "draft", change: { title: "Dark lamp", access: { panel: "7,5" }, hints: "2", note: "bench 2" } });
    act({ act: "make", passphrase: PASSPHRASE });
    await until(() => saved.length > 0);
    expect(saved[0]!.name).toBe("Dark lamp.exercise.json");
    const opened = got(await openForInstructor(got(readExercise(saved[0]!.content)), PASSPHRASE));
    expect(opened.hidden).toEqual({ fault: "W4:open", seed: null, note: "bench 2" });
    expect(opened.exercise).toMatchObject({ title: "Dark lamp", hints: { count: 2, minutes: 5 } });
    expect(opened.exercise.circuit.access[0]!.minutes).toBe(7.5);
    // Nothing of the passphrase stays in the window, and a refusal leaves what was typed.
    expect(JSON.stringify(store.getState())).not.toContain(PASSPHRASE);
    act({ act: "draft", change: { hints: "many" } });
    act({ act: "make", passphrase: PASSPHRASE });
    await until(() => cupboard().refused !== null);
    expect(cupboard().draft?.hints).toBe("many");
    expect(saved).toHaveLength(1);
  });

  test("what is typed wrong is refused by its own code", () => {
    const { act, cupboard } = page(true);
    const taken = {
      fault: got(plantOf(LAMP, "W4:open")),
      seed: null,
      fails: [{ check: "lights", word: "dead" }],
    } as const;
    act({ act: "set", change: { taken } });
    act({ act: "draft", change: {} });
    const wanted = (change: object): string => codeOf(makeWanted(LAMP, { ...cupboard().draft!, ...change }, taken, ""));
    expect(wanted({})).toBe("not refused");
    expect(wanted({ title: "x".repeat(161) })).toBe("exercise-words");
    expect(wanted({ instruments: [] })).toBe("exercise-instruments");
    expect(wanted({ hints: "1.5" })).toBe("whole-number");
    expect(wanted({ hintMinutes: "soon" })).toBe("minutes-number");
    expect(wanted({ access: { panel: "-1" } })).toBe("minutes-number");
    expect(codeOf(passphraseTyped("short", "short"))).toBe("passphrase-short");
    expect(codeOf(passphraseTyped("long enough", "long enougH"))).toBe("passphrase-twice");
  });

  test("the same seed draws the same fault, only of the difficulty that is wanted and only what can be proven", () => {
    const graded = possibleFaults(LAMP).map(
      (possible, index): GradedFault => ({
        possible,
        word: "dead",
        minutes: index,
        misleads: 0,
        difficulty: (["easy", "medium", "hard"] as const)[index % 3]!,
        canBeProven: index % 2 === 0,
      }),
    );
    for (let seed = 0; seed < 40; seed++) {
      const drawn = drawnFrom(LAMP, graded, seed, "hard");
      expect(drawn).toMatchObject({ difficulty: "hard", canBeProven: true });
      expect(drawnFrom(LAMP, graded, seed, "hard")).toBe(drawn);
    }
    expect(drawnFrom(LAMP, [], 1)).toBeUndefined();
  });

  test("a worker that fails tells all who wait, and the next question starts another", async () => {
    const ports: DeskPort[] = [];
    const asker = deskAsker(() => {
      const { made } = port(true);
      ports.push(made);
      return made;
    });
    const one = asker.ask<"fails">({ ask: "fails", circuit: LAMP, fault: "W4:open" });
    ports[0]!.onerror?.({ message: "gone" } as ErrorEvent);
    await expect(one).rejects.toThrow("gone");
    const other = asker.ask<"fails">({ ask: "fails", circuit: LAMP, fault: "W4:open" });
    expect(ports).toHaveLength(2);
    asker.stop();
    expect(await other).toBeNull();
  });
});
