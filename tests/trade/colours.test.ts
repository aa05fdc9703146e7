import { describe, expect, test } from "vitest";
import { COLOUR_NAMES, HATCHES } from "../../core/trade/colourNames.ts";
import type { ColourSet } from "../../core/trade/colours.ts";
import { COLOUR_CODES, COLOUR_SETS, colourText, isHighVoltageColour, parseColour } from "../../core/trade/colours.ts";

/** Names read from a code, base first; the refusal code where it is refused. */
function names(text: string, set: ColourSet): string {
  const outcome = parseColour(text, set);
  if (!outcome.ok) return outcome.refusal.code;
  return [outcome.value.base, ...outcome.value.stripes].map((each) => each.name).join(", ");
}

/** The code written anew in the same set, or in another. */
function rewritten(text: string, from: ColourSet, to: ColourSet = from): string {
  const outcome = parseColour(text, from);
  if (!outcome.ok) return outcome.refusal.code;
  const written = colourText(outcome.value, to);
  return written.ok ? written.value : written.refusal.code;
}

describe("names", () => {
  test("each has its own name, swatch and hatch", () => {
    for (const key of ["name", "hex", "hatch"] as const) {
      expect(new Set(COLOUR_NAMES.map((each) => each[key])).size).toBe(COLOUR_NAMES.length);
    }
    for (const { hex } of COLOUR_NAMES) expect(hex).toMatch(/^#[0-9A-F]{6}$/);
  });

  test("every hatch is some colour's", () => {
    expect(new Set(COLOUR_NAMES.map((each) => each.hatch))).toEqual(new Set(HATCHES));
  });
});

describe.each(COLOUR_SETS)("%s", (set) => {
  const codes = COLOUR_CODES[set];

  test("every code is read as its own colour and written back as the colour's first code", () => {
    for (const { code, colour } of codes) {
      expect(names(code, set)).toBe(colour);
      expect(rewritten(code, set)).toBe(codes.find((each) => each.colour === colour)!.code);
    }
  });

  test("every pair apart by / is read base first, whatever the capitals", () => {
    for (const base of codes) {
      for (const stripe of codes.filter((each) => each.colour !== base.colour)) {
        const wanted = `${base.colour}, ${stripe.colour}`;
        expect(names(`${base.code}/${stripe.code}`, set)).toBe(wanted);
        expect(names(`${base.code}-${stripe.code}`.toLowerCase(), set)).toBe(wanted);
        expect(names(` ${base.code} * ${stripe.code} `.toUpperCase(), set)).toBe(wanted);
      }
    }
  });

  test("a joined pair is read as that pair or refused, never as another", () => {
    for (const base of codes) {
      for (const stripe of codes.filter((each) => each.colour !== base.colour)) {
        const read = names(base.code + stripe.code, set);
        const isMain = set === "iec60757" && base.code === "GN" && stripe.code === "YE";
        expect(isMain ? ["green and yellow"] : [`${base.colour}, ${stripe.colour}`, "colour-ambiguous"]).toContain(
          read,
        );
      }
    }
  });

  test("nothing, nonsense and bad pieces are refused with codes", () => {
    expect(names("  ", set)).toBe("colour-empty");
    expect(names("QQ", set)).toBe("colour-unknown");
    const [first, second, third, fourth] = codes.map((each) => each.code);
    expect(names(`${first}/`, set)).toBe("colour-unknown");
    expect(names(`${first}/QQ`, set)).toBe("colour-unknown");
    expect(names(`${first}/${first}`, set)).toBe("colour-stripe-is-base");
    expect(names(`${first}/${second}/${third}`, set)).not.toMatch(/^colour-/);
    expect(names(`${first}/${second}/${third}/${fourth}`, set)).toBe("colour-too-many");
  });
});

describe("hazards", () => {
  test("base and tracer are never sorted", () => {
    expect(names("WH/BK", "iec60757")).toBe("white, black");
    expect(names("BK/WH", "iec60757")).toBe("black, white");
    expect(rewritten("WHBK", "iec60757")).toBe("WH/BK");
  });

  // DIN introductory note on DIN 72551-7: BLGN and GNBL, RDBN and RDOR
  test("DIN writes blue BL and orange OR, base first", () => {
    expect(names("BLGN", "din72551")).toBe("blue, green");
    expect(names("GNBL", "din72551")).toBe("green, blue");
    expect(names("RDBN", "din72551")).toBe("red, brown");
    expect(names("RDOR", "din72551")).toBe("red, orange");
    expect(names("BU", "din72551")).toBe("colour-unknown");
    expect(names("BL", "iec60757")).toBe("colour-unknown");
  });

  // IEC 60757:2021, clauses 4 and 5
  test("GNYE is the one code of green and yellow, GN/YE is green with a yellow tracer", () => {
    expect(names("GNYE", "iec60757")).toBe("green and yellow");
    expect(names("GN/YE", "iec60757")).toBe("green, yellow");
    expect(rewritten("GNYE", "iec60757")).toBe("GNYE");
    expect(rewritten("GN/YE", "iec60757")).toBe("GN/YE");
  });

  test("Japanese capitals alone do not tell brown from black with red", () => {
    expect(names("BR", "japanese")).toBe("colour-ambiguous");
    expect(names("Br", "japanese")).toBe("brown");
    expect(names("B/R", "japanese")).toBe("black, red");
    expect(names("B R", "japanese")).toBe("black, red");
    expect(names("BrW", "japanese")).toBe("brown, white");
    expect(names("BY", "japanese")).toBe("black, yellow");
  });

  test("an ambiguous code names its readings", () => {
    expect(parseColour("GR", "japanese")).toMatchObject({ refusal: { about: { readings: "G/R, Gr" } } });
  });

  test("North American shades keep their word before the colour, spaced or not", () => {
    expect(names("DK GRN/WHT", "north-american")).toBe("dark green, white");
    expect(names("dkgrnwht", "north-american")).toBe("dark green, white");
    expect(names("DK GRN WHT", "north-american")).toBe("dark green, white");
    expect(rewritten("ltblu-blk", "north-american")).toBe("LT BLU/BLK");
  });

  test("a colour is carried from set to set where the other has a code for it", () => {
    expect(rewritten("sw/ge", "german", "iec60757")).toBe("BK/YE");
    expect(rewritten("li", "german")).toBe("vi");
    expect(rewritten("TQ", "iec60757", "german")).toBe("colour-not-in-set");
  });

  // NFPA, Electric and Hybrid Vehicle Quick Reference, 2014
  test("an orange base is the sign of high voltage, an orange tracer is not", () => {
    const isHigh = (text: string) => {
      const outcome = parseColour(text, "iec60757");
      return outcome.ok && isHighVoltageColour(outcome.value);
    };
    expect(isHigh("OG")).toBe(true);
    expect(isHigh("OG/BK")).toBe(true);
    expect(isHigh("BK/OG")).toBe(false);
  });
});
