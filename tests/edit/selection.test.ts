import { describe, expect, test } from "vitest";
import { problemsOf } from "../../core/circuit/check.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { terminalSpots } from "../../core/circuit/placeSymbol.ts";
import { type Bench, benchFor } from "../../core/edit/bench.ts";
import { alignThings, type Line } from "../../core/edit/commands/alignThings.ts";
import { distributeThings } from "../../core/edit/commands/distributeThings.ts";
import { duplicateThings } from "../../core/edit/commands/duplicateThings.ts";
import { flipThings } from "../../core/edit/commands/flipThings.ts";
import { moveThings } from "../../core/edit/commands/moveThings.ts";
import { paste } from "../../core/edit/commands/paste.ts";
import { turnThings } from "../../core/edit/commands/turnThings.ts";
import { copied } from "../../core/edit/fragment.ts";
import { shapeAt } from "../../core/edit/standOnPage.ts";
import { after, codeOf, got, SMALL, VENTS } from "./given.ts";

const place = (bench: Bench, part: string) => bench.circuit.placement.parts[part];
const bends = (bench: Bench, wire: string) => bench.circuit.placement.wires[wire];
const outline = ({ circuit }: Bench, id: string) =>
  shapeAt(circuit, circuit.parts.find((part) => part.id === id)!, circuit.placement.parts[id]!).outline;

/** The small circuit with these bends. */
function withBends(wires: Circuit["placement"]["wires"]): Bench {
  return benchFor({ ...SMALL, placement: { ...SMALL.placement, wires } });
}

describe("parts that move together", () => {
  const spots = terminalSpots(SMALL, "p1");
  const [battery, fuse] = [spots.get("G1.+")!, spots.get("F1.1")!];
  const bench = withBends({
    W1: [
      [battery.x + 9, 50],
      [battery.x + 9, 12],
    ],
    W2: [[spots.get("F1.2")!.x, 33]],
  });

  test("take the wires between them along whole, and the legs of the others", () => {
    const moved = after(bench, moveThings(bench, ["G1", "F1"], 3, 2));
    expect(bends(moved, "W1")).toEqual([
      [battery.x + 12, 52],
      [battery.x + 12, 14],
    ]);
    expect(bends(moved, "W2")).toEqual([[spots.get("F1.2")!.x + 3, 33]]);
    expect(fuse.part).toBe("F1");
  });

  test("there and back stand as they stood", () => {
    const there = after(bench, moveThings(bench, ["G1", "F1"], 3, 2));
    expect(after(there, moveThings(there, ["F1", "G1"], -3, -2)).circuit.placement).toEqual(bench.circuit.placement);
  });
});

describe("parts that turn or flip together", () => {
  const ids = ["S1", "X2", "M1"];
  const bench = withBends({
    W3: [
      [30, 45],
      [50, 45],
    ],
    W2: [[30, 30]],
  });
  const start = after(bench, moveThings(bench, ids, 10, 10));

  test("come back after four quarters, or after one and one back", () => {
    let turned = start;
    for (let quarter = 0; quarter < 4; quarter++) turned = after(turned, turnThings(turned, ids, "clockwise"));
    expect(turned.circuit.placement.parts).toEqual(start.circuit.placement.parts);
    expect(bends(turned, "W3")).toEqual(bends(start, "W3"));
    const there = after(start, turnThings(start, ids, "clockwise"));
    expect(there.circuit.placement.parts).not.toEqual(start.circuit.placement.parts);
    const back = after(there, turnThings(there, ids, "back"));
    expect(back.circuit.placement.parts).toEqual(start.circuit.placement.parts);
  });

  test.each([
    ["turned", (from: Bench) => turnThings(from, ids, "clockwise")],
    ["turned back", (from: Bench) => turnThings(from, ids, "back")],
    ["flipped", (from: Bench) => flipThings(from, ids)],
  ] as const)("%s, the wire between them keeps its shape, and one to another part is laid anew", (_, make) => {
    const next = after(start, make(start));
    expect(bends(next, "W2")).toBeUndefined();
    // All distances along the wire, its ends included, are as before: terminals and bends went the same way.
    const lengths = (of: Bench) => {
      const at = terminalSpots(of.circuit, "p1");
      const [one, other] = [at.get("X1-2")!, at.get("X2-1a")!];
      const path = [[one.x, one.y] as const, ...bends(of, "W3")!, [other.x, other.y] as const];
      return path.flatMap(([x, y], index) => path.slice(index + 1).map(([u, v]) => Math.hypot(x - u, y - v)));
    };
    expect(lengths(next)).toEqual(lengths(start));
  });

  test("flipped twice, all is as it was; the right one stands left in between", () => {
    const flipped = after(start, flipThings(start, ids));
    expect(place(flipped, "S1")!.x).toBeGreaterThan(place(flipped, "M1")!.x);
    expect(place(start, "S1")!.x).toBeLessThan(place(start, "M1")!.x);
    expect(after(flipped, flipThings(flipped, ids)).circuit.placement.parts).toEqual(start.circuit.placement.parts);
  });
});

describe("parts in line", () => {
  const bench = benchFor(SMALL);
  const ids = ["F1", "S1", "M1", "GP1"];

  test.each([
    ["left", (one: ReturnType<typeof outline>) => one.left],
    ["right", (one: ReturnType<typeof outline>) => one.right],
    ["top", (one: ReturnType<typeof outline>) => one.top],
    ["bottom", (one: ReturnType<typeof outline>) => one.bottom],
    ["middle-across", (one: ReturnType<typeof outline>) => Math.floor((one.left + one.right) / 2)],
    ["middle-down", (one: ReturnType<typeof outline>) => Math.floor((one.top + one.bottom) / 2)],
  ] as const)("at the %s have it in common", (line: Line, edge) => {
    const aligned = after(bench, alignThings(bench, ids, line));
    const edges = ids.map((id) => edge(outline(aligned, id)));
    expect(Math.max(...edges) - Math.min(...edges)).toBeLessThanOrEqual(line.startsWith("middle") ? 1 : 0);
    expect(codeOf(alignThings(aligned, ids, line))).toBe("already-so");
  });

  test("spread evenly have equal gaps to a grid unit, and the outermost stay", () => {
    const row = ["F1", "S1", "M1"];
    const spread = after(bench, distributeThings(bench, row, "across"));
    expect([place(spread, "F1"), place(spread, "M1")]).toEqual([place(bench, "F1"), place(bench, "M1")]);
    const [one, two, three] = row.map((id) => outline(spread, id));
    expect(Math.abs(two!.left - one!.right - (three!.left - two!.right))).toBeLessThanOrEqual(1);
    expect(codeOf(distributeThings(spread, row, "across"))).toBe("already-so");
  });
});

describe("duplicates", () => {
  test("get the next designators, with the wires between them and the plug that carries them alone", () => {
    const bench = benchFor(VENTS);
    const next = after(bench, duplicateThings(bench, ["S5", "X32", "M3"], 1, 2));
    const added = <T extends { readonly id: string }>(now: readonly T[], was: readonly T[]) => now.slice(was.length);
    expect(added(next.circuit.parts, VENTS.parts).map(({ id }) => id)).toEqual(["S7", "X34", "M5"]);
    expect(added(next.circuit.connectors, VENTS.connectors)).toEqual([
      {
        id: "X35",
        label: "Plug of S5",
        rows: [
          ["1", "2", "3"],
          ["4", "5", "6"],
        ],
        cavities: { "1": "S7.1", "2": "S7.2", "4": "S7.4", "5": "S7.5", "6": "S7.6" },
      },
      { id: "X34", label: "Middle roof joint", rows: [["1", "2"]] },
    ]);
    expect(added(next.circuit.wires, VENTS.wires).map(({ from, to }) => `${from} ${to}`)).toEqual([
      "X35-4 X34-1a",
      "X34-2a X35-5",
      "X34-1b M5.1",
      "M5.2 X34-2b",
    ]);
    // All by the same shift, and on nothing.
    const shift = (id: string, of: string) => [
      place(next, id)!.x - place(bench, of)!.x,
      place(next, id)!.y - place(bench, of)!.y,
    ];
    expect(shift("S7", "S5")).toEqual(shift("M5", "M3"));
    expect(problemsOf(next.circuit).filter(({ code }) => code === "part-over-part")).toEqual([]);
  });
});

describe("what is pasted", () => {
  const fragment = copied(VENTS, ["G1", "F1", "S5", "X32"]);
  // Large enough for parts of two pages on one.
  const pages = SMALL.pages.map((page) => ({ ...page, widthMm: 841, heightMm: 594 }));
  const into = (changed: Partial<Circuit>) => {
    const bench = benchFor({ ...SMALL, pages, ...changed });
    const edit = got(paste(bench, fragment, "p1", 60, 30));
    return { name: edit.name, circuit: after(bench, { ok: true, value: edit }).circuit };
  };
  const colours = ({ wires }: Circuit) => wires.slice(SMALL.wires.length).map(({ colour }) => colour);

  test("gives way where an id is taken, and does not claim the volts' reference", () => {
    const { name, circuit } = into({});
    expect(name).toBe("paste 4 parts");
    expect(circuit.parts.slice(SMALL.parts.length).map(({ id }) => id)).toEqual(["G2", "F2", "S5", "X32"]);
    expect(circuit.parts.find(({ id }) => id === "G2")?.settings).toEqual({ internalOhms: 0.012 });
    const { places } = fragment;
    expect(circuit.placement.parts.S5).toEqual({
      ...places.S5,
      page: "p1",
      x: places.S5!.x + 60,
      y: places.S5!.y + 30,
    });
  });

  test("is written in the colour codes of the circuit, and its name says what they lack and which volts differ", () => {
    const own = colours(into({}).circuit);
    expect(own).toContain("GN");
    const german = into({ colourCodes: "german" });
    expect(colours(german.circuit)).toEqual(own.map((colour) => ({ RD: "rt", GN: "gn", "YE/BK": "ge/sw" })[colour!]));
    expect(german.name).toBe("paste 4 parts");
    expect(into({ nominalVolts: 24 }).name).toBe("paste 4 parts, drawn for 12 V");
    const gold = { ...fragment, wires: fragment.wires.map((wire) => ({ ...wire, colour: "GD" })) };
    const bench = benchFor({ ...SMALL, pages, colourCodes: "german" });
    expect(got(paste(bench, gold, "p1", 60, 30)).name).toBe(`paste 4 parts, without ${fragment.wires.length} colours`);
  });
});
