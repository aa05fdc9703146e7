import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { goneAt, isThere, STEP_SECONDS, withoutGone } from "../../core/live/comings.ts";
import { type Fault, faultText, parseFault } from "../../core/live/fault.ts";
import { codeOf, got } from "../edit/given.ts";
import { sample } from "../samples/onTheBench.ts";

const MOTOR = sample("12-reversing-motor");
const seeds = fc.integer({ min: 0, max: 999_999 });

describe("a fault that comes and goes", () => {
  it("changes three times a second at most", () => {
    expect(1 / STEP_SECONDS).toBeLessThanOrEqual(3);
  });

  it("is there at first, and the same for the same seed, however often it is asked", () => {
    fc.assert(
      fc.property(seeds, fc.nat(2_000), (pattern, steps) => {
        expect(isThere(pattern, 0)).toBe(true);
        expect(isThere(pattern, steps)).toBe(isThere(pattern, steps));
      }),
    );
  });

  it("both comes and goes within seven seconds of any time, by every pattern", () => {
    fc.assert(
      fc.property(seeds, fc.nat(2_000), (pattern, steps) => {
        const spell = Array.from({ length: 7 / STEP_SECONDS }, (_, step) => isThere(pattern, steps + step));
        expect(new Set(spell).size).toBe(2);
      }),
    );
  });

  it("goes by another pattern for another seed", () => {
    const written = (pattern: number) =>
      Array.from({ length: 60 }, (_, step) => (isThere(pattern, step) ? "#" : ".")).join("");
    expect(new Set(Array.from({ length: 20 }, (_, pattern) => written(pattern))).size).toBe(20);
  });

  it.each([
    "W9:open~5",
    "W9:ohms=20~0",
    "X3-1:backed-out~12",
    "X3-1:corroded=3~7",
    "GP2:off~3",
    "S1:stuck-open-4-1~9",
    "SP1:leg-1-open~2",
  ])("is spelled %s, and read as it is spelled", (text) => {
    const fault = got(parseFault(MOTOR, text));
    expect(faultText(fault)).toBe(text);
    expect(fault.pattern).toBe(Number(text.split("~")[1]));
  });

  it.each(["W9:short-to-ground~5", "M1:seized~5", "F1:blown~5", "S1:stuck-closed-4-1~5", "W9:crossed=W11~5"])(
    "%s is none: it stays as it is",
    (text) => {
      expect(codeOf(parseFault(MOTOR, text))).toBe("fault-pattern");
    },
  );

  it("says what is wrong with the fault itself first", () => {
    expect(codeOf(parseFault(MOTOR, "W99:open~5"))).toBe("fault-target");
    expect(codeOf(parseFault(MOTOR, "W9:open~x"))).toBe("fault-mode");
  });

  it("is left out while it is away, and what stays is not", () => {
    const faults: readonly Fault[] = [
      { target: "W9", mode: "open", pattern: 5 },
      { target: "W11", mode: "open" },
    ];
    const away = Array.from({ length: 40 }, (_, step) => step).find((step) => !isThere(5, step))!;
    expect(goneAt(faults, away)).toEqual(["W9:open~5"]);
    expect(withoutGone(faults, goneAt(faults, away))).toEqual([faults[1]]);
    expect(withoutGone(faults, ["W9:open~5"])).toBe(withoutGone(faults, ["W9:open~5"]));
    expect(withoutGone(faults, [])).toBe(faults);
  });
});
