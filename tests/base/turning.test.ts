import { describe, expect, test } from "vitest";
import { ownSpan, withoutTurns } from "../../core/base/turning.ts";

describe("a text that turns the writing about", () => {
  test("keeps to its own span, and cannot end it", () => {
    expect(ownSpan("Horn")).toBe("Horn");
    expect(ownSpan("\u202eevil")).toBe("\u2068\u202eevil\u2069");
    expect(ownSpan("\u2066evil\u2069 more")).toBe("\u2068evil more\u2069");
  });

  test("or goes without the signs that turn it; letters stay as they are", () => {
    expect(withoutTurns("S1 \u202eno\u202c \u2068at\u2069 rest")).toBe("S1 no at rest");
    expect(withoutTurns("מנוע")).toBe("מנוע");
  });
});
