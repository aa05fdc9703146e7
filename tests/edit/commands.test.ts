import { describe, expect, test } from "vitest";
import type { Outcome } from "../../core/base/outcome.ts";
import { COMMAND_WORDS } from "../../core/base/words/edit.ts";
import { WORDS } from "../../core/base/words.ts";
import type { Bench } from "../../core/edit/bench.ts";
import { COMMANDS, type CommandId } from "../../core/edit/commands/index.ts";
import { apply, type Edit } from "../../core/edit/edit.ts";
import { liveNow } from "../../core/edit/liveNow.ts";
import { CASES } from "./commandCases.ts";
import { codeOf, expectSame, expectSound, frozen, got } from "./given.ts";

type Make = (bench: Bench, ...given: readonly unknown[]) => Outcome<Edit>;
const LISTED = COMMANDS.map((command) => ({ ...command, make: command.make as Make, cases: CASES[command.id] }));

describe("the list of commands", () => {
  test("has every id and key once, and a title for each", () => {
    expect(new Set(COMMANDS.map(({ id }) => id)).size).toBe(COMMANDS.length);
    expect(Object.keys(COMMAND_WORDS).toSorted()).toEqual(COMMANDS.map(({ id }) => id).toSorted());
    for (const { id, key } of COMMANDS) {
      expect(id).toMatch(/^[a-z]+(-[a-z]+)*$/);
      if (key !== null) expect(key, id).toMatch(/^(Ctrl\+|Shift\+|Alt\+)*([A-Z0-9]|Enter|Delete|F\d{1,2})$/);
    }
  });

  test("lets two commands share a key only where one of them refuses what the other takes", () => {
    for (const one of LISTED) {
      for (const other of LISTED) {
        if (one === other || one.key === null || one.key !== other.key) continue;
        for (const [bench, ...given] of one.cases.good) expect(other.make(bench, ...given).ok, one.id).toBe(false);
      }
    }
  });
});

/** Turned again, a part stands another way again; what is drawn again is there once more. */
const DOES_MORE_EACH_TIME: readonly CommandId[] = [
  "turn-part",
  "flip-part",
  "add-assembly",
  "duplicate-things",
  "paste",
  "move-things",
  "turn-things",
  "flip-things",
  "add-page",
  "remove-scene",
  "reorder-scene",
  "take-readings",
  "lay-instrument",
  "add-underlay",
  "move-underlay",
  "turn-underlay",
  "scale-underlay",
  "crop-underlay",
];

describe.each(LISTED)("$id", ({ id, make, cases }) => {
  test("makes an edit that its inverse takes back to the same bench and the same bytes", () => {
    expect(cases.good.length).toBeGreaterThan(0);
    for (const [bench, ...given] of cases.good) {
      const before = frozen(bench);
      const edit = got(make(bench, ...given));
      expect(edit.name).not.toBe("");
      expect(JSON.parse(JSON.stringify(edit))).toEqual(edit);
      const { bench: next, inverse } = got(apply(bench, edit));
      expect(next).not.toEqual(bench);
      expectSound(next);
      expectSame(got(apply(next, inverse)).bench, bench);
      expect(bench).toEqual(before);
    }
  });

  test("gives a bench that can be shown", () => {
    for (const [bench, ...given] of cases.good) {
      const next = got(apply(bench, got(make(bench, ...given)))).bench;
      const { shown } = liveNow(next);
      expect(shown.settled).toBe(true);
      expect(shown.wires.size).toBe(next.circuit.wires.length);
    }
  });

  test("refuses by code, and every code has a sentence", () => {
    expect(cases.bad.length).toBeGreaterThan(0);
    for (const [code, bench, ...given] of cases.bad) {
      const before = frozen(bench);
      expect(codeOf(make(bench, ...given)), JSON.stringify(given)).toBe(code);
      expect(
        WORDS.some((words) => Object.hasOwn(words, code)),
        code,
      ).toBe(true);
      expect(bench).toEqual(before);
    }
  });

  test("refuses to do again what is so already", () => {
    const [bench, ...given] = cases.good[0]!;
    const next = got(apply(bench, got(make(bench, ...given)))).bench;
    expect(make(next, ...given).ok).toBe(DOES_MORE_EACH_TIME.includes(id));
  });
});
