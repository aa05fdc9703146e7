import { describe, expect, test } from "vitest";
import { benchFor } from "../../core/edit/bench.ts";
import { resizePage } from "../../core/edit/commands/resizePage.ts";
import { checkLabel } from "../../renderer/circuit/checkLabel.ts";
import { addNextPage, namedFew, sideChanged, standingOn } from "../../renderer/circuit/pages.ts";
import { PAPER_NAMES, paperOf, sidesOf } from "../../renderer/circuit/paperSizes.ts";
import { after, codeOf, LATCH, VENTS } from "../edit/given.ts";

describe("the name of a new check", () => {
  test.each([
    ["M1", "forward", { set: { S1: "on", S3: "open" } }, "Front left vent opens, S3 held open"],
    ["M1", "reverse", { set: { S1: "on", S3: "close" } }, "Front left vent closes, S3 held close"],
    ["M1", "off", { set: { S1: "on" } }, "Front left vent motor stays off"],
    ["M1", "forward", {}, "Front left vent motor runs forward"],
  ] as const)("of %s, %s", (load, expected, condition, label) => {
    expect(VENTS.parts.find(({ id }) => id === load)?.label).toBe("Front left vent motor");
    expect(checkLabel(VENTS, load, expected, condition)).toBe(label);
  });

  test("of a lamp without a label is its designator", () => {
    expect(checkLabel(LATCH, "E1", "on", { set: { S1: "in" } })).toBe("E1 lights, S1 held in");
  });
});

describe("pages", () => {
  test("a new one is as large as the last, under a title that no other has", () => {
    const last = VENTS.pages.at(-1)!;
    const { pages } = after(benchFor(VENTS), addNextPage(benchFor(VENTS))).circuit;
    expect(pages.at(-1)).toMatchObject({
      title: `Page ${VENTS.pages.length + 1}`,
      widthMm: last.widthMm,
      heightMm: last.heightMm,
    });
    const taken = { ...VENTS, pages: VENTS.pages.map((page) => ({ ...page, title: "Page 5" })).slice(0, 1) };
    const bench = benchFor({ ...VENTS, pages: [...VENTS.pages.slice(1), ...taken.pages] });
    expect(after(bench, addNextPage(bench)).circuit.pages.at(-1)!.title).toBe(`Page ${VENTS.pages.length + 2}`);
  });

  test("what stands on one is named, of many the first few", () => {
    for (const { id } of VENTS.pages)
      for (const part of standingOn(VENTS, id)) expect(VENTS.placement.parts[part]!.page).toBe(id);
    expect(namedFew(["S1", "S2"])).toBe("S1, S2");
    expect(namedFew(["S1", "S2", "S3", "S4", "S5"])).toBe("S1, S2, S3, S4, S5");
    expect(namedFew(["S1", "S2", "S3", "S4", "S5", "S6"])).toBe("S1, S2, S3, S4 and 2 more");
  });

  test.each(PAPER_NAMES)("%s is known lying and standing, and in whole millimetres", (name) => {
    for (const isStanding of [true, false]) {
      const [widthMm, heightMm] = sidesOf(name, isStanding);
      expect(widthMm < heightMm).toBe(isStanding);
      expect(paperOf({ widthMm, heightMm })).toBe(name);
      expect(paperOf({ widthMm: Math.round(widthMm), heightMm: Math.round(heightMm) })).toBe(name);
    }
  });

  test("a side is typed in millimetres or with a unit, and what cannot be is refused", () => {
    const page = VENTS.pages[1]!;
    const bench = benchFor(VENTS);
    const width = (typed: string) => after(bench, sideChanged(page, "widthMm", typed)(bench)).circuit.pages[1]!.widthMm;
    expect(width("600")).toBe(600);
    expect(width("60 cm")).toBe(600);
    expect(width("23.62 in")).toBe(599.9);
    expect(codeOf(sideChanged(page, "widthMm", "wide")(bench))).toBe("amount-spelling");
    expect(codeOf(sideChanged(page, "widthMm", "")(bench))).toBe("amount-empty");
    expect(codeOf(sideChanged(page, "widthMm", "10")(bench))).toBe("page-size");
    expect(codeOf(resizePage(bench, page.id, 100, 100))).toBe("off-the-page");
  });
});
