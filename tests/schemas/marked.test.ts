import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { sentence } from "../../core/base/words.ts";
import { formatExercise, openForLearner, readExercise } from "../../schemas/exercise.ts";
import { formatHandin } from "../../schemas/handin.ts";
import { markedFrom, openOneOf } from "../../schemas/marked.ts";
import { ROUNDS_LIMITS } from "../../schemas/seal.ts";
import { codeOf, got } from "../edit/given.ts";
import { exerciseWith, LAMP, worked } from "../lesson/given.ts";

const PASSPHRASE = "green pear 7";
const made = exerciseWith(LAMP, "W4:open", { title: "Dark lamp" });
const hidden = { fault: "W4:open", seed: null, note: "" };
const file = got(readExercise(got(await formatExercise(made.exercise, hidden, PASSPHRASE, ROUNDS_LIMITS.least))));
const opened = got(await openOneOf(file, PASSPHRASE));
const { route } = worked(made, "throw S1=on", "probe F1.2", "verdict W4:open");
const handin = await formatHandin("Ann", got(await openForLearner(file)), route);

describe("a hand-in that is graded", () => {
  test("says how it came out, or by its own code why it cannot be graded", async () => {
    expect(await markedFrom("a", handin, [opened])).toMatchObject({
      learner: "Ann",
      grade: { is: "right" },
      refusal: null,
    });
    expect(await markedFrom("a", handin, [])).toMatchObject({ learner: "Ann", refusal: { code: "handin-waits" } });
    const nameless = await formatHandin("", got(await openForLearner(file)), route);
    const marked = await markedFrom("b.handin.json", nameless, []);
    expect(marked.learner).toBe("b.handin.json");
    expect(sentence(marked.refusal!)).toContain("b.handin.json");
  });

  test("whatever is done to its file comes back as a row of the table, graded only where it says the same as before", async () => {
    const bytes = new TextEncoder().encode(handin);
    const whole = JSON.parse(handin) as unknown;
    await fc.assert(
      fc.asyncProperty(fc.nat(bytes.length - 1), fc.integer({ min: 0, max: 255 }), async (at, byte) => {
        const changed = bytes.with(at, byte);
        const { grade, refusal } = await markedFrom("a", changed, [opened]);
        expect(grade === null).toBe(refusal !== null);
        if (refusal) expect(sentence(refusal)).toMatch(/\S/);
        else expect(JSON.parse(new TextDecoder().decode(changed))).toEqual(whole);
      }),
      { numRuns: 150 },
    );
  });

  test("of several exercises the one that a passphrase does not open is named", async () => {
    const wrong = await openOneOf(file, "green pear 8");
    expect(codeOf(wrong)).toBe("passphrase-other");
    expect(wrong.ok ? "" : sentence(wrong.refusal)).toContain('"Dark lamp"');
  });
});
