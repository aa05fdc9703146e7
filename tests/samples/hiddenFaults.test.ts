import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { probeFor } from "../../core/diagnose/candidates.ts";
import { type Attempt, begun, evidentIn, groundOf, moved, readingsIn } from "../../core/lesson/attempt.ts";
import { failsWith } from "../../core/lesson/cupboard.ts";
import { gradeOf } from "../../core/lesson/grade.ts";
import { nextRow } from "../../core/lesson/hint.ts";
import { leadsText, parseMoves } from "../../core/lesson/moveText.ts";
import { plantOf } from "../../core/lesson/plant.ts";
import { replayed } from "../../core/lesson/replay.ts";
import { travelling } from "../../core/lesson/travelling.ts";
import { conditionText } from "../../core/live/condition.ts";
import { type Opened, openForInstructor, readExercise } from "../../schemas/exercise.ts";
import { got } from "../edit/given.ts";
import { LESSON_NAMES, sample } from "./onTheBench.ts";

/** As README has it. */
const PASSPHRASE = "lesson board";
const FOLDER = new URL("../../samples/", import.meta.url);
const FILES = readdirSync(FOLDER).filter((name) => name.endsWith(".exercise.json"));
const text = (name: string): string => readFileSync(new URL(name, FOLDER), "utf8");

describe("the hidden faults of the lessons", () => {
  it("are two of each lesson, and none of the puzzle", () => {
    const each = LESSON_NAMES.map((name) => FILES.filter((file) => file.startsWith(`${name}.`)).length);
    expect(each).toEqual([2, 2, 2, 0]);
  });

  it.each(FILES)(
    "%s is of its lesson as it is now, and hides a fault that brings its complaint about",
    async (file) => {
      const { exercise, hidden } = got(await openForInstructor(got(readExercise(text(file))), PASSPHRASE));
      const { circuit } = exercise;
      expect(circuit).toEqual(travelling(sample(file.split(".")[0]!)));
      const { id, faults, title } = got(plantOf(circuit, hidden.fault));
      const fails = failsWith(circuit, faults).map(({ check, word }) => `${check.id} ${word}`);
      expect(fails).toContain(`${exercise.complaint} ${exercise.word}`);
      expect(hidden.note.length).toBeGreaterThan(60);
      for (const secret of [id, title, hidden.note]) expect(text(file)).not.toContain(secret);
    },
  );

  it.each(FILES)("%s is found and proven by who reads what the probe order says", async (file) => {
    const opened = got(await openForInstructor(got(readExercise(text(file))), PASSPHRASE));
    const read = readAsPlanned(opened);
    const proof = readingsIn(read).map((_, index) => index + 1);
    const last = got(moved(read, opened.vehicle, { do: "verdict", suspect: opened.hidden.fault, proof }, null));
    const replay = got(replayed(opened.exercise, opened.vehicle, last.route));
    expect(gradeOf(opened.exercise, opened.hidden, replay)).toMatchObject({ is: "right", proof: { is: "proven" } });
    expect(last.minutes).toBeLessThan(40);
  });
});

/** An attempt that reads row after row as the probe order has them, until none tells more; trim comes off where it must. */
function readAsPlanned({ exercise, vehicle }: Opened): Attempt {
  const ground = groundOf(exercise);
  let attempt = begun(exercise);
  const make = (typed: string): void => {
    for (const move of got(parseMoves(exercise.circuit, typed, attempt.condition)))
      attempt = got(moved(attempt, vehicle, move, null));
  };
  for (let row = nextRow(ground, attempt, evidentIn(attempt)); row !== null; ) {
    const { candidate } = ground.rows.columns[row]!;
    const { access } = candidate.at;
    if (access !== null && !attempt.open.includes(access)) make(`open ${access}`);
    for (const number of candidate.conditions) {
      const condition = ground.rows.conditions[number]!;
      make(`${leadsText(probeFor(candidate, condition))} @ ${conditionText(condition) || "rest"}`);
    }
    row = nextRow(ground, attempt, evidentIn(attempt));
  }
  return attempt;
}
