import { describe, expect, test } from "vitest";
import { possibleFaults } from "../../core/diagnose/possible.ts";
import { INSTRUMENTS } from "../../core/diagnose/reading.ts";
import { complaintOf } from "../../core/diagnose/seen.ts";
import { cupboardFor, failsWith } from "../../core/lesson/cupboard.ts";
import { gradedFaults } from "../../core/lesson/difficulty.ts";
import { drawnFault } from "../../core/lesson/draw.ts";
import { DIFFICULTIES } from "../../core/lesson/graded.ts";
import { groundFor, minutesToEach, suspectFor, wayTo } from "../../core/lesson/ground.ts";
import { plantOf } from "../../core/lesson/plant.ts";
import { codeOf, got } from "../edit/given.ts";
import { HORN, LAMP } from "./given.ts";

const CHECK = LAMP.checks[0]!;
const wordOf = (fault: string): string | undefined =>
  cupboardFor(LAMP, CHECK).find(({ possible }) => possible.id === fault)?.word;

describe("the fault cupboard", () => {
  test("holds what makes the check fail and says how; what lets it work is not offered", () => {
    expect(wordOf("W3:open")).toBe("dead");
    expect(wordOf("W4:open")).toBe("dead");
    expect(wordOf("E1:burnt-out")).toBe("dead");
    expect(wordOf("X1-1:corroded=20")).toBe("dead");
    // 0.05 ohm beside the 7 ohm of a 21 W lamp: nobody sees it.
    expect(wordOf("X1-1:corroded=0.05")).toBeUndefined();
    expect(possibleFaults(LAMP).some(({ id }) => id === "X1-1:corroded=0.05")).toBe(true);
  });

  test("agrees with what each fault does to every check, over all ways to fail", () => {
    const stocks = HORN.checks.map((check) => ({ check, stock: cupboardFor(HORN, check) }));
    for (const possible of possibleFaults(HORN).filter((_, index) => index % 11 === 0)) {
      const fails = failsWith(HORN, possible.faults).map(({ check, word }) => `${check.id} ${word}`);
      const stocked = stocks.flatMap(({ check, stock }) =>
        stock.filter((each) => each.possible === possible).map(({ word }) => `${check.id} ${word}`),
      );
      expect([possible.id, ...stocked]).toEqual([possible.id, ...fails]);
    }
  });

  test("a fault is planted by its text, of any value; crossed wires and faults without one cause are refused", () => {
    expect(got(plantOf(LAMP, "W3:open")).title).toBe("W3 broken");
    expect(got(plantOf(LAMP, "X1-1:corroded")).id).toBe("X1-1:corroded=20");
    const odd = got(plantOf(LAMP, "X1-1:corroded=7"));
    expect(odd).toMatchObject({ id: "X1-1:corroded=7", repair: got(plantOf(LAMP, "X1-1:backed-out")).repair });
    expect(got(plantOf(LAMP, "X1-1:backed-out+X1-2:backed-out")).title).toBe("X1 not pushed home");
    expect(codeOf(plantOf(LAMP, "W3:crossed=W4"))).toBe("plant-crossed");
    expect(codeOf(plantOf(LAMP, "W3:open+W4:open"))).toBe("plant-several");
    expect(codeOf(plantOf(LAMP, "W3:open+W9:open"))).toBe("fault-target");
    expect(codeOf(plantOf(LAMP, "W3:burnt"))).toBe("fault-mode");
  });
});

describe("difficulty", () => {
  const graded = gradedFaults(LAMP, CHECK, INSTRUMENTS);
  const gradeOf = (fault: string) => graded.find(({ possible }) => possible.id === fault)!;

  test("every fault that is stocked is graded, a third of them each", () => {
    expect(graded.length).toBe(cupboardFor(LAMP, CHECK).length);
    const counts = DIFFICULTIES.map((level) => graded.filter(({ difficulty }) => difficulty === level).length);
    expect(Math.max(...counts) - Math.min(...counts)).toBeLessThanOrEqual(1);
  });

  test("an open on the feed shows on an unloaded meter, one on the ground side or some ohms in the way do not", () => {
    // Unplugged, the ground pin hangs on nothing and reads as a good ground does; the feed pin reads full volts through 20 ohm.
    expect(gradeOf("W4:open").misleads).toBe(1);
    expect(gradeOf("W3:ohms=20").misleads).toBe(1);
    expect(gradeOf("W1:open").misleads).toBeLessThan(gradeOf("W3:open").misleads);
    expect(gradeOf("W3:open").misleads).toBeLessThan(1);
  });

  test("says where the instruments cannot prove a fault: a meter alone sees no difference between bulb and pin", () => {
    const byMeter = gradedFaults(LAMP, CHECK, ["meter volts"]);
    const proven = (list: typeof graded, fault: string) =>
      list.find(({ possible }) => possible.id === fault)?.canBeProven;
    expect([proven(byMeter, "E1:burnt-out"), proven(byMeter, "X1-1:backed-out")]).toEqual([false, false]);
    expect([proven(graded, "E1:burnt-out"), proven(graded, "X1-1:backed-out")]).toEqual([true, true]);
    expect(proven(byMeter, "W3:open")).toBe(true);
  });

  test("what lies free is found sooner than what lies behind the panel", () => {
    expect(gradeOf("W1:open").minutes).toBeLessThan(5);
    expect(gradeOf("E1:burnt-out").minutes).toBeGreaterThan(5);
  });

  test("the way to each suspect is walked to its end, and its greedy stand-in is not far off", () => {
    const ground = groundFor(LAMP, complaintOf(LAMP, CHECK, "dead"), INSTRUMENTS);
    const greedy = minutesToEach(ground);
    for (const suspect of ground.suspects.keys()) {
      const { rows, minutes } = wayTo(ground, suspect);
      expect(rows.length).toBeGreaterThan(0);
      expect(minutes).toBeGreaterThan(0);
    }
    const mean = (of: (suspect: number) => number): number =>
      ground.suspects.reduce((sum, { probability }, suspect) => sum + probability * of(suspect), 0);
    expect(mean((suspect) => greedy[suspect]!)).toBeLessThan(1.3 * mean((suspect) => wayTo(ground, suspect).minutes));
    expect(suspectFor(ground, got(plantOf(LAMP, "X1-1:corroded=7")))).toBeGreaterThanOrEqual(0);
  });

  test("the same seed draws the same fault, and other seeds draw others, the likely ones more often", () => {
    const drawn = Array.from({ length: 200 }, (_, seed) => drawnFault(graded, seed)!.possible);
    expect(drawnFault(graded, 7)).toBe(drawnFault(graded, 7));
    expect(new Set(drawn).size).toBeGreaterThan(10);
    const often = (fault: string): number => drawn.filter(({ id }) => id === fault).length;
    expect(often("E1:burnt-out")).toBeGreaterThan(often("W3:open"));
    expect(drawnFault([], 1)).toBeUndefined();
  });
});
