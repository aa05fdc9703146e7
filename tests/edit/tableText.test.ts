import { describe, expect, test } from "vitest";
import { benchFor } from "../../core/edit/bench.ts";
import { writeTable } from "../../core/edit/commands/writeTable.ts";
import { tableText, tableWritten } from "../../core/edit/tableText.ts";
import { kindOf } from "../../core/parts/catalogue.ts";
import { SAMPLE_NAMES, sample } from "../samples/onTheBench.ts";
import { after, VENTS } from "./given.ts";

/** Codes of what is wrong, line by line; null for a good one. */
const codes = (text: string): readonly (string | null)[] => tableText(text).map(({ wrong }) => wrong?.code ?? null);

describe("a table written as text", () => {
  test("is read: rest first, held positions spring back to it, chains join in a row", () => {
    expect(tableText("rest 4-1 5-2; open held 4-6\u20135")).toEqual([
      {
        text: "rest 4-1 5-2; open held 4-6\u20135",
        control: {
          name: "",
          positions: [
            {
              name: "rest",
              joins: [
                ["4", "1"],
                ["5", "2"],
              ],
            },
            {
              name: "open",
              springsBackTo: "rest",
              joins: [
                ["4", "6"],
                ["6", "5"],
              ],
            },
          ],
        },
        wrong: null,
      },
    ]);
  });

  test("says what a position springs back to where that is not rest", () => {
    const [key] = tableText("off; on 30-15; start held to on 30-15 30-50; held tight held");
    expect(key?.control?.positions.map(({ name, springsBackTo }) => [name, springsBackTo])).toEqual([
      ["off", undefined],
      ["on", undefined],
      ["start", "on"],
      ["held tight", "off"],
    ]);
  });

  test("names controls by their words, and positions by more than one", () => {
    const [lock, left] = tableText("Lock-out: off; fully on P-P1\n\n Front left : rest; half-open held A1-30");
    expect(lock?.control).toMatchObject({ name: "lock-out", label: "Lock-out" });
    expect(lock?.control?.positions.map(({ name }) => name)).toEqual(["off", "fully on"]);
    expect(left?.control?.positions[1]).toEqual({ name: "half-open", springsBackTo: "rest", joins: [["A1", "30"]] });
  });

  test("says of each line what is wrong with it", () => {
    expect(codes("Key: off; on 30-15\noff; on 30-15\nLight:\nHorn: out; in 1-2 held")).toEqual([
      null,
      "table-label",
      "table-name",
      "table-join",
    ]);
  });

  const switches = SAMPLE_NAMES.flatMap((name) =>
    sample(name)
      .parts.filter(({ positions, controls }) => positions !== undefined || controls !== undefined)
      .map((part) => ({ name: `${part.id} of ${name}`, part })),
  );
  test.each(switches)("gives back what it was written from: $name", ({ part }) => {
    const read = tableText(tableWritten(part)).map(({ control }) => control);
    const positions = (list: readonly ({ positions: unknown } | null)[]) => list.map((each) => each?.positions);
    expect(read).not.toContain(null);
    expect(positions(read)).toEqual(positions(kindOf(part.kind)!.controls(part)));
  });

  test("keeps a terminal that a wire or a plug holds, and drops one that nothing does", () => {
    const bench = after(benchFor(VENTS), writeTable(benchFor(VENTS), "S5", "rest 4-1; open held 4-9"));
    const part = bench.circuit.parts.find(({ id }) => id === "S5");
    expect(part?.terminals).toEqual(["1", "2", "4", "5", "6", "9"]);
    expect(bench.circuit.wires).toEqual(VENTS.wires);
    const next = after(bench, writeTable(bench, "S5", "rest 4-1; open held 4-6"));
    expect(next.circuit.parts.find(({ id }) => id === "S5")?.terminals).toEqual(["1", "2", "4", "5", "6"]);
  });

  test("leaves the names by which conditions know a control that is called as before", () => {
    const text = tableWritten(VENTS.parts.find(({ id }) => id === "S2")!).replace("P-P1", "P-P1-30");
    const { circuit } = after(benchFor(VENTS), writeTable(benchFor(VENTS), "S2", text));
    expect(circuit.checks).toEqual(VENTS.checks);
    expect(circuit.scenes).toEqual(VENTS.scenes);
  });
});
