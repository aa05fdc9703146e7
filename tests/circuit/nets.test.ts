import { describe, expect, test } from "vitest";
import { netOf, netsApart, netsOf, sharedWith } from "../../core/circuit/nets.ts";
import { pointsOf } from "../../core/circuit/points.ts";
import { SMALL } from "./small.ts";

const netAt = (point: string, apart: readonly string[] = []) =>
  netsApart(SMALL, apart).find(({ points }) => points.includes(point))?.points;

describe("nets", () => {
  test("every point and every wire is in exactly one net", () => {
    const nets = netsOf(SMALL);
    expect(nets.flatMap(({ points }) => points).sort()).toEqual(
      pointsOf(SMALL)
        .map(({ id }) => id)
        .sort(),
    );
    expect(nets.flatMap(({ wires }) => wires).sort()).toEqual(SMALL.wires.map(({ id }) => id).sort());
  });

  test("a net goes by its first point", () => {
    expect(netOf(SMALL, "X1-1")?.id).toBe("F1.2");
    for (const { id, points } of netsOf(SMALL)) expect(points[0]).toBe(id);
  });

  test("a plug joins its cavity to the terminal, and a joint its two sides", () => {
    expect(netAt("S1.2")).toEqual(["S1.2", "X2-1a", "X2-1b", "M1.1", "X1-2"]);
  });

  test("pulled apart they join nothing", () => {
    expect(netAt("S1.2", ["X1"])).toEqual(["S1.2"]);
    expect(netAt("M1.1", ["X2"])).toEqual(["X2-1b", "M1.1"]);
    expect(netAt("X1-2", ["X1", "X2"])).toEqual(["X2-1a", "X1-2"]);
  });

  test("page links of one name are one net", () => {
    expect(netAt("M1.2")).toEqual(["S1.3", "X2-2a", "X2-2b", "M1.2", "L1.1", "L2.1", "GP2.stud", "X1-3"]);
  });

  test("two ground points of one body are two nets", () => {
    expect(netOf(SMALL, "GP1.stud")).not.toBe(netOf(SMALL, "GP2.stud"));
  });

  test("a splice is one net, a switch is not", () => {
    const spliced = {
      ...SMALL,
      parts: [...SMALL.parts, { id: "SP1", kind: "splice", settings: { legs: 3 } }],
      wires: [...SMALL.wires, { id: "W10", from: "SP1.1", to: "F1.2" }, { id: "W11", from: "SP1.3", to: "F1.1" }],
    };
    expect(netOf(spliced, "F1.1")).toBe(netOf(spliced, "SP1.2"));
    expect(netOf(spliced, "F1.1")).toBe(netOf(spliced, "F1.2"));
    expect(netOf(SMALL, "S1.1")).not.toBe(netOf(SMALL, "S1.2"));
  });

  test("wires of the same net are told, without the wire itself", () => {
    expect(sharedWith(SMALL, "W6")).toEqual(["W5", "W7", "W9"]);
    expect(sharedWith(SMALL, "W1")).toEqual([]);
    expect(sharedWith(SMALL, "W99")).toEqual([]);
  });
});
