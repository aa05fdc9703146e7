import { describe, expect, it } from "vitest";
import { bitsLeft, clusters, entropy } from "../../core/diagnose/weigh.ts";

/** Information of one test whose outcome for each hypothesis is given, all hypotheses their own repair. */
function information(outcomes: readonly (string | number)[], weights: readonly number[]): number {
  const groups = outcomes.map((_, index) => String(index));
  return entropy(weights) - bitsLeft(outcomes.map(String), groups, weights);
}

describe("weighing by information", () => {
  // MacKay, "Information Theory, Inference and Learning Algorithms", exercise 4.1: twelve balls, one heavy or light.
  it.each([
    [1, 0.8167],
    [2, 1.2516],
    [3, 1.5],
    [4, 1.585],
    [5, 1.4834],
    [6, 1.0],
  ])("gives the first weighing of %i against as many balls its information", (balls, bits) => {
    const tips = (ball: number, isHeavy: boolean): string =>
      ball >= 2 * balls ? "level" : ball < balls === isHeavy ? "left" : "right";
    const outcomes = Array.from({ length: 24 }, (_, index) => tips(index % 12, index < 12));
    expect(
      information(
        outcomes,
        outcomes.map(() => 1 / 24),
      ),
    ).toBeCloseTo(bits, 4);
  });

  // Pattipati & Alexandridis, IEEE Trans. SMC 20 (1990): six states, five tests; the information of each is computed.
  it("gives the five tests of the 1990 example their information", () => {
    const weights = [0.7, 0.01, 0.02, 0.1, 0.05, 0.12];
    const rows = ["00000", "01001", "00110", "10011", "11000", "11110"];
    const bits = [0, 1, 2, 3, 4].map((test) =>
      information(
        rows.map((row) => row[test]!),
        weights,
      ),
    );
    for (const [test, expected] of [0.8415, 0.6801, 0.5842, 0.795, 0.4999].entries())
      expect(bits[test]).toBeCloseTo(expected, 4);
  });

  it("tells nothing where the suspects that are parted have the same repair", () => {
    expect(bitsLeft(["a", "b"], ["same", "same"], [0.5, 0.5])).toBe(0);
    expect(bitsLeft(["a", "a"], ["one", "other"], [0.5, 0.5])).toBe(1);
  });
});

describe("clusters of readings", () => {
  it("parts readings at gaps, not at fixed limits", () => {
    expect(clusters([12.1, 0, 12.2, 6, 0.05])).toEqual([2, 0, 2, 1, 0]);
  });

  it("parts a way back that carries current from one that does not, and keeps neighbours near battery volts together", () => {
    expect(clusters([0.0, 0.38])).toEqual([0, 1]);
    expect(clusters([12.1, 12.4])).toEqual([0, 0]);
    expect(clusters([12.0, 12.6])).toEqual([0, 1]);
  });
});
