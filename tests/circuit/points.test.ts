import { describe, expect, test } from "vitest";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { controlAt, controlsOf, parsePoint, pointsOf, terminalsOf, wireSideOf } from "../../core/circuit/points.ts";
import { SMALL } from "./small.ts";

const PANEL: Circuit = {
  ...SMALL,
  parts: [
    ...SMALL.parts,
    {
      id: "S2",
      kind: "switch",
      controls: [
        {
          name: "left",
          positions: [
            { name: "rest", joins: [] },
            { name: "up", joins: [["1", "2"]] },
          ],
        },
        {
          name: "right",
          positions: [
            { name: "rest", joins: [["3", "2"]] },
            { name: "up", joins: [["3", "1"]] },
          ],
        },
      ],
    },
  ],
};

const read = (text: string) => {
  const point = parsePoint(SMALL, text);
  return point.ok ? `${point.value.kind} ${point.value.id}` : point.refusal.code;
};

describe("spellings of points", () => {
  test.each([
    ["S1.2", "terminal S1.2"],
    ["G1.+", "terminal G1.+"],
    ["G1.-", "terminal G1.-"],
    ["GP1.stud", "terminal GP1.stud"],
    ["X1-2", "cavity X1-2"],
    ["X1-6", "cavity X1-6"],
    ["X2-1a", "terminal X2-1a"],
    ["X2.1a", "terminal X2-1a"],
    [" S1.2 ", "terminal S1.2"],
    ["S1.9", "point-terminal"],
    ["S1-2", "point-connector"],
    ["S9.2", "point-part"],
    ["X9-2", "point-connector"],
    ["X1-9", "point-cavity"],
    ["X1.1", "point-part"],
    ["X2-1", "point-terminal"],
    ["S1", "point-spelling"],
    ["", "point-spelling"],
    ["S1.", "point-spelling"],
    ["constructor.name", "point-part"],
  ])("%s is %s", (text, expected) => {
    expect(read(text)).toBe(expected);
  });

  test("every point is read back from its own spelling", () => {
    const points = pointsOf(PANEL);
    expect(points.length).toBeGreaterThan(20);
    for (const point of points) expect(parsePoint(PANEL, point.id)).toEqual({ ok: true, value: point });
  });

  test("a cavity tells the terminal it carries, an empty one none", () => {
    const carries = (text: string) => {
      const point = parsePoint(SMALL, text);
      return point.ok && point.value.kind === "cavity" ? point.value.carries : "no cavity";
    };
    expect(carries("X1-2")).toBe("S1.2");
    expect(carries("X1-4")).toBeUndefined();
  });
});

test("the wire side of a carried terminal is its cavity, of any other point the point itself", () => {
  expect(wireSideOf(SMALL, "S1.3")).toBe("X1-3");
  expect(wireSideOf(SMALL, "X1-3")).toBe("X1-3");
  expect(wireSideOf(SMALL, "M1.1")).toBe("M1.1");
  expect(wireSideOf(SMALL, "X2-1a")).toBe("X2-1a");
});

test("terminals are the part's own, else its kind's", () => {
  expect(terminalsOf(SMALL, SMALL.parts[2]!)).toEqual(["1", "2", "3"]);
  expect(terminalsOf(SMALL, SMALL.parts[3]!)).toEqual(["1a", "1b", "2a", "2b"]);
  expect(terminalsOf(SMALL, { id: "Q1", kind: "no such kind" })).toEqual([]);
});

describe("controls", () => {
  test("one control goes by its part, several by part and name", () => {
    expect(controlsOf(PANEL).map(({ key, rest }) => `${key} rests ${rest}`)).toEqual([
      "S1 rests off",
      "S2.left rests rest",
      "S2.right rests rest",
    ]);
  });

  test("a key finds its control, and no other word does", () => {
    expect(controlAt(PANEL, "S2.right")?.control.name).toBe("right");
    expect(controlAt(PANEL, "S2")).toBeUndefined();
    expect(controlAt(PANEL, "toString")).toBeUndefined();
  });
});
