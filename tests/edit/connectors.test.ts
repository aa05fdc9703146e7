import { describe, expect, test } from "vitest";
import { type Bench, benchFor } from "../../core/edit/bench.ts";
import { fillCavity } from "../../core/edit/commands/fillCavity.ts";
import { fillPins } from "../../core/edit/commands/fillPins.ts";
import { plantFault } from "../../core/edit/commands/plantFault.ts";
import { setRows } from "../../core/edit/commands/setRows.ts";
import { pinList } from "../../core/edit/pinList.ts";
import { after, afterAll, codeOf, SMALL, VENTS } from "./given.ts";

const small = benchFor(SMALL);
const wire = ({ circuit }: Bench, id: string) => circuit.wires.find((each) => each.id === id)!;
const connector = ({ circuit }: Bench, id: string) => circuit.connectors.find((each) => each.id === id)!;
/** Pin, colour and words of each row, or the code of what is wrong with it. */
const read = (text: string, codes: Parameters<typeof pinList>[1] = "iec60757") =>
  pinList(text, codes).map(({ pin, colour, words, wrong }) => wrong?.code ?? [pin, colour, words]);

describe("a pasted pin list", () => {
  test("has one pin a line, or pins between slashes or semicolons", () => {
    const rows = [
      ["1", "GY", "ground"],
      ["6", "OG/BK", "feed from fuse 4"],
      ["B2", null, "not used"],
    ];
    expect(read("1 GY ground\n\n 6  og/bk feed from fuse 4\r\nB2 not used")).toEqual(rows);
    expect(read("1 GY ground / 6 OG-BK feed from fuse 4 / B2 not used")).toEqual(rows);
    expect(read("Pin 1: GY - ground; pin 6) OG/BK feed from fuse 4; B2. not used")).toEqual([
      ["1", "GY", "ground"],
      ...rows.slice(1),
    ]);
    expect(read("1\tBNBK\tfeed\n2")).toEqual([
      ["1", "BN/BK", "feed"],
      ["2", null, ""],
    ]);
    expect(read("")).toEqual([]);
  });

  test("is read in the code set of the circuit, and words are no colours", () => {
    expect(read("1 DK GRN/WHT low beam\n2 RED feed", "north-american")).toEqual([
      ["1", "DK GRN/WHT", "low beam"],
      ["2", "RED", "feed"],
    ]);
    expect(read("1 low beam\n2 LgB horn\n3 W/B ground\n4 LOW beam", "japanese")).toEqual([
      ["1", null, "low beam"],
      ["2", "Lg/B", "horn"],
      ["3", "W/B", "ground"],
      ["4", null, "LOW beam"],
    ]);
    expect(read("1 XX/Y feed\n2 ground", "free")).toEqual([
      ["1", "XX/Y", "feed"],
      ["2", null, "ground"],
    ]);
  });

  test("says what is wrong with a row, and reads the others", () => {
    expect(read("1 GY ground\nGY ground\n1 RD again\n3 QX/BK feed\na,b feed\n4 GY/GY x")).toEqual([
      ["1", "GY", "ground"],
      "pin-missing",
      "pin-twice",
      "colour-unknown",
      "pin-spelling",
      "colour-stripe-is-base",
    ]);
  });

  test("colours the wires in the places, adds places that are missing, and passes wrong rows over", () => {
    const bench = after(small, fillPins(small, "X1", "1 VT feed\n2 QX/BK\n9 RD spare\n10 spare"));
    expect(wire(bench, "W2").colour).toBe("VT");
    expect(wire(bench, "W3").colour).toBe("GN");
    expect(connector(bench, "X1").rows).toEqual([
      ["1", "2", "3"],
      ["4", "", "6"],
      ["9", "10"],
    ]);
    const joint = after(small, fillPins(small, "X2", "2 WH"));
    expect(["W5", "W6", "W9"].map((id) => wire(joint, id).colour)).toEqual(["WH", "WH", "WH"]);
  });
});

describe("a terminal in a cavity", () => {
  test("takes its wires along, and leaves them on it when it comes out", () => {
    const out = after(small, fillCavity(small, "X1", "1", null));
    expect(wire(out, "W2").to).toBe("S1.1");
    expect(connector(out, "X1").cavities).toEqual({ "2": "S1.2", "3": "S1.3" });
    const elsewhere = after(out, fillCavity(out, "X1", "6", "S1.1"));
    expect(wire(elsewhere, "W2").to).toBe("X1-6");
    expect(elsewhere.circuit.placement.wires.W2).toEqual(SMALL.placement.wires.W2);
  });

  test("changed for another leaves the wire in the cavity and drops its bends", () => {
    const bench = after(small, fillCavity(small, "X1", "1", "GP2.stud"));
    expect([wire(bench, "W2").to, wire(bench, "W7").to]).toEqual(["X1-1", "X1-1"]);
    expect(bench.circuit.placement.wires.W2).toBeUndefined();
    expect(codeOf(fillCavity(small, "X1", "1", "F1.2"))).toBe("wire-to-itself");
  });
});

describe("the face of a connector", () => {
  test("with another name in a place renames it, with wires, reach, faults and what it carries", () => {
    const bench = afterAll(
      SMALL,
      (now) => plantFault(now, "X1-1:corroded=20"),
      (now) =>
        setRows(now, "X1", [
          ["A", "2", "3"],
          ["4", "", "6"],
        ]),
    );
    expect(wire(bench, "W2").to).toBe("X1-A");
    expect(Object.keys(bench.circuit.reach)).toEqual(["S1", "X1-A", "X2-1", "M1.1"]);
    expect(bench.faults).toEqual([{ target: "X1-A", mode: "corroded", value: 20 }]);
    expect(connector(bench, "X1").cavities).toEqual({ A: "S1.1", "2": "S1.2", "3": "S1.3" });
  });

  test("can have two names that change places without a wire moving", () => {
    const bench = after(
      small,
      setRows(small, "X1", [
        ["2", "1", "3"],
        ["4", "", "6"],
      ]),
    );
    expect(bench.circuit.wires).toEqual(SMALL.wires);
    expect(connector(bench, "X1").cavities).toEqual(connector(small, "X1").cavities);
  });

  test("with a place fewer leaves its wire on the terminal and forgets what was said of the place", () => {
    const bench = after(small, setRows(small, "X1", [["", "2", "3"]]));
    expect(wire(bench, "W2").to).toBe("S1.1");
    expect(Object.keys(bench.circuit.reach)).toEqual(["S1", "X2-1", "M1.1"]);
    expect(connector(bench, "X1").cavities).toEqual({ "2": "S1.2", "3": "S1.3" });
  });

  test("keeps a place on which a wire would be left hanging", () => {
    const circuit = { ...VENTS, wires: [...VENTS.wires, { id: "W90", from: "X5-3", to: "F2.1" }] };
    const refused = setRows(benchFor(circuit), "X5", [
      ["1", "2"],
      ["4", "5", "6"],
    ]);
    expect(codeOf(refused)).toBe("cavity-wired");
  });
});
