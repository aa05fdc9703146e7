import { expect, test } from "vitest";
import type { Kind } from "../../core/parts/kind.ts";
import { potentiometer } from "../../core/parts/potentiometer.ts";
import { rheostat } from "../../core/parts/rheostat.ts";
import { sender } from "../../core/parts/sender.ts";
import { PLACES } from "../../core/parts/track.ts";
import { ohms, onBench } from "./bench.ts";

/** Ohms that a part has between its terminals 1 and 2 in a position of its control. */
function ohmsOf(kind: Kind, position: string, fault?: readonly [string, number?]): number {
  const stood = onBench(kind, {
    wired: [
      ["1", "-", { law: "source", volts: 1, ohms: 1e-6 }],
      ["2", "-", ohms(1e-6)],
    ],
    around: { positions: { "": position } },
    ...(fault ? { fault } : {}),
  });
  return 1 / Math.abs(stood.amps(kind === sender ? "arm" : "wiper"));
}

test("a potentiometer's wiper has the share of the track's volts that its control says", () => {
  const shares = PLACES.map((position) => {
    const stood = onBench(potentiometer, {
      wired: [
        ["E", "-", { law: "source", volts: 5, ohms: 1e-6 }],
        ["A", "-", ohms(1e-6)],
        ["W", "-", ohms(1e9)],
      ],
      around: { positions: { "": position } },
    });
    return Math.round((100 * stood.volts("W")) / 5);
  });
  expect(shares).toEqual([0, 25, 50, 75, 100]);
});

test("a potentiometer worn through leaves the wiper at the side it lies on", () => {
  const volts = ["25", "75"].map((position) =>
    onBench(potentiometer, {
      wired: [
        ["E", "-", { law: "source", volts: 5, ohms: 1e-6 }],
        ["A", "-", ohms(1e-6)],
        ["W", "-", ohms(1e9)],
      ],
      around: { positions: { "": position } },
      fault: ["track-open-25-50"],
    }).volts("W"),
  );
  expect(volts[0]).toBeCloseTo(0, 3);
  expect(volts[1]).toBeCloseTo(5, 3);
});

test("a rheostat goes from about nothing to its whole track in equal steps", () => {
  const steps = PLACES.map((position) => ohmsOf(rheostat, position));
  for (const [index, value] of steps.entries()) expect(value).toBeCloseTo(1 + 5 * index, 1);
});

// TM 5-3805-262-20, page 5-118: 0 to 3 ohm empty, 84 to 92 ohm full
test("a fuel sender lies within the manual's ohms, empty and full", () => {
  expect(ohmsOf(sender, "empty")).toBeLessThan(3);
  expect(ohmsOf(sender, "full")).toBeGreaterThan(84);
  expect(ohmsOf(sender, "full")).toBeLessThan(92);
});

test("a sender's ohms rise with its level, shorted they are near zero, open they are none", () => {
  const levels = ["empty", "quarter", "half", "three-quarters", "full"].map((level) => ohmsOf(sender, level));
  expect(levels).toEqual([...levels].sort((a, b) => a - b));
  expect(ohmsOf(sender, "full", ["open"])).toBe(Number.POSITIVE_INFINITY);
  expect(ohmsOf(sender, "half", ["ohms", 20]) - ohmsOf(sender, "half")).toBeCloseTo(20, 1);
});

test("the first position of every variable resistor is its rest, and every position closes one tap of the model", () => {
  for (const kind of [potentiometer, rheostat, sender]) {
    const positions = kind.controls({ id: "R1", kind: kind.name })[0]!.positions.map(({ name }) => name);
    expect(positions).toHaveLength(5);
    const taps = new Set(positions.map((name) => ohmsTap(kind, name)));
    expect(taps.size).toBe(5);
    expect(ohmsTap(kind, undefined)).toBe(ohmsTap(kind, positions[0]));
  }
});

function ohmsTap(kind: Kind, position: string | undefined): string {
  const positions = position === undefined ? {} : { "": position };
  return kind.closed({} as never, "", { positions } as never).join();
}
