import { expect, test } from "vitest";
import { figure } from "../../core/base/figure.ts";

test.each([
  [-0.04, 1, "0.0"],
  [-0, 2, "0.00"],
  [-0.06, 1, "-0.1"],
  [12.346, 2, "12.35"],
  [3, 0, "3"],
])("%s to %s decimals is %s: nothing has no sign", (value, decimals, words) => {
  expect(figure(value, decimals)).toBe(words);
});
