import { describe, expect, test } from "vitest";
import { benchFor } from "../../core/edit/bench.ts";
import { wireAcross } from "../../core/edit/commands/wireAcross.ts";
import { connectorSides, pairsAcross } from "../../core/edit/connectorSides.ts";
import { deskFor, perform, undo } from "../../core/edit/history.ts";
import { after, got, VENTS } from "./given.ts";

const bench = benchFor(VENTS);
const drawn = (of: typeof bench) =>
  of.circuit.wires.slice(VENTS.wires.length).map(({ from, to, colour }) => [from, to, colour ?? ""].join(" "));

describe("wiring a connector across", () => {
  test("goes by the numbers of the places, in the colours as they were typed", () => {
    expect(drawn(after(bench, wireAcross(bench, "X3", "X5", "gy og - bk/wh")))).toEqual([
      "X3-1 X5-1 GY",
      "X3-2 X5-2 OG",
      "X3-4 X5-4 ",
      "X3-5 X5-5 BK/WH",
      "X3-6 X5-6 ",
    ]);
  });

  test("a half of a joint has the numbers of its places, and the shorter side says how many wires there are", () => {
    expect(drawn(after(bench, wireAcross(bench, "X30-a", "X3")))).toEqual(["X30-1a X3-1 ", "X30-2a X3-2 "]);
  });

  test("goes in order where a number of the shorter side is not on the other", () => {
    const [one, other] = connectorSides(VENTS).filter(({ id }) => id === "X3" || id === "X8");
    const points = other!.points.slice(1);
    expect(pairsAcross(VENTS, one!, { ...other!, points }).map(({ from, to }) => `${from} ${to}`)).toEqual([
      "X3-1 X8-2",
      "X3-2 X8-3",
      "X3-4 X8-4",
      "X3-5 X8-5",
    ]);
  });

  test("leaves out what is wired already, and is one step to undo", () => {
    const desk = got(perform(deskFor(bench), got(wireAcross(bench, "X30-a", "X31-a"))));
    expect(drawn(desk.bench)).toHaveLength(2);
    expect(drawn(got(undo(desk)).bench)).toEqual([]);
    const sides = new Map(connectorSides(VENTS).map((side) => [side.id, side]));
    expect(pairsAcross(desk.bench.circuit, sides.get("X30-a")!, sides.get("X31-a")!)).toEqual([]);
  });
});
