import { expect, test } from "vitest";
import { TERMINAL_NUMBERS, terminalNumber } from "../../core/trade/terminals.ts";

test("every terminal number stands once and is found as written", () => {
  const numbers = TERMINAL_NUMBERS.map((each) => each.number);
  expect(new Set(numbers).size).toBe(numbers.length);
  for (const number of numbers) expect(terminalNumber(number)?.number).toBe(number);
  expect(terminalNumber("58l")).toBeNull();
  expect(terminalNumber("99")).toBeNull();
});

// DIN 72552 summaries at kupdf.net and en.wikipedia.org
test("30 is direct battery positive, 31 direct negative, 50a a starter control", () => {
  expect(terminalNumber("30")?.meaning).toContain("battery positive");
  expect(terminalNumber("31")?.meaning).toContain("battery negative");
  expect(terminalNumber("50a")?.meaning).toContain("starter");
});
