import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Circuit, Condition, PartPlace } from "../../core/circuit/circuit.ts";
import { sheetOf } from "../../core/circuit/sheet.ts";
import { sheetArea, zoneOf } from "../../core/circuit/sheetArea.ts";
import type { Mark } from "../../core/drawing/mark.ts";
import { type Bounds, boundsOf } from "../../core/drawing/measure.ts";
import { parseFault } from "../../core/live/fault.ts";
import { liveOf } from "../../core/live/live.ts";
import { kindOf } from "../../core/parts/catalogue.ts";
import { viewOf } from "../../core/parts/view.ts";
import { linesIn, PAGES, shrunk, textClashes, textsIn, wireClashes } from "./sheetMarks.ts";
import { VENT } from "./ventFixture.ts";

/** At rest in ink, and live in the first two conditions that the circuit names, or in those of the fixture. */
function drawings(circuit: Circuit, page: string): readonly (readonly Mark[])[] {
  const named = [...circuit.scenes, ...circuit.checks].slice(0, 2).map(({ condition }) => condition);
  const conditions: readonly Condition[] =
    named.length > 0 ? named : [{ set: { S1: "on", S5: "open" } }, { apart: ["X5"] }];
  const lives = conditions.map((condition) => liveOf(circuit, condition));
  return [marksOf(circuit, page), ...lives.map((live) => marksOf(circuit, page, live))];
}

function marksOf(circuit: Circuit, page: string, live?: ReturnType<typeof liveOf>): readonly Mark[] {
  const sheet = sheetOf({ circuit, page, code: "H4WC", ...(live && { live }) });
  if (!sheet.ok) throw new Error(sheet.refusal.code);
  return sheet.value.marks;
}

describe.each(PAGES)("the sheet of %s", (_, circuit, page) => {
  const all = drawings(circuit, page);

  test("names every part, and draws every wire, that is placed on the page", () => {
    const placed = circuit.parts.filter(({ id }) => circuit.placement.parts[id]?.page === page);
    for (const marks of all) {
      const texts = new Set(textsIn(marks).map(({ text }) => text));
      expect(placed.map(({ id }) => id).filter((id) => !texts.has(id))).toEqual([]);
      const drawn = new Set(linesIn(marks).map(({ of }) => of));
      const owners = new Set(placed.map(({ id }) => id));
      const isHere = (point: string) => {
        const connector = circuit.connectors.find(({ id }) => id === point.split("-")[0]);
        const terminal = connector?.cavities?.[point.split("-")[1] ?? ""] ?? point;
        return owners.has(terminal.split(/[.-]/)[0]!);
      };
      const wires = circuit.wires.filter(({ from, to }) => isHere(from) || isHere(to));
      expect(wires.map(({ id }) => id).filter((id) => !drawn.has(id))).toEqual([]);
    }
  });

  test("names every wired terminal of parts that have more than one", () => {
    const marks = all[0]!;
    for (const part of circuit.parts) {
      const kind = kindOf(part.kind);
      if (circuit.placement.parts[part.id]?.page !== page || !kind || part.kind === "connector") continue;
      const { terminals } = viewOf(kind, part, circuit.nominalVolts);
      const texts = textsIn(marks).filter(({ of }) => of === part.id);
      const written = texts.map(({ text }) => text.replace("−", "-"));
      const ends = circuit.wires.flatMap(({ from, to }) => [from, to]);
      const wired = terminals.filter((name) => ends.includes(`${part.id}.${name}`));
      if (terminals.length > 1) expect(wired.filter((name) => !written.includes(name))).toEqual([]);
    }
  });

  test("sets no text over another", () => {
    for (const marks of all) expect(textClashes(marks)).toEqual([]);
  });

  test("sets no text over a wire", () => {
    for (const marks of all) expect(wireClashes(circuit, marks)).toEqual([]);
  });

  test("stays inside its frame, in type of at least 7.5 points", () => {
    const area = sheetArea(circuit.pages.find(({ id }) => id === page)!);
    const inside = (box: Bounds, within: Bounds) =>
      box.left >= within.left && box.right <= within.right && box.top >= within.top && box.bottom <= within.bottom;
    for (const marks of all) {
      const outside = marks.filter((mark) => !inside(boundsOf(mark), shrunk(area.outer, -0.1)));
      expect(outside).toEqual([]);
      const astray = marks.filter((mark) => mark.of !== undefined && !inside(boundsOf(mark), area.drawing));
      expect(astray).toEqual([]);
      expect(textsIn(marks).filter(({ points }) => points < 7.5)).toEqual([]);
    }
  });
});

describe("a sheet", () => {
  const live = (condition: Condition, fault?: string) => {
    const parsed = fault === undefined ? null : parseFault(VENT, fault);
    return liveOf(VENT, condition, parsed?.ok ? [parsed.value] : []);
  };
  const linesOf = (marks: readonly Mark[], id: string) => linesIn(marks).filter(({ of }) => of === id);

  test("of a page that the circuit has not is refused", () => {
    const sheet = sheetOf({ circuit: VENT, page: "p9" });
    expect(sheet.ok ? null : sheet.refusal.code).toBe("page-unknown");
  });

  test("is the same whenever it is drawn", () => {
    const now = live({ set: { S1: "on", S5: "open" } });
    expect(marksOf(VENT, "p1", now)).toEqual(marksOf(VENT, "p1", now));
  });

  test("keeps its names and wires in place when a switch is thrown", () => {
    const still = (marks: readonly Mark[]) => {
      const names = textsIn(marks).filter(({ text, of }) => text === of);
      return names.map(({ text, at }) => [text, at]).filter(([text]) => !String(text).startsWith("W"));
    };
    const ways = (marks: readonly Mark[]) =>
      linesOf(marks, "W9")
        .filter(({ role }) => role.startsWith("wire-"))
        .map(({ spots }) => spots);
    const rest = marksOf(VENT, "p1", live({}));
    const thrown = marksOf(VENT, "p1", live({ set: { S1: "on", S5: "open" } }));
    expect(still(thrown)).toEqual(still(rest));
    expect(ways(thrown)).toEqual(ways(rest));
  });

  test("draws a plug that is apart open at each of its cavities", () => {
    const marks = marksOf(VENT, "p1", live({ apart: ["X5"] }));
    const inInk = linesOf(marks, "W9").filter(({ role }) => role === "symbol");
    expect(inInk).toHaveLength(3);
  });

  test("without live state has no state of a wire in its drawing", () => {
    const drawn = marksOf(VENT, "p1").filter(({ of }) => of !== undefined);
    expect(drawn.filter((mark) => "role" in mark && /^(wire|glyph)-/.test(mark.role))).toEqual([]);
  });

  test("changes the state of an open wire in its middle, with two strokes", () => {
    const marks = marksOf(VENT, "p1", live({ set: { S1: "on", S5: "open" } }, "W12:open"));
    const roles = linesOf(marks, "W12").map(({ role }) => role);
    expect(roles.filter((role) => !role.startsWith("glyph-"))).toEqual([
      "wire-powered",
      "symbol",
      "symbol",
      "wire-grounded-through-load",
    ]);
  });

  test("names every control off its rest in the banner", () => {
    const texts = textsIn(marksOf(VENT, "p1", live({ set: { S1: "on", S5: "close" }, apart: ["X5"] })));
    expect(texts.map(({ text }) => text)).toContain("key ON · S5 held CLOSE · X5 apart");
  });

  test("ends a wire to another page in a flag that says where it goes on", () => {
    const lamp = VENT.pages[1]!;
    const { x, y } = VENT.placement.parts.E1!;
    const zone = zoneOf(sheetArea(lamp), { x: x + 2, y });
    const flags = textsIn(marksOf(VENT, "p1"))
      .filter(({ of }) => of === "W17")
      .map(({ text }) => text);
    expect(flags.join(" ").replace(/\u00A0/g, " ")).toContain(`to E1.1 · page 2 · ${zone}`);
  });

  test("shows all eight states in its legend", () => {
    const roles = new Set(
      linesIn(marksOf(VENT, "p1"))
        .filter(({ of }) => of === undefined)
        .map(({ role }) => role),
    );
    expect([...roles].filter((role) => role.startsWith("wire-"))).toHaveLength(8);
  });

  test("printed at two thirds of its size has larger type, still apart", () => {
    const sheet = sheetOf({ circuit: VENT, page: "p1", printScale: 2 / 3 });
    const marks = sheet.ok ? sheet.value.marks : [];
    const texts = textsIn(marks);
    expect(textClashes(marks)).toEqual([]);
    expect(texts.length).toBeGreaterThan(50);
    expect(texts.filter(({ points }) => points * (2 / 3) < 7.5 - 1e-9)).toEqual([]);
  });

  test("flags both ends of a wire that finds no way", () => {
    const { parts, wires } = VENT.placement;
    const walled = { ...parts, E1: { page: "p1", x: 36, y: 42 } };
    const texts = textsIn(marksOf({ ...VENT, placement: { parts: walled, wires } }, "p1"));
    const flags = texts.filter(({ of, text }) => of === "W4" && text.startsWith("to")).map(({ text }) => text);
    expect(flags.map((text) => text.split(" ")[0]!.replace("\u00A0", " "))).toEqual(["to F2.1", "to S1.2"]);
  });

  test("keeps text off text and wires wherever its parts are put", () => {
    const places = fc.uniqueArray(
      fc.record({ cell: fc.nat(23), dx: fc.nat(5), dy: fc.nat(4), turn: fc.constantFrom(0, 90, 180, 270) }),
      { minLength: 12, maxLength: 12, selector: ({ cell }) => cell },
    );
    const ids = Object.keys(VENT.placement.parts).filter((id) => VENT.placement.parts[id]!.page === "p1");
    const now = live({ set: { S1: "on", S5: "open" } });
    fc.assert(
      fc.property(places, (chosen) => {
        const moved = ids.map((id, i): [string, PartPlace] => {
          const { cell, dx, dy, turn } = chosen[i]!;
          return [id, { page: "p1", x: 8 + (cell % 6) * 26 + dx, y: 13 + Math.floor(cell / 6) * 22 + dy, turn }];
        });
        const parts = { ...VENT.placement.parts, ...Object.fromEntries(moved) };
        const circuit = { ...VENT, placement: { parts, wires: {} } };
        const marks = marksOf(circuit, "p1", now);
        expect(textClashes(marks)).toEqual([]);
        expect(wireClashes(circuit, marks)).toEqual([]);
      }),
      { seed: 3, numRuns: 12 },
    );
  });

  test("without a frame holds only what belongs to parts and wires", () => {
    const sheet = sheetOf({ circuit: VENT, page: "p1", framed: false });
    const marks = sheet.ok ? sheet.value.marks : [];
    expect(marks.length).toBeGreaterThan(50);
    expect(marks.filter(({ of, mark }) => of === undefined && mark !== "circle")).toEqual([]);
  });
});
