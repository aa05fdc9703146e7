import fc from "fast-check";
import { expect, test } from "vitest";
import { textWidth, wrapText } from "../../core/drawing/measure.ts";

const wrap = (text: string, longest: string): string[] => wrapText(text, 9, 400, textWidth(longest, 9, 400));

test("a text that fits is one line, an empty one is one empty line", () => {
  expect(wrap("Key ON, S2 rest", "Key ON, S2 rest")).toEqual(["Key ON, S2 rest"]);
  expect(wrap("", "x")).toEqual([""]);
});

test("lines break at spaces and at given line ends", () => {
  expect(wrap("hold the switch open", "hold the switch")).toEqual(["hold the switch", "open"]);
  expect(wrap("one\ntwo", "one two three")).toEqual(["one", "two"]);
});

test("a name of a point is never broken", () => {
  expect(wrap("lamp: X5-6 to X32-1a", "lamp: X5-")).toEqual(["lamp:", "X5-6 to", "X32-1a"]);
  expect(wrap("GP2.stud", "GP2")).toEqual(["GP2.stud"]);
});

test.each(["12.3 V", "0.4 ohm", "25 A", "2.5 mm²", "20 °C", "3 s", "10 min,", "1.2 kΩ", "4.5\u00a0V"])(
  "a number stays with its unit: %s",
  (reading) => {
    expect(wrap(`reads about ${reading}`, "reads about")).toEqual(["reads about", reading]);
  },
);

test("a range stays together, and so does a bare sign with its battery", () => {
  expect(wrap("expect 12.0 – 12.3 V", "expect 12.0 –")).toEqual(["expect", "12.0 – 12.3 V"]);
  expect(wrap("expect 12.0 to 12.3 V", "expect 12.0 to")).toEqual(["expect", "12.0 to 12.3 V"]);
  expect(wrap("black on battery −", "black on battery")).toEqual(["black on", "battery −"]);
});

test("a plain word wider than the line is broken, after its hyphen where it has one", () => {
  expect(wrap("lock-out", "lock-o")).toEqual(["lock-", "out"]);
  const cut = wrap("Kennzeichenleuchte", "Kennzeichen");
  expect(cut.join("")).toBe("Kennzeichenleuchte");
  expect(cut.length).toBeGreaterThan(1);
});

test("no line of plain words is wider than asked, and no word is lost", () => {
  const word = fc.stringMatching(/^[a-zäöü]{1,14}$/);
  fc.assert(
    fc.property(fc.array(word, { minLength: 1, maxLength: 30 }), fc.integer({ min: 4, max: 30 }), (words, width) => {
      const lines = wrapText(words.join(" "), 9, 600, width);
      for (const line of lines) expect(textWidth(line, 9, 600)).toBeLessThanOrEqual(width + 1e-6);
      expect(lines.join("").replaceAll(" ", "")).toBe(words.join(""));
    }),
    { seed: 11 },
  );
});
