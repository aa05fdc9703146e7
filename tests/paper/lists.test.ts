import { describe, expect, test } from "vitest";
import { netOf } from "../../core/circuit/nets.ts";
import { positionTable } from "../../core/diagnose/tableReading.ts";
import { csvOf } from "../../core/paper/csv.ts";
import { netListText, positionTableCsv, wireListCsv } from "../../core/paper/lists.ts";
import { sample } from "../samples/onTheBench.ts";

const VENTS = sample("1-roof-vents");

describe("CSV", () => {
  test("quotes what would break a row, and doubles quotes", () => {
    expect(csvOf([["a,b", 'say "on"', "two\nlines", "; "]])).toBe('"a,b","say ""on""",two lines,"; "\r\n');
  });

  test("lets no words become a formula, and leaves numbers as they are", () => {
    const row = ["=1+1", "+12 V", "-0.3", "@SUM(A1)", "\tx", -0.3, null, "G1.-"];
    expect(csvOf([row])).toBe("'=1+1,'+12 V,'-0.3,'@SUM(A1),\"'\tx\",-0.3,,G1.-\r\n");
  });

  test("is marked as UTF-8 only where there is more than ASCII", () => {
    expect(csvOf([["x;=1+1"]])).toBe('"\'x;=1+1"\r\n');
    expect(csvOf([["plain"]])).toBe("plain\r\n");
    expect(csvOf([["Lüfter"]])).toBe("\uFEFFLüfter\r\n");
  });
});

describe("lists of a circuit", () => {
  test("name every wire once, with its ends as the drawing has them", () => {
    const [head, ...rows] = wireListCsv(VENTS).trimEnd().split("\r\n");
    expect(head).toBe("Wire,From,To,Colour,mm2,Metres,Ohms,Page");
    expect(rows.map((row) => row.split(",")[0])).toEqual(VENTS.wires.map(({ id }) => id));
    const [wire] = VENTS.wires;
    expect(rows[0]).toBe(`${wire!.id},${wire!.from},${wire!.to},${wire!.colour},${wire!.mm2},${wire!.metres},,Feeds`);
  });

  test("give every pin of a connector in every column of its table", () => {
    const horn = sample("4-horn");
    const table = positionTable(horn, horn.connectors[0]!.id, []);
    const [, ...rows] = positionTableCsv([table]).trimEnd().split("\r\n");
    expect(rows.length).toBe(table.columns.length * table.rows.length);
    for (const { pin, point } of table.rows)
      expect(rows.filter((row) => row.startsWith(`${table.connector},${pin},${point},`))).toHaveLength(
        table.columns.length,
      );
    expect(rows.some((row) => row.includes(",off,") && row.includes(",floating,,"))).toBe(true);
  });

  test("put the points of a net in one line, and every point in some line", () => {
    const lines = netListText(VENTS).split("\n");
    const net = netOf(VENTS, "S5.6")!;
    const line = lines.find((each) => each.split(" ").includes("S5.6"))!;
    expect(line).toBe(`${net.points.join(" ")}  (${net.wires.join(" ")})`);
  });
});
