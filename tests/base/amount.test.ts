import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parseAmount } from "../../core/base/amount.ts";

describe("an amount", () => {
  test.each([
    ["20A", "A", 20],
    ["20 a", "A", null],
    ["20 Amps", "A", 20],
    ["250 mA", "A", 0.25],
    ["250m", "A", 0.25],
    ["12,6", "V", 12.6],
    [".5 V", "V", 0.5],
    ["1k2", "ohm", 1200],
    ["1k2 ohm", "ohm", 1200],
    ["4R7", "ohm", 4.7],
    ["0R05", "ohm", 0.05],
    ["2M2", "ohm", 2_200_000],
    ["4.7 \u03a9", "ohm", 4.7],
    ["4.7 k\u2126", "ohm", 4700],
    ["12 mohm", "ohm", 0.012],
    ["10K", "ohm", 10_000],
    ["1e3", "ohm", 1000],
    ["4V7", "V", 4.7],
    ["0.75 mm2", "mm2", 0.75],
    ["1,5 mm\u00b2", "mm2", 1.5],
    ["3.2", "m", 3.2],
    ["5m", "m", 5],
    ["80 cm", "m", 0.8],
    ["10 ft", "m", 3.048],
    ["57 cm", "m", 0.57],
    ["-10 \u00b0C", "degC", -10],
    ["\u221210", "degC", -10],
    ["85%", "%", 85],
    ["55W", "W", 55],
    ["3000 rpm", "rpm", 3000],
    ["6", "", 6],
    ["0,125", "A", 0.125],
  ] as const)("%s in %s is %s", (text, unit, amount) => {
    const read = parseAmount(text, unit);
    expect(read.ok ? read.value : null).toBe(amount);
  });

  test.each([
    ["amount-empty", " ", "A"],
    ["amount-spelling", "many", "A"],
    ["amount-spelling", "1.2.3", "A"],
    ["amount-spelling", "1e999", "A"],
    ["amount-spelling", "k2", "ohm"],
    ["amount-unit", "20 V", "A"],
    ["amount-unit", "20 a", "A"],
    ["amount-unit", "3 mm2", "m"],
    ["amount-unit", "1 km2", "mm2"],
    ["amount-unit", "6 A", ""],
    ["amount-unit", "1k2 A", "ohm"],
    ["amount-unit", "1x2", "ohm"],
    ["amount-unit", "20 A constructor", "A"],
    ["amount-comma", "1,200 A", "A"],
  ] as const)("is refused as %s: %s in %s", (code, text, unit) => {
    const read = parseAmount(text, unit);
    expect(read.ok ? read.value : read.refusal.code).toBe(code);
  });

  test("of a plain number is that number, with and without its unit", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e6, max: 1e6, noNaN: true }).map((amount) => Number(amount.toPrecision(9))),
        fc.constantFrom("A", "V", "ohm", "m", "mm2", "degC"),
        (amount, unit) => {
          for (const text of [`${amount}`, `${amount} ${unit}`, ` ${amount}${unit} `]) {
            const read = parseAmount(text, unit);
            expect(read.ok && read.value).toBe(amount + 0);
          }
        },
      ),
      { seed: 5, numRuns: 300 },
    );
  });
});
