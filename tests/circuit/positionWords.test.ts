import { expect, test } from "vitest";
import { ownPosition, printedPosition } from "../../core/circuit/positionWords.ts";
import { sheetOf } from "../../core/circuit/sheet.ts";
import { liveOf } from "../../core/live/live.ts";
import { sample } from "../samples/onTheBench.ts";
import { textsIn } from "./sheetMarks.ts";

test.each([
  ["open", "open", "OPEN"],
  ["on", "on", "ON"],
  ["rest", "rest", "rest"],
  ["pressed", "pressed", "pressed"],
  ["speed-1", "speed 1", "speed 1"],
])("the position %s is %s in words and %s on paper", (position, own, printed) => {
  expect(ownPosition(position)).toBe(own);
  expect(printedPosition(position)).toBe(printed);
});

test("a held switch is lettered beside its symbol on paper, and in plain words on a screen", () => {
  const circuit = sample("1-roof-vents");
  const live = liveOf(circuit, { set: { S1: "on", S5: "open" } });
  const beside = (zoom?: number) => {
    const sheet = sheetOf({ circuit, page: "p2", live, framed: false, ...(zoom !== undefined && { zoom }) });
    return textsIn(sheet.ok ? sheet.value.marks : []).flatMap(({ of, text }) => (of === "S5" ? [text] : []));
  };
  expect(beside()).toContain("held OPEN");
  expect(beside(1)).toContain("held open");
});
