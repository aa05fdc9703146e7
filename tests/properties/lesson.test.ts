import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { sentence } from "../../core/base/words.ts";
import { possibleFaults } from "../../core/diagnose/possible.ts";
import { begun, moved, readingsIn, verdictOf } from "../../core/lesson/attempt.ts";
import { cupboardFor } from "../../core/lesson/cupboard.ts";
import { moveText, parseMoves } from "../../core/lesson/moveText.ts";
import { plantOf } from "../../core/lesson/plant.ts";
import { replayed } from "../../core/lesson/replay.ts";
import { routeLines } from "../../core/lesson/routeText.ts";
import { got } from "../edit/given.ts";
import { exerciseWith, HORN, LAMP } from "../lesson/given.ts";

const STOCK = cupboardFor(LAMP, LAMP.checks[0]!);

/** What a hand might do on the lamp's circuit, possible or not as things stand. */
const doing = fc.constantFrom(
  "throw S1=on",
  "throw S1=off",
  "try lights",
  "engine on",
  "open panel",
  "unplug X1",
  "plug in X1",
  "take out F1",
  "put in F1",
  "probe F1.2",
  "probe X1-1 @ S1=on",
  "probe X1-2 @ rest",
  "probe F1.1/F1.2",
  "lamp battery+/X1-2",
  "lamp F1.1/F1.2",
  "look F1",
  "look X1",
  "look S1",
  "feed E1",
  "hint",
  "probe nowhere",
  "verdict W4:open",
);

describe("whatever a learner does", () => {
  test("each move is made or refused in one sentence; minutes add up; made again it comes out the same", () => {
    const hints = { count: 1, minutes: 5 };
    fc.assert(
      fc.property(fc.nat(STOCK.length - 1), fc.array(doing, { maxLength: 14 }), (number, texts) => {
        const { exercise, vehicle } = exerciseWith(LAMP, STOCK[number]!.possible.id, { hints });
        let attempt = begun(exercise);
        for (const text of texts) {
          const moves = parseMoves(LAMP, text, attempt.condition);
          if (!moves.ok) {
            expect(sentence(moves.refusal)).toMatch(/^\S.*\.$/);
            continue;
          }
          for (const move of moves.value) {
            expect(got(parseMoves(LAMP, moveText(move), attempt.condition))).toEqual([move]);
            const before = attempt;
            const next = moved(attempt, vehicle, move, null);
            if (next.ok) attempt = next.value;
            else expect(sentence(next.refusal)).toMatch(/^\S.*\.$/);
            expect(attempt.minutes).toBeGreaterThanOrEqual(before.minutes);
            if (verdictOf(before)) expect(attempt).toBe(before);
          }
        }
        const sum = attempt.route.reduce((minutes, each) => minutes + each.minutes, 0);
        expect(attempt.minutes).toBeCloseTo(sum, 9);
        expect(got(replayed(exercise, vehicle, attempt.route)).at(-1)).toEqual(attempt);
        const lines = routeLines(attempt);
        expect(lines.filter(({ reading }) => reading !== null)).toHaveLength(readingsIn(attempt).length);
      }),
      { numRuns: 60, seed: 20260302 },
    );
  });

  test("every fault that is possible is planted by its own text as itself", () => {
    for (const circuit of [LAMP, HORN])
      for (const possible of possibleFaults(circuit)) expect(got(plantOf(circuit, possible.id))).toBe(possible);
  });
});
