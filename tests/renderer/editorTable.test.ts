import { describe, expect, test } from "vitest";
import { joinToggled, type Positions } from "../../core/edit/positionTable.ts";
import { barsOf, depthOf } from "../../renderer/editor/bars.ts";
import { broughtTo } from "../../renderer/editor/feeding.ts";
import { groupsOf, isJoined, joinedOrParted } from "../../renderer/editor/joining.ts";
import { idleTerminals, keptOrder, leadOrder } from "../../renderer/editor/leadOrder.ts";
import { readsAs } from "../../renderer/editor/readsAs.ts";
import { chosenWords, circleWords, freshNumber, freshPosition, springWords } from "../../renderer/editor/tableWords.ts";
import { VENTS } from "../edit/given.ts";

const S6 = VENTS.parts.find(({ id }) => id === "S6")!;
const POSITIONS = S6.positions!;
const TERMINALS = S6.terminals!;
const one = (...joins: readonly (readonly [string, string])[]): Positions => [{ name: "rest", joins }];
const joinsAfter = (positions: Positions, a: string, b: string) => joinedOrParted(positions, 0, a, b)[0]!.joins;

describe("two circles of a row", () => {
  test("join what is apart", () => {
    expect(joinsAfter(one(), "4", "6")).toEqual([["4", "6"]]);
  });

  test("part what is joined, whichever was chosen first", () => {
    expect(joinsAfter(one(["4", "6"]), "4", "6")).toEqual([]);
    expect(joinsAfter(one(["4", "6"]), "6", "4")).toEqual([]);
  });

  test("the second leaves a chain that only a third holds together, and the third keeps the first", () => {
    expect(joinsAfter(one(["1", "2"], ["2", "3"]), "1", "3")).toEqual([["1", "2"]]);
  });

  test("the second leaves a ring of three, the other two stay joined", () => {
    const left = joinsAfter(one(["1", "2"], ["2", "3"], ["1", "3"]), "1", "3");
    expect(isJoined(left, "1", "2")).toBe(true);
    expect(isJoined(left, "1", "3")).toBe(false);
    expect(isJoined(left, "2", "3")).toBe(false);
  });

  test("what hangs on the one that leaves by itself goes with it", () => {
    expect(joinsAfter(one(["1", "2"], ["2", "3"]), "1", "2")).toEqual([["2", "3"]]);
  });

  test("other positions stay as they are, and a pair keeps its spelling", () => {
    const [rest, open, close] = joinedOrParted(POSITIONS, 0, "6", "4");
    expect(rest!.joins).toContainEqual(["4", "6"]);
    expect([open, close]).toEqual(POSITIONS.slice(1));
  });

  test("any two of any group are apart after parting and together after joining", () => {
    const all = ["1", "2", "3", "4"];
    const pairs = all.flatMap((a, index) => all.slice(index + 1).map((b) => [a, b] as const));
    for (let bits = 0; bits < 2 ** pairs.length; bits++) {
      const joins = pairs.filter((_, index) => bits & (1 << index));
      for (const [a, b] of pairs) expect(isJoined(joinsAfter(one(...joins), a, b), a, b)).toBe(!isJoined(joins, a, b));
    }
  });
});

describe("groups and bars", () => {
  test("groups follow the order of the columns, lone terminals are in none", () => {
    expect(
      groupsOf(
        [
          ["5", "2"],
          ["4", "1"],
        ],
        ["1", "4", "6", "5", "2"],
      ),
    ).toEqual([
      ["1", "4"],
      ["5", "2"],
    ]);
  });

  test("bars between neighbours run straight, those past others pass below, each on its own level", () => {
    expect(barsOf([["1", "2"]], ["1", "2", "3"])).toEqual([{ from: 0, to: 1, level: 0 }]);
    const crossed = barsOf(
      [
        ["1", "3"],
        ["2", "4"],
      ],
      ["1", "2", "3", "4"],
    );
    expect(crossed.map(({ level }) => level)).toEqual([1, 2]);
    expect(depthOf(crossed)).toBe(2);
    expect(depthOf([])).toBe(0);
  });
});

describe("columns", () => {
  test("joined terminals are neighbours in every position of a vent switch", () => {
    const order = leadOrder(POSITIONS, TERMINALS);
    expect([...order].sort()).toEqual([...TERMINALS].sort());
    for (const { joins } of POSITIONS)
      for (const [a, b] of joins) expect(Math.abs(order.indexOf(a) - order.indexOf(b))).toBe(1);
  });

  test("what nothing joins comes last", () => {
    expect(leadOrder(one(["c", "b"]), ["a", "b", "c"])).toEqual(["b", "c", "a"]);
  });

  test("a ring of joins still gives every terminal once", () => {
    const ring = one(["1", "2"], ["2", "3"], ["3", "1"]);
    expect([...leadOrder(ring, ["1", "2", "3"])].sort()).toEqual(["1", "2", "3"]);
  });

  test("no column jumps: a renamed terminal keeps its place, a new one comes last, a lost one goes", () => {
    const order = ["1", "4", "6"];
    expect(keptOrder(order, ["6", "4", "1"])).toBe(order);
    expect(keptOrder(order, ["1", "6", "30"])).toEqual(["1", "30", "6"]);
    expect(keptOrder(order, ["1", "4", "6", "7"])).toEqual(["1", "4", "6", "7"]);
    expect(keptOrder(order, ["1", "6"])).toEqual(["1", "6"]);
  });

  test("of a panel's control the terminals of other controls idle; of one that joins nothing none does", () => {
    expect(idleTerminals(one(["P", "P0"]), ["P", "P0", "A1"])).toEqual(["A1"]);
    expect(idleTerminals(one(), ["P", "P0"])).toEqual([]);
  });
});

describe("reads as", () => {
  const brought = broughtTo(VENTS, S6);
  const order = leadOrder(POSITIONS, TERMINALS);
  const said = (joins: Positions[number]["joins"]) => readsAs(joins, order, brought);

  test("the circuit brings a feed to 6 and the way home to 1 and 2; 4 and 5 lead to the motor", () => {
    expect([...brought].sort()).toEqual([
      ["1", "home"],
      ["2", "home"],
      ["6", "feed"],
    ]);
  });

  test("every position of the vent switch in words", () => {
    expect(POSITIONS.map(({ joins }) => said(joins))).toEqual([
      "4 and 5 both go home, by 1 and 2",
      "6 feeds 4, 5 goes home by 2",
      "6 feeds 5, 4 goes home by 1",
    ]);
  });

  test("nothing joined, a short and what leads nowhere are told too", () => {
    expect(said([])).toBe("nothing joined");
    expect(said([["6", "1"]])).toMatch(/feed to ground/);
    expect(
      said([
        ["6", "4"],
        ["4", "1"],
      ]),
    ).toMatch(/straight to ground/);
    expect(said([["4", "5"]])).toBe("4 and 5 joined");
  });

  test("it follows the table as it is edited", () => {
    const parted = joinedOrParted(POSITIONS, 0, "4", "1");
    expect(said(joinToggled(parted, 0, "4", "6")[0]!.joins)).toBe("6 feeds 4, 5 goes home by 2");
  });
});

describe("words of the table", () => {
  test("a circle says where it is and with what it is joined", () => {
    expect(circleWords("6", "open", ["4"])).toBe("6 in Open, joined with 4");
    expect(circleWords("6", "open", [])).toBe("6 in Open, alone");
    expect(chosenWords("6", ["4"])).toContain("Choose 4 to part them");
    expect(chosenWords("6", [])).toContain("join");
  });

  test("a position that springs to another than rest says which", () => {
    expect(springWords({ name: "start", joins: [], springsBackTo: "on" }, "off")).toBe("springs to on");
    expect(springWords({ name: "open", joins: [], springsBackTo: "rest" }, "rest")).toBe("springs to rest");
    expect(springWords({ name: "on", joins: [] }, "off")).toBe("stays");
  });

  test("what is new has a name that nothing else has", () => {
    expect(freshPosition([{ name: "off", joins: [] }])).toBe("on");
    expect(freshPosition([...POSITIONS, { name: "position-4", joins: [] }])).toBe("position-5");
    expect(freshNumber(["1", "2", "4"])).toBe("3");
  });
});
