import { describe, expect, test } from "vitest";
import { colourMeant, colourOffers } from "../../renderer/words/colour.ts";

const texts = (typed: string, set: Parameters<typeof colourOffers>[1]) =>
  colourOffers(typed, set).map(({ text }) => text);

describe("colours that are offered while one is typed", () => {
  test("by their letters and by their words, in the codes of the circuit", () => {
    expect(texts("g", "iec60757")).toEqual(["GN", "GY", "GD", "GNYE"]);
    expect(texts("gy", "iec60757")).toEqual(["GY"]);
    expect(texts("grey", "iec60757")).toEqual(["GY"]);
    expect(texts("g", "german")).toEqual(["ge", "gn", "gr"]);
    expect(texts("b", "din72551")).toContain("BL");
  });

  test("after a stroke for the stripe, with their words", () => {
    expect(colourOffers("RD/y", "iec60757")).toEqual([{ text: "RD/YE", words: "red with yellow" }]);
    expect(texts("RD/", "iec60757")).toContain("RD/BK");
  });

  test("the only one is taken for what was typed, and what is a colour stays as it was typed", () => {
    expect(colourMeant("rd/y", "iec60757")).toBe("rd/YE");
    expect(colourMeant("grey", "iec60757")).toBe("GY");
    expect(colourMeant("gnye", "iec60757")).toBe("gnye");
    expect(colourMeant("g", "iec60757")).toBe("g");
    expect(colourMeant("mauve", "iec60757")).toBe("mauve");
  });

  test("none for nothing, for no colour, and where colours are free", () => {
    expect(texts("", "iec60757")).toEqual([]);
    expect(texts("mauve", "iec60757")).toEqual([]);
    expect(texts("g", "free")).toEqual([]);
  });
});
