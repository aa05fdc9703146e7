import { expect, test } from "vitest";
import { parseReading } from "../../core/diagnose/readingText.ts";
import { readHere } from "../../renderer/canvas/readingFlags.ts";
import { sample } from "../samples/onTheBench.ts";

const circuit = sample("1-roof-vents");

function taken(text: string) {
  const reading = parseReading(circuit, text);
  if (!reading.ok) throw new Error(reading.refusal.code);
  return reading.value;
}

test("only what was read in the condition that is shown has a flag, the last at each point", () => {
  const readings = [
    taken("X5-6 @ S1=on : 11.9V"),
    taken("X5-6 @ S1=on : 12.1V"),
    taken("X5-4 @ S1=on,S5=open : 0.2V"),
    taken("X5-1 @ S1=on : 7V?"),
    { ...taken("X5-5 @ S1=on : 3V"), standing: "struck" as const },
    taken("F4 @ S1=on : blown"),
  ];
  expect(readHere({ circuit, condition: { set: { S1: "on" } }, readings })).toEqual([
    { point: "X5-6", words: "12.1\u00a0V" },
    { point: "X5-1", words: "7.0\u00a0V?" },
  ]);
  expect(readHere({ circuit, condition: { set: { S1: "on", S5: "open" } }, readings })).toEqual([
    { point: "X5-4", words: "0.2\u00a0V" },
  ]);
  expect(readHere({ circuit, condition: {}, readings })).toEqual([]);
});
