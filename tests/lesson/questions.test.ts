import { describe, expect, test } from "vitest";
import { readWith } from "../../core/diagnose/reads.ts";
import { IDEAS, type Idea } from "../../core/lesson/ideas.ts";
import { plantOf } from "../../core/lesson/plant.ts";
import { answered, type Question, tallied } from "../../core/lesson/question.ts";
import { type Draft, questionPool } from "../../core/lesson/questionPool.ts";
import { questionsFor } from "../../core/lesson/questions.ts";
import { liveOf } from "../../core/live/live.ts";
import { got } from "../edit/given.ts";
import { HORN, LAMP } from "./given.ts";

const COLOURED = {
  ...LAMP,
  colourCodes: "iec60757",
  wires: LAMP.wires.map((wire) => ({ ...wire, colour: { W2: "BK", W4: "BN" }[wire.id] ?? "GN" })),
} as const;
const OFF = {};
const ON = { set: { S1: "on" } };
const GROUND_LOST = got(plantOf(COLOURED, "W4:open")).faults;

/** The draft that asks this of a point. */
function draftOf(pool: readonly Draft[], asks: string, point: string, more: object = {}): Draft {
  return pool.find(({ asked }) => asked.asks === asks && asked.point === point && holds(asked, more))!;
}
function holds(asked: object, more: object): boolean {
  return Object.entries(more).every(([name, value]) => (asked as Record<string, unknown>)[name] === value);
}
/** Answers of a draft with the ideas that each shows, the right one marked. */
function shown({ choices, right }: Draft): readonly string[] {
  return choices.map(({ answer, ideas }, index) => [answer, ...(index === right ? ["*"] : []), ...ideas].join(" "));
}

describe("what a battery, a fuse, a switch and a lamp can be asked, by hand", () => {
  const off = questionPool(COLOURED, [OFF], []);
  const on = questionPool(COLOURED, [ON], []);
  const lost = questionPool(COLOURED, [ON], GROUND_LOST);

  test("before the open switch the wire is powered: who thinks that volts need current says floating, black wires say ground", () => {
    expect(shown(draftOf(off, "state", "F1.2"))).toEqual([
      "powered *",
      "grounded colour-is-state",
      "between",
      "floating no-flow-no-volts",
    ]);
    expect(shown(draftOf(off, "volts", "F1.2", { black: "battery -" }))).toEqual([
      "0.0 V no-flow-no-volts colour-is-state",
      "6.3 V",
      "12.6 V *",
    ]);
  });

  test("all of the battery stands across the open switch, next to nothing across the closed one", () => {
    const open = off.find(({ asked }) => asked.asks === "volts" && asked.black === "S1.2")!;
    expect(shown(open)).toEqual(["0.0 V open-is-zero", "6.3 V", "12.6 V *"]);
    const closed = on.find(({ asked }) => asked.asks === "volts" && asked.black === "S1.2")!;
    expect(shown(closed)).toEqual(["0.0 V *", "6.3 V used-up", "12.6 V"]);
  });

  test("with current flowing the lamp's feed still has battery volts, whatever has been passed on the way", () => {
    expect(shown(draftOf(on, "state", "X1-1"))[2]).toBe("between used-up");
    // A brown wire is a ground here, and colour says so: nobody is shown wrong by it.
    expect(draftOf(on, "state", "X1-2").ideas).toEqual([]);
  });

  test("with the ground lost, the lamp's far side reads battery volts and lights no second lamp", () => {
    expect(shown(draftOf(lost, "volts", "X1-2", { black: "battery -" }))).toEqual([
      "0.0 V ground-side-is-ground colour-is-state",
      "6.3 V",
      "12.6 V *",
    ]);
    const lamp = draftOf(lost, "lamp", "X1-2", { lampTo: "battery -" });
    expect(lamp.choices[lamp.right]!.answer).not.toBe("bright");
    expect(lamp.choices[0]!.ideas).toEqual(["unloaded-is-good"]);
  });

  test("what floats reads 0 V and is no ground: a lamp from battery plus tells", () => {
    const apart = questionPool(COLOURED, [{ apart: ["X1"] }], GROUND_LOST);
    expect(shown(draftOf(apart, "state", "X1-2"))).toEqual([
      "powered",
      "grounded zero-is-ground colour-is-state",
      "between",
      "floating *",
    ]);
    expect(shown(draftOf(apart, "lamp", "X1-2", { lampTo: "battery +" }))).toEqual([
      "bright zero-is-ground",
      "dim",
      "dark *",
    ]);
  });
});

describe("questions of a circuit", () => {
  const FAULT = got(plantOf(HORN, "X10-1:corroded=20"));
  const made = [
    ...questionsFor(HORN, { seed: 2, count: 20 }).map((question) => ({ question, faults: [] })),
    ...questionsFor(HORN, { seed: 3, count: 10, faults: [FAULT] }).map((question) => ({
      question,
      faults: FAULT.faults,
    })),
  ];

  test("every right answer is the solver's, with the instrument in the circuit", () => {
    for (const { question, faults } of made) {
      const { asked, condition, choices, right } = question;
      const { answer, volts } = choices[right]!;
      if (asked.asks === "state") {
        expect(liveOf(HORN, condition, faults).points.get(asked.point)?.state).toBe(answer);
        continue;
      }
      const isLamp = asked.asks === "lamp";
      const probe = {
        red: asked.point,
        black: isLamp ? "battery -" : asked.black,
        instrument: isLamp ? asked.lamp : "meter volts",
        lampTo: isLamp ? asked.lampTo : null,
        condition,
      } as const;
      const { shows } = readWith(HORN, faults, {}, probe);
      if (isLamp) expect([question.text, shows.word]).toEqual([question.text, answer]);
      else expect([question.text, Math.abs(shows.volts! - volts!) < 0.15]).toEqual([question.text, true]);
    }
  });

  test("a right answer shows no wrong idea; choices differ; every question says why and what it asks", () => {
    for (const { question } of made) {
      const { choices, right, reason, text } = question;
      expect(choices[right]!.ideas).toEqual([]);
      expect(new Set(choices.map(({ answer }) => answer)).size).toBe(choices.length);
      expect(choices.length).toBeGreaterThanOrEqual(3);
      for (const line of [...reason, text]) expect(line).toMatch(/^\S.*[.?]$/);
    }
  });

  test("the same seed makes the same questions, another one others; they take turns among the ideas", () => {
    const of = (seed: number): readonly Question[] => questionsFor(HORN, { seed, count: 14 });
    expect(of(5)).toEqual(of(5));
    expect(of(6)).not.toEqual(of(5));
    const ideas = of(5).map(({ choices }) => new Set(choices.flatMap((choice) => choice.ideas)));
    const counts = IDEAS.map((idea) => ideas.filter((each) => each.has(idea)).length);
    expect(Math.min(...counts)).toBeGreaterThanOrEqual(1);
    // Some show none, so that nobody learns to answer against the grain.
    expect(ideas.filter(({ size }) => size === 0)).toHaveLength(2);
    expect(new Set(of(5).map(({ asked }) => asked.point)).size).toBeGreaterThan(11);
  });

  test("one condition alone is asked in where that is wanted, and no more than there is", () => {
    const only = questionsFor(LAMP, { seed: 1, count: 500, conditions: [ON] });
    expect(only.every(({ condition }) => condition === ON)).toBe(true);
    expect(only.length).toBeLessThan(500);
    expect(only.length).toBeGreaterThan(3);
  });
});

describe("answers of a class", () => {
  const draft = draftOf(questionPool(COLOURED, [OFF], []), "volts", "F1.2", { black: "battery -" });
  const question: Question = { ...draft, text: "", reason: [] };

  test("are words or volts near those of a choice", () => {
    for (const [typed, choice] of [
      ["12.6 V", 2],
      ["12,4", 2],
      ["12.3v", 2],
      ["0", 0],
      ["0.4", 0],
      ["9", null],
      ["much", null],
    ] as const)
      expect([typed, answered(question, typed)]).toEqual([typed, choice]);
    const state = { ...draftOf(questionPool(COLOURED, [OFF], []), "state", "F1.2"), text: "", reason: [] };
    expect(answered(state, "Grounded")).toBe(1);
  });

  test("are counted, with the wrong ideas they show", () => {
    const tally = tallied(question, [4, 1, 9]);
    expect(tally.counts).toEqual([4, 1, 9]);
    expect([...tally.ideas]).toEqual<[Idea, number][]>([
      ["no-flow-no-volts", 4],
      ["colour-is-state", 4],
    ]);
  });
});
