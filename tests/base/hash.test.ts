import { expect, test } from "vitest";
import { hashOf } from "../../core/base/hash.ts";

test("a hash is a whole number of 32 bits, the same for the same text", () => {
  for (const text of ["", "X5-4", "Ω –", "x".repeat(10_000)]) {
    const hash = hashOf(text);
    expect(Number.isInteger(hash) && hash >= 0 && hash < 2 ** 32).toBe(true);
    expect(hashOf(text)).toBe(hash);
  }
});

test("ten thousand texts that differ in a figure have ten thousand hashes, but for two at most", () => {
  const hashes = Array.from({ length: 10_000 }, (_, i) => hashOf(`row ${i}`));
  expect(new Set(hashes).size).toBeGreaterThanOrEqual(9_998);
});

test("texts that differ in one figure differ in about half of their bits", () => {
  const bits = (value: number) => value.toString(2).replaceAll("0", "").length;
  const shares = Array.from({ length: 500 }, (_, i) => bits((hashOf(`${i}a`) ^ hashOf(`${i}b`)) >>> 0) / 32);
  const mean = shares.reduce((sum, share) => sum + share, 0) / shares.length;
  expect(Math.abs(mean - 0.5)).toBeLessThan(0.05);
});
