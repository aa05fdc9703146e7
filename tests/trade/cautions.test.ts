import { expect, test } from "vitest";
import { CAUTIONS, cautionOf } from "../../core/trade/cautions.ts";

test("every caution has a code of its own", () => {
  const codes = CAUTIONS.map((each) => each.code);
  expect(new Set(codes).size).toBe(codes.length);
  for (const code of codes) expect(cautionOf(code)?.code).toBe(code);
  expect(cautionOf("none-such")).toBeNull();
});

// NHTSA DOT HS 811 575, version 2
test("the airbag caution says 5 minutes", () => expect(cautionOf("airbag-wait")?.figures).toEqual({ minutes: 5 }));
