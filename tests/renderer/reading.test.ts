import { describe, expect, it, test } from "vitest";
import { probeOrder } from "../../core/diagnose/order.ts";
import { percent } from "../../core/diagnose/progressWords.ts";
import type { Expected } from "../../core/diagnose/step.ts";
import { placesOfSuspects } from "../../renderer/diagnose/suspectPlaces.ts";
import { isAsWanted, sweepSoFar } from "../../renderer/words/reading.ts";
import { sample } from "../samples/onTheBench.ts";

const vents = sample("1-roof-vents");
const check = vents.checks.find(({ id }) => id === "middle-open-own")!;
const order = probeOrder(vents, { check, word: "dead" });

describe("a sweep that is half typed", () => {
  const sweep = order.steps.find(({ settings }) => settings.length > 2)!;
  const names = sweep.settings.map(({ position }) => position.replaceAll("-", " "));

  it("says which position each value is of, and which are missing", () => {
    expect(sweepSoFar(sweep, "0.02 12.1 V")).toBe(
      `${names[0]} 0.02, ${names[1]} 12.1V. Still to type: ${names.slice(2).join(", ")}.`,
    );
  });

  it.each(["", "ok", names.map(() => "0.1").join(" "), "5 = 12.6"])("has nothing to say of %o", (typed) => {
    expect(sweepSoFar(sweep, typed)).toBeNull();
  });
});

describe("a reading beside what was wanted", () => {
  const volts: Expected = { low: 12.4, high: 12.8, unit: "V", lamp: null, word: null };
  const drop: Expected = { low: 20, high: 30, unit: "mV", lamp: null, word: null };
  const lamp: Expected = { ...volts, lamp: "bright" };
  const look: Expected = { low: 0, high: 0, unit: "V", lamp: null, word: "whole" };
  it.each([
    [volts, { volts: 12.36, word: null }, true],
    [volts, { volts: 12.3, word: null }, false],
    [volts, { volts: 12.9, word: null }, false],
    [drop, { volts: 0.025, word: null }, true],
    [drop, { volts: 0.2, word: null }, false],
    [lamp, { volts: null, word: "bright" }, true],
    [lamp, { volts: 12.6, word: null }, true],
    [lamp, { volts: 12.6, word: "dim" }, false],
    [look, { volts: null, word: "whole" }, true],
    [look, { volts: null, word: "blown" }, false],
  ] as const)("%o: %o is as wanted: %s", (expected, read, isWanted) => {
    expect(isAsWanted(read, expected)).toBe(isWanted);
  });
});

test("is measured by the battery of the vehicle: 11.5 V are as wanted where it has 11.8 V and the drawing 12.6 V", () => {
  const wanted: Expected = { low: 12.1, high: 12.5, unit: "V", lamp: null, word: null };
  expect(isAsWanted({ volts: 11.5, word: null }, wanted)).toBe(false);
  expect(isAsWanted({ volts: 11.5, word: null }, wanted, 11.8 / 12.6)).toBe(true);
  const ohms: Expected = { low: 3, high: 4, unit: "ohm", lamp: null, word: null };
  expect(isAsWanted({ volts: null, ohms: 3.9, word: null }, ohms, 11.8 / 12.6)).toBe(true);
});

test("the place of the likeliest suspect stands first, the others by share", () => {
  const [first, ...others] = placesOfSuspects(vents, order.suspects);
  expect(first!.suspects[0]).toBe(order.suspects[0]);
  const shares = others.map(({ share }) => share);
  expect(shares).toEqual([...shares].sort((one, other) => other - one));
});

test.each([
  [0, "0"],
  [0.001, "under 1"],
  [0.47, "47"],
  [0.994, "99"],
  [0.997, "over 99"],
  [1, "100"],
])("a share of %d is %s per cent", (share, words) => {
  expect(percent(share)).toBe(`${words}\u00a0%`);
});
