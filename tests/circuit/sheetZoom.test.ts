import { describe, expect, test } from "vitest";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { sheetOf } from "../../core/circuit/sheet.ts";
import { inkBoxes, overlaps } from "../../core/circuit/sheetRoom.ts";
import type { Mark } from "../../core/drawing/mark.ts";
import { boundsOf } from "../../core/drawing/measure.ts";
import { liveOf } from "../../core/live/live.ts";
import type { Look } from "../../core/parts/kind.ts";
import { linesIn, PAGES, shrunk, textClashes, textsIn, wireClashes } from "./sheetMarks.ts";
import { VENT } from "./ventFixture.ts";

const ZOOMS = [1.5, 1, 0.85, 0.7, 0.62, 0.55, 0.4, 0.25] as const;
/** 11 pixels at 100 %, in points. */
const LEAST_POINTS = 8.25;
const VOLTS = /^\u2212?\d+\.\d+\u00A0V$/;

interface Seen {
  readonly zoom: number | undefined;
  readonly marks: readonly Mark[];
}

/** A page at every zoom and on paper, plain and in the first two conditions that the circuit names. */
function seen(circuit: Circuit, page: string, look: Look): { readonly all: readonly Seen[]; paper(one: Seen): Seen } {
  const named = [...circuit.scenes, ...circuit.checks].slice(0, 2).map(({ condition }) => condition);
  const states = [{}, ...named.map((condition) => ({ live: liveOf(circuit, condition) }))];
  const papers = new Map<Seen, Seen>();
  const all = states.flatMap((state) => {
    const draw = (zoom?: number): Seen => {
      const sheet = sheetOf({ circuit, page, look, framed: false, ...state, ...(zoom !== undefined && { zoom }) });
      if (!sheet.ok) throw new Error(sheet.refusal.code);
      return { zoom, marks: sheet.value.marks };
    };
    const paper = draw();
    return ZOOMS.map((zoom) => {
      const one = draw(zoom);
      papers.set(one, paper);
      return one;
    });
  });
  return { all, paper: (one) => papers.get(one)! };
}

/** Swatches and glyphs beside wires, without the chevrons on them, each of which lies on a patch of paper. */
function tagSigns(circuit: Circuit, marks: readonly Mark[]): readonly Mark[] {
  const ids = new Set(circuit.wires.map(({ id }) => id));
  return marks.filter((mark, index) => {
    if (mark.mark === "swatch") return true;
    const before = marks[index - 1];
    const isChevron = before !== undefined && "role" in before && before.role === "paper";
    return ids.has(mark.of ?? "") && "role" in mark && mark.role.startsWith("glyph-") && !isChevron;
  });
}

/** Swatches and glyphs that lie on a wire. */
function tagClashes(circuit: Circuit, marks: readonly Mark[]) {
  const ids = new Set(circuit.wires.map(({ id }) => id));
  const wires = linesIn(marks).filter(({ of, role }) => ids.has(of ?? "") && /^(wire-|symbol$)/.test(role));
  const boxes = wires.flatMap((mark) => inkBoxes(mark).map((box) => ({ of: mark.of, box: shrunk(box, -0.1) })));
  return tagSigns(circuit, marks).flatMap((mark) => {
    const own = shrunk(boundsOf(mark), 0.03);
    return boxes.filter(({ box }) => overlaps(box, own)).map(({ of }) => [mark.of, of]);
  });
}

describe.each(PAGES)("the sheet on a screen of %s", (_, circuit, page) => {
  const ids = new Set(circuit.wires.map(({ id }) => id));
  const placed = circuit.parts.filter(({ id }) => circuit.placement.parts[id]?.page === page);

  describe.each(["iec", "na"] as const)("in the look %s", (look) => {
    const { all, paper } = seen(circuit, page, look);
    const below = (zoom: number) => all.filter((one) => one.zoom! < zoom);

    test("has no type under 11 pixels", () => {
      const small = all.flatMap(({ zoom, marks }) =>
        textsIn(marks).filter(({ points }) => points * zoom! < LEAST_POINTS - 1e-9),
      );
      expect(small).toEqual([]);
    });

    test("sets no word over another, and none over a wire", () => {
      for (const { marks } of all) {
        expect(textClashes(marks)).toEqual([]);
        expect(wireClashes(circuit, marks)).toEqual([]);
      }
    });

    test("sets no swatch or glyph of a tag over a wire", () => {
      for (const { marks } of all) expect(tagClashes(circuit, marks)).toEqual([]);
    });

    test("says at 100 % and above all that paper says, but for the figures of volts", () => {
      const said = ({ marks }: Seen) => {
        return textsIn(marks).flatMap(({ of, text }) => (VOLTS.test(text) ? [] : [`${of} ${text.toLowerCase()}`]));
      };
      for (const one of all.filter(({ zoom }) => zoom! >= 1)) {
        const missing = said(paper(one)).filter((text) => !said(one).includes(text));
        expect(missing).toEqual([]);
      }
    });

    test("has no codes, sizes and names of wires below 90 %, but their swatches", () => {
      for (const { zoom, marks } of below(0.9)) {
        const besideWires = textsIn(marks).filter(({ of, text }) => ids.has(of ?? "") && !VOLTS.test(text));
        expect(besideWires.filter(({ text }) => text !== "weak" && !/page|not placed/.test(text))).toEqual([]);
        const swatches = marks.filter(({ mark }) => mark === "swatch");
        const tagged = new Set(linesIn(marks).map(({ of }) => of)).size > placed.length;
        if (zoom! >= 0.45 && tagged) expect(swatches.length).toBeGreaterThan(0);
      }
    });

    test("has only designators and letters of symbols below 45 %", () => {
      const names = new Set(placed.map(({ id }) => id));
      for (const { marks } of below(0.45)) {
        const others = textsIn(marks).filter(({ text, of }) => !(names.has(text) && text === of) && text.length > 1);
        expect(others).toEqual([]);
        expect(marks.filter(({ mark }) => mark === "swatch")).toEqual([]);
      }
    });

    test("names every part at every zoom, once", () => {
      for (const { marks } of all) {
        const names = textsIn(marks)
          .filter(({ text, of }) => text === of && !ids.has(text))
          .map(({ text }) => text);
        expect(names.toSorted()).toEqual(placed.map(({ id }) => id).toSorted());
      }
    });

    test("says no rating or label of a part twice", () => {
      for (const { marks } of all) {
        const said = textsIn(marks).filter(({ text, weight }) => weight === 400 && /^[\d.]+\s(A|W|V)$/.test(text));
        const keys = said.map(({ of, text }) => `${of} ${text}`);
        expect(keys.filter((key, index) => keys.indexOf(key) !== index)).toEqual([]);
      }
    });

    test("draws symbols and wires as paper does, and no more marks than that", () => {
      const inkOf = ({ marks }: Seen) => marks.filter((mark) => "role" in mark && isInk(mark));
      for (const one of all) {
        expect(inkOf(one)).toEqual(inkOf(paper(one)));
        expect(one.marks.length).toBeLessThanOrEqual(paper(one).marks.length + 8);
        expect(one.marks.length).toBeGreaterThan(placed.length);
      }
    });
  });
});

/** Lines of wires and symbols, which no zoom moves. */
function isInk(mark: Mark): boolean {
  return mark.mark === "line" && /^(wire-|symbol|contact-|link$|body$)/.test(mark.role);
}

describe("a sheet on a screen", () => {
  const at = (zoom: number): readonly Mark[] => {
    const sheet = sheetOf({ circuit: VENT, page: "p1", zoom });
    return sheet.ok ? sheet.value.marks : [];
  };

  test("has no frame unless it is asked for", () => {
    expect(at(1).filter((mark) => "role" in mark && mark.role.startsWith("frame"))).toEqual([]);
  });

  test("keeps the words of a flag inside it", () => {
    const flags = [1, 0.85, 0.7, 0.62].map((zoom) => {
      const marks = at(zoom).filter(({ of }) => of === "W17");
      const [outline] = linesIn(marks).filter(({ role, closed }) => role === "link" && closed);
      return { box: boundsOf(outline!), words: textsIn(marks).filter(({ text }) => text.includes("page")) };
    });
    expect(flags[0]!.words).toHaveLength(1);
    const over = flags.flatMap(({ box, words }) =>
      words.filter((word) => boundsOf(word).left < box.left || boundsOf(word).right > box.right),
    );
    expect(over).toEqual([]);
  });

  test("says the rating of a fuse once, with its name where it has no room beside the symbol", () => {
    const { pages, parts } = VENT;
    const fuse = parts.find(({ kind }) => kind === "fuse")!;
    const motor = parts.find(({ kind }) => kind === "motor")!;
    const beside = { [fuse.id]: { page: "p1", x: 40, y: 30 }, [motor.id]: { page: "p1", x: 47, y: 33 } };
    const circuit = { ...VENT, pages, parts: [fuse, motor], wires: [], placement: { parts: beside, wires: {} } };
    const ratings = [1, 0.62].map((zoom) => {
      const sheet = sheetOf({ circuit, page: "p1", zoom });
      return textsIn(sheet.ok ? sheet.value.marks : []).filter(({ text }) => /^\d+\sA$/.test(text));
    });
    expect(ratings.map((each) => each.length)).toEqual([1, 1]);
    expect(ratings[1]![0]!.at).not.toEqual(ratings[0]![0]!.at);
  });

  test("sets its words for each zoom anew, and gives the same for the same", () => {
    expect(at(0.7)).toEqual(at(0.7));
    expect(at(0.7)).not.toEqual(at(0.85));
  });
});
