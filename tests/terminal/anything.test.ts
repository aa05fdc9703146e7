import { fileURLToPath } from "node:url";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { run } from "./run.ts";

const HORN = fileURLToPath(new URL("../../samples/4-horn.circuit.json", import.meta.url));

/** Words a hand might type, right ones and wrong ones; nothing here writes a file. */
const word = fc.oneof(
  fc.constantFrom(
    "check",
    "live",
    "why",
    "table",
    "order",
    HORN,
    "--in",
    "--fault",
    "--connector",
    "--complaint",
    "--observed",
    "--minutes",
    "--json",
  ),
  fc.constantFrom(
    "S1=pressed",
    "apart:X20",
    "out:F1",
    "battery:off",
    "ambient:80",
    "F1:blown",
    "W1:ohms=2",
    "K1",
    "K1.30",
    "X20-1",
    "W1",
    "5",
  ),
  fc.string({ maxLength: 12 }),
);

describe("whatever is typed", () => {
  it("ends with 0, 1 or 2, and a wrong entry with one sentence and nothing else", async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(word, { maxLength: 7 }), async (words) => {
        const { out, complaint, code } = await run(...words);
        expect([0, 1, 2]).toContain(code);
        expect(complaint).not.toContain("    at ");
        if (code === 2) {
          expect(out).toBe("");
          expect(complaint).toMatch(/\S[^\n]*\n$/);
        }
      }),
      { numRuns: 300, seed: 20260101 },
    );
  });
});
