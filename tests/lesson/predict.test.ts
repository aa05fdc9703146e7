import { describe, expect, test } from "vitest";
import { coveredUp } from "../../core/lesson/cover.ts";
import { oneQuestion, questionAt } from "../../core/lesson/oneQuestion.ts";
import { answersOf, outcomeOf, put, raised, revealed, takenBack } from "../../core/lesson/predict.ts";
import { liveOf } from "../../core/live/live.ts";
import { codeOf, got } from "../edit/given.ts";
import { HORN, LAMP } from "./given.ts";

const OFF = {};

describe("a question that is put to a class", () => {
  const question = got(questionAt(LAMP, OFF, { point: "F1.2", asks: "state" }));

  test("counts hands by choice, takes the last back, and is not shown before somebody has committed", () => {
    const begun = put(question);
    expect(revealed(begun)).toBe(begun);
    const counted = [3, 3, 0].reduce(raised, begun);
    expect([counted.hands, answersOf(counted)]).toEqual([[1, 0, 0, 2], 3]);
    expect(takenBack(takenBack(counted)).hands).toEqual([0, 0, 0, 1]);
    const shown = revealed(counted);
    expect(shown.isRevealed).toBe(true);
    expect(outcomeOf(shown)).toEqual({ counts: [1, 0, 0, 2], ideas: new Map([["no-flow-no-volts", 2]]) });
  });

  test("has no more answers than choices, and none once the right one is shown", () => {
    const begun = put(question);
    expect([raised(begun, 4), raised(begun, -1), takenBack(begun)]).toEqual([begun, begun, begun]);
    const shown = revealed(raised(begun, 0));
    expect([raised(shown, 0), takenBack(shown)]).toEqual([shown, shown]);
  });
});

describe("a single question", () => {
  test("about a point is answered by the circuit, or refused where it cannot be", () => {
    const volts = got(questionAt(LAMP, OFF, { point: "F1.2", asks: "volts" }));
    expect(volts.choices[volts.right]!.answer).toBe("12.6 V");
    expect(codeOf(questionAt(LAMP, OFF, { point: "Z9.1", asks: "state" }))).toBe("questions-none");
  });

  test("of the circuit's own is the same for the same seed, and none is asked twice while others are left", () => {
    const texts = new Set<string>();
    for (let seed = 1; seed <= 8; seed++) {
      const question = oneQuestion(HORN, seed, texts)!;
      expect(oneQuestion(HORN, seed, texts)).toEqual(question);
      expect(texts).not.toContain(question.text);
      texts.add(question.text);
    }
  });
});

test("covered up, a live state has what hands have set and nothing of what comes of it", () => {
  const live = liveOf(HORN, HORN.checks[0]!.condition);
  const covered = coveredUp(HORN, live);
  expect([covered.condition, covered.points.size, covered.wires.size]).toEqual([live.condition, 0, 0]);
  const handled = [...covered.parts.keys()];
  expect(handled.every((id) => HORN.parts.find((part) => part.id === id)?.kind !== "relay")).toBe(true);
  for (const [id, { doing, closed }] of covered.parts)
    expect([doing, closed]).toEqual([null, live.parts.get(id)!.closed]);
  expect(live.parts.size).toBeGreaterThan(handled.length);
});
