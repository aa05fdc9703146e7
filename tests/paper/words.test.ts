import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { restVoltsOf } from "../../core/live/restVolts.ts";
import { checklistCautions, loadOf, tableCautions } from "../../core/paper/cautions.ts";
import { clearedText } from "../../core/paper/cleared.ts";
import { leadParagraph, linesOf, widthMm } from "../../core/paper/lines.ts";
import { rowsText } from "../../core/paper/listed.ts";
import { nearestFuses } from "../../core/paper/nearFuses.ts";
import { placesOf } from "../../core/paper/places.ts";
import { closeRange, rangeText, tableVolts } from "../../core/paper/range.ts";
import { CODE_SIGNS, sheetCode } from "../../core/paper/sheetCode.ts";
import { TYPE } from "../../core/paper/sizes.ts";
import { conditionWords, controlName } from "../../core/paper/throws.ts";
import { label } from "./arbitraries.ts";
import { step, suspect, VENT_CIRCUIT, VENT_ORDER, VENT_TABLE } from "./fixtures.ts";

describe("printed figures", () => {
  test("a range is rounded outward to tenths, one figure where both agree", () => {
    expect(rangeText(11.94, 12.31)).toBe("11.9 – 12.4");
    expect(rangeText(12, 12.3)).toBe("12.0 – 12.3");
    expect(rangeText(0, 0)).toBe("0.0");
    expect(rangeText(-0.001, 0.002)).toBe("0.0");
    expect(rangeText(-0.36, -0.2)).toBe("−0.4 – −0.2");
    expect(closeRange(0.3, 0.7)).toBe("0.3–0.7");
  });

  test("every reading of the range lies in what is printed, and at most a tenth outside of it is printed", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 30, noNaN: true }),
        fc.double({ min: 0, max: 3, noNaN: true }),
        (low, wide) => {
          const [from, to = from] = rangeText(low, low + wide)
            .split(" – ")
            .map(Number);
          expect(from!).toBeLessThanOrEqual(low + 0.006);
          expect(to!).toBeGreaterThanOrEqual(low + wide - 0.006);
          expect(to! - from!).toBeLessThan(wide + 0.2);
        },
      ),
      { seed: 7 },
    );
  });

  test("volts of a table have one decimal from 1 V up and two below", () => {
    expect([0, 0.004, 0.06, 0.994, 0.996, 12.56, -0.35].map(tableVolts)).toEqual([
      "0.0",
      "0.0",
      "0.06",
      "0.99",
      "1.0",
      "12.6",
      "−0.35",
    ]);
  });

  test("rows are named in spans", () => {
    expect(rowsText([3])).toMatch(/^\w+ 3$/);
    expect(rowsText([1, 2])).toMatch(/1 \w+ 2$/);
    expect(rowsText([1, 4, 5, 6, 9])).toMatch(/1, 4 \w+ 6 \w+ 9$/);
  });
});

describe("a sheet code", () => {
  test("has four signs that no pencil confuses", () => {
    expect(CODE_SIGNS).not.toMatch(/[01OIL]/);
    for (let i = 0; i < 500; i++) expect(sheetCode(["rows", i])).toMatch(new RegExp(`^[${CODE_SIGNS}]{4}$`));
  });

  test("of five hundred contents is hardly ever the same", () => {
    expect(new Set(Array.from({ length: 500 }, (_, i) => sheetCode({ rows: i }))).size).toBeGreaterThanOrEqual(498);
  });
});

describe("lines of type", () => {
  test("of any text fit the width, and lose nothing but blanks", () => {
    fc.assert(
      fc.property(label(160), fc.integer({ min: 8, max: 90 }), (words, width) => {
        const lines = linesOf(words, TYPE.act, width);
        for (const line of lines) expect(widthMm(line, TYPE.act)).toBeLessThanOrEqual(width + 1e-6);
        expect(lines.join("").replace(/\s/g, "")).toBe(words.replace(/\s/g, ""));
      }),
      { seed: 3 },
    );
  });

  test("with a bold start fit the width too", () => {
    fc.assert(
      fc.property(label(60), label(160), fc.integer({ min: 20, max: 120 }), (lead, words, width) => {
        const marks = leadParagraph(lead, words, TYPE.body, width).at(0, 0);
        const ends = marks.flatMap((mark) =>
          mark.mark === "text" ? [mark.at.x * 2.5 + widthMm(mark.text, { ...TYPE.body, ...mark })] : [],
        );
        for (const end of ends) expect(end).toBeLessThanOrEqual(width + 1e-6);
      }),
      { seed: 3 },
    );
  });
});

describe("what to throw", () => {
  const words = (condition: Parameters<typeof conditionWords>[1], matters: readonly string[] = []) =>
    conditionWords(VENT_CIRCUIT, condition, matters).map((line) => [line.words, line.isBold]);

  test("the only key switch is called the key, a handle of a panel by panel and name", () => {
    expect(["S1", "S5", "S2.middle"].map((key) => controlName(VENT_CIRCUIT, key))).toEqual(["Key", "S5", "S2 middle"]);
  });

  test("what is held, apart, out or off is bold, what latches or rests is not", () => {
    expect(words({ set: { S1: "on", S5: "open" }, apart: ["X32"], out: ["F3"], batteryOff: true })).toEqual([
      ["Key ON", false],
      [expect.stringContaining("S5 hold OPEN"), true],
      [expect.stringContaining("X32"), true],
      [expect.stringContaining("F3"), true],
      [expect.stringContaining("battery"), true],
    ]);
  });

  test("controls that other rows throw stand on one line for each position they rest in", () => {
    expect(words({}, ["S1", "S5", "S2.middle"])).toEqual([
      ["Key OFF", true],
      ["S5, S2 middle rest", false],
    ]);
  });
});

describe("places", () => {
  test("come in the order of their rows, minutes once, and a return repeats its letter without them", () => {
    const accesses = ["vent-switch", "roof-joint", "vent-switch", null, "vent-frame"];
    const steps = accesses.map((access, i) => step(i + 1, "X5-4", { access }));
    const places = placesOf(VENT_CIRCUIT, { ...VENT_ORDER, steps });
    expect(places.map(({ letter, minutes, isAgain }) => [letter, minutes, isAgain])).toEqual([
      ["A", 2, false],
      ["B", 6, false],
      ["A", 0, true],
      ["C", 0, false],
      ["D", 8, false],
    ]);
  });

  test("count the trim in front of them where it is still shut", () => {
    const [place] = placesOf(VENT_CIRCUIT, { ...VENT_ORDER, steps: [step(1, "M3.1", { access: "vent-frame" })] });
    expect(place!.minutes).toBe(14);
    expect(place!.opens.map(({ id }) => id)).toEqual(["roof-joint", "vent-frame"]);
  });
});

describe("cautions in the frame", () => {
  const lines = (cautions: readonly string[]) => checklistCautions({ ...VENT_CIRCUIT, cautions }, VENT_ORDER);
  const DEFERENCE = checklistCautions(VENT_CIRCUIT, VENT_ORDER).at(-1)!;

  test("are eight at most, the vehicle's own first, and whose word comes first last", () => {
    for (const count of [0, 2, 5, 7]) {
      const own = Array.from({ length: count }, (_, i) => `Own caution ${i}.`);
      const framed = lines(own);
      expect(framed.length).toBeLessThanOrEqual(8);
      expect(framed.slice(0, count)).toEqual(own);
      expect(framed.at(-1)).toBe(DEFERENCE);
    }
  });

  test("say whose word comes first once, even where the vehicle says it too", () => {
    expect(lines([DEFERENCE, "Own caution."]).filter((line) => line === DEFERENCE)).toEqual([DEFERENCE]);
  });

  test("none of a vehicle's own is left out unsaid, however many there are", () => {
    const framed = lines(Array.from({ length: 40 }, (_, i) => `Own caution ${i}.`));
    expect(framed.length).toBe(13);
    expect(framed.at(-2)).toMatch(/^29 /);
  });

  test("limit the time a spring-back switch holds a motor, with the amps it draws stalled", () => {
    expect(lines([]).some((line) => line.includes("S5") && line.includes("3 s") && line.includes("8 A"))).toBe(true);
  });

  test("find the load of a complaint by its check, with or without what was seen", () => {
    for (const complaint of ["Middle roof vent opens", "Middle roof vent opens: dead", "middle-open"]) {
      expect(loadOf(VENT_CIRCUIT, { ...VENT_ORDER, complaint })).toBe("M3");
    }
    expect(loadOf(VENT_CIRCUIT, { ...VENT_ORDER, complaint: "Something else" })).toBeNull();
  });

  test("name the fuse nearest to the load with its rating, like for like", () => {
    expect(nearestFuses(VENT_CIRCUIT, "M3").map(({ id }) => id)).toEqual(["F4"]);
    expect(lines([]).some((line) => line.startsWith("F4: 25 A for 25 A."))).toBe(true);
    expect(tableCautions(VENT_CIRCUIT, VENT_TABLE).some((line) => line.startsWith("F4: 25 A"))).toBe(true);
  });
});

describe("what works clears", () => {
  test("only things of which no fault is still suspected", () => {
    const order = {
      ...VENT_ORDER,
      suspects: [suspect("S2", "stuck"), suspect("X5-4", "corroded")],
      cleared: [
        suspect("S2", "open"),
        suspect("F3", "blown"),
        suspect("F4", "blown"),
        suspect("X5-6", "corroded"),
        suspect("W6", "open"),
      ],
    };
    const text = clearedText(VENT_CIRCUIT, order);
    expect(text).toMatch(/F3, F4/);
    expect(text).toMatch(/W6/);
    expect(text).not.toMatch(/S2|X5/);
  });

  test("nothing where nothing is cleared", () => {
    expect(clearedText(VENT_CIRCUIT, { ...VENT_ORDER, cleared: [] })).toBe("");
  });
});

test("volts at rest come from the charge of the reference battery, and double on 24 V", () => {
  const at12 = restVoltsOf(VENT_CIRCUIT);
  expect(at12).toBeGreaterThan(12.2);
  expect(restVoltsOf({ ...VENT_CIRCUIT, nominalVolts: 24 })).toBeCloseTo(2 * at12, 6);
  const half = VENT_CIRCUIT.parts.map((part) => (part.id === "G1" ? { ...part, settings: { charge: 50 } } : part));
  expect(restVoltsOf({ ...VENT_CIRCUIT, parts: half })).toBeLessThan(at12);
});
