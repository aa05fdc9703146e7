import { describe, expect, test } from "vitest";
import { sentence } from "../../core/base/words.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { probeFor } from "../../core/diagnose/candidates.ts";
import { evidentIn, groundOf } from "../../core/lesson/attempt.ts";
import type { ExerciseChoice } from "../../core/lesson/exercise.ts";
import { type Grade, gradeOf } from "../../core/lesson/grade.ts";
import { gradeTable, type Marked, resultWords } from "../../core/lesson/gradeTable.ts";
import { suspectFor, wayTo } from "../../core/lesson/ground.ts";
import { nextRow } from "../../core/lesson/hint.ts";
import { leadsText } from "../../core/lesson/moveText.ts";
import { plantOf } from "../../core/lesson/plant.ts";
import { replayed } from "../../core/lesson/replay.ts";
import { marksOf, progressOf, readTasks, taskTable } from "../../core/lesson/tasks.ts";
import { conditionText } from "../../core/live/condition.ts";
import { csvOf } from "../../core/paper/csv.ts";
import { codeOf, got } from "../edit/given.ts";
import { exerciseWith, HORN, LAMP, worked } from "./given.ts";

/** The grade of these moves on an exercise with this fault. */
function graded(
  circuit: Circuit,
  fault: string,
  moves: readonly string[],
  choice: Partial<ExerciseChoice> = {},
): Grade {
  const given = exerciseWith(circuit, fault, choice);
  const { route } = worked(given, ...moves);
  return gradeOf(given.exercise, { fault, seed: null, note: "" }, got(replayed(given.exercise, given.vehicle, route)));
}

/** Moves as the planner gives them, one row after the other, until it has none that tells more; trim comes off where it must. */
function asHinted(fault: string): readonly string[] {
  const given = exerciseWith(LAMP, fault);
  const ground = groundOf(given.exercise);
  const moves: string[] = [];
  for (;;) {
    const attempt = worked(given, ...moves);
    const row = nextRow(ground, attempt, evidentIn(attempt));
    if (row === null) return moves;
    const { candidate } = ground.rows.columns[row]!;
    if (candidate.at.access === "panel" && attempt.open.length === 0) moves.push("open panel");
    for (const number of candidate.conditions) {
      const condition = ground.rows.conditions[number]!;
      moves.push(`${leadsText(probeFor(candidate, condition))} @ ${conditionText(condition) || "rest"}`);
    }
  }
}

// The battery, fuse, switch, and lamp behind a panel; the ground wire W4 is broken.
const AT_THE_LAMP = ["throw S1=on", "open panel", "probe X1-2"];

describe("the proof", () => {
  test("a guess is right and lucky: nearly all other suspects are left, and the sheet says what was missing", () => {
    const grade = graded(LAMP, "W4:open", ["verdict W4:open"]);
    expect(grade).toMatchObject({ is: "right", verdict: "W4 broken", minutes: 0, readings: 0, wrongTurn: null });
    expect(grade.proof).toMatchObject({ is: "not proven" });
    expect(grade.proof!.others).toBeGreaterThan(0.9);
    expect(grade.proof!.missing!.row).toMatch(/^(probe|ohms|clamp|4 A lamp|look) /);
    expect(resultWords(grade)).toBe("right, not proven");
  });

  test("the lamp's ground pin at battery volts leaves the ground wire, its pin, the stud and its body: named one by one", () => {
    const near = graded(LAMP, "W4:open", [...AT_THE_LAMP, "verdict W4:open"]);
    expect(near.proof!.is).toBe("not proven");
    // The reading that tells the wire from the stud is at the stud.
    expect(near.proof!.missing).toMatchObject({ row: expect.stringMatching(/GP1\.stud/), other: "GP1 off its stud" });
    const proven = graded(LAMP, "W4:open", [...AT_THE_LAMP, "lamp battery+/GP1.stud", "verdict W4:open"]);
    expect(proven.proof).toMatchObject({ is: "proven", missing: null });
    expect(proven.proof!.others).toBeLessThan(0.2);
    expect(resultWords(proven)).toBe("right, proven");
  });

  test("it is on the readings that the verdict names", () => {
    const moves = [...AT_THE_LAMP, "lamp battery+/GP1.stud"];
    expect(graded(LAMP, "W4:open", [...moves, "verdict W4:open by 1, 2"]).proof!.is).toBe("proven");
    expect(graded(LAMP, "W4:open", [...moves, "verdict W4:open by 2"]).proof!.is).toBe("not proven");
  });

  test("where nothing that is allowed tells the rest apart, it is proven as far as it can be", () => {
    const shut = { GP1: { doNotProbe: "airbag" }, GP2: { doNotProbe: "airbag" } };
    const touched = { ...LAMP, reach: { ...LAMP.reach, ...shut } };
    const grade = graded(touched, "W4:open", [...AT_THE_LAMP, "verdict W4:open"]);
    expect(grade.proof).toMatchObject({ is: "as far as can be", missing: null });
    expect(grade.proof!.others).toBeGreaterThan(0.2);
  });

  test("a wrong verdict that reads like the right one wherever it is allowed says so", () => {
    const meter = { instruments: ["meter volts"] } as const;
    const alike = graded(LAMP, "E1:burnt-out", ["verdict X1-1:backed-out"], meter);
    expect(alike).toMatchObject({ is: "alike", proof: null });
    expect(resultWords(alike)).toMatch(/^wrong, but /);
    expect(graded(LAMP, "E1:burnt-out", ["verdict F1:blown"], meter).is).toBe("wrong");
  });

  test("a wrong verdict has no proof, nor has a route without one", () => {
    expect(graded(LAMP, "W4:open", ["verdict E1:burnt-out"])).toMatchObject({ is: "wrong", proof: null });
    expect(graded(LAMP, "W4:open", AT_THE_LAMP)).toMatchObject({
      is: "open",
      verdict: null,
      proof: null,
      minutes: 5.6,
    });
  });
});

describe("the course", () => {
  test("a reading of what was known tells nothing: the same again, or a lamp where the meter left no question", () => {
    const twice = graded(LAMP, "W4:open", ["throw S1=on", "probe F1.2", "probe F1.2"]);
    expect(twice.wasted).toEqual([3]);
    // With its far side at battery volts the lamp's ground is open: another lamp there is dark in any case.
    const sure = graded(LAMP, "W4:open", [...AT_THE_LAMP, "lamp battery+/X1-2"]);
    expect(sure.wasted).toEqual([4]);
  });

  test("who does as the hints say makes no wrong turn and reads nothing in vain, whatever is broken", () => {
    for (const fault of ["W4:open", "F1:blown", "W3:ohms=20", "E1:burnt-out"]) {
      const grade = graded(LAMP, fault, asHinted(fault));
      expect([fault, grade.wrongTurn, grade.wasted]).toEqual([fault, null, []]);
    }
  });

  test("trim taken off for nothing is a wrong turn, and what was better stands beside it", () => {
    const grade = graded(HORN, "F2:blown", ["throw S1=pressed", "open wheel"]);
    expect(grade.wrongTurn).toMatchObject({ move: 2, better: expect.stringMatching(/^(probe|look|listen|4 A lamp) /) });
    expect(grade.wrongTurn!.dearer).toBeGreaterThan(15);
    expect(graded(HORN, "F2:blown", ["throw S1=pressed", "open bonnet"]).wrongTurn).toBeNull();
  });

  test("hints cost minutes and are counted, and are no wrong turn", () => {
    const grade = graded(LAMP, "W4:open", ["hint"], { hints: { count: 1, minutes: 5 } });
    expect(grade).toMatchObject({ hints: 1, minutes: 5, wrongTurn: null });
  });

  test("minutes stand beside the planner's to this fault", () => {
    const { exercise } = exerciseWith(LAMP, "W4:open");
    const ground = groundOf(exercise);
    const way = wayTo(ground, suspectFor(ground, got(plantOf(LAMP, "W4:open"))));
    expect(graded(LAMP, "W4:open", ["verdict W4:open"]).plannersMinutes).toBe(way.minutes);
  });
});

describe("the table of a class", () => {
  const grade = graded(LAMP, "W4:open", ["throw S1=on", "probe F1.2", "probe F1.2", "verdict W4:open"]);
  const proven = graded(LAMP, "W4:open", [...AT_THE_LAMP, "lamp battery+/GP1.stud", "verdict W4:open"]);
  const refusal = { code: "handin-unsigned", about: { learner: "Cy" } };
  const marked: readonly Marked[] = [
    { learner: '=HYPERLINK("x")', exercise: "Lamp", grade, refusal: null },
    { learner: "Ann; Ode", exercise: "Lamp", grade: proven, refusal: null },
    { learner: "Cy", exercise: "Lamp", grade: null, refusal },
  ];

  test("has a row for each hand-in, numbers as numbers, and why one cannot be graded", () => {
    const [heads, first, second, third] = gradeTable(marked);
    expect([first, second, third].map((row) => row!.length)).toEqual([heads!.length, heads!.length, heads!.length]);
    expect(first!.slice(0, 4)).toEqual(['=HYPERLINK("x")', "Lamp", "right, not proven", "W4 broken"]);
    expect(first![6]).toBe(grade.minutes);
    expect(first![9]).toBe("3");
    expect(third!.at(-1)).toBe(sentence(refusal));
  });

  test("goes out as CSV in which no spreadsheet finds a formula", () => {
    const lines = csvOf(gradeTable(marked)).split("\r\n");
    expect(lines[1]).toMatch(/^"'=HYPERLINK\(""x""\)",Lamp,"right, not proven"/);
    expect(lines[2]).toMatch(/^"Ann; Ode",/);
    expect(lines).toHaveLength(5);
  });

  test("shows each learner's progress against the school's tasks: done when proven, tried otherwise", () => {
    const tasks = got(readTasks("# electrics\nA.3: ground side: Lamp; Horns\n\nVoltage drop: Blower\n"));
    expect(tasks).toEqual([
      { task: "A.3: ground side", exercises: ["Lamp", "Horns"] },
      { task: "Voltage drop", exercises: ["Blower"] },
    ]);
    const marks = marksOf(marked);
    expect(marks.map(({ learner, isMastered }) => [learner, isMastered])).toEqual([
      ['=HYPERLINK("x")', false],
      ["Ann; Ode", true],
    ]);
    expect(progressOf(tasks[0]!, marks, "Ann; Ode")).toBe("done");
    expect(progressOf(tasks[0]!, marks, '=HYPERLINK("x")')).toBe("tried");
    expect(progressOf(tasks[1]!, marks, "Ann; Ode")).toBe("none");
    expect(taskTable(tasks, marks)).toEqual([
      ["Learner", "A.3: ground side", "Voltage drop"],
      ['=HYPERLINK("x")', "tried", ""],
      ["Ann; Ode", "done", ""],
    ]);
    expect(codeOf(readTasks("one without exercises"))).toBe("tasks-line");
    expect(codeOf(readTasks("\n# nothing\n"))).toBe("tasks-none");
  });
});
