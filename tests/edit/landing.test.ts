import { describe, expect, test } from "vitest";
import { problemsOf } from "../../core/circuit/check.ts";
import { benchFor } from "../../core/edit/bench.ts";
import { duplicateThings } from "../../core/edit/commands/duplicateThings.ts";
import { moveThings } from "../../core/edit/commands/moveThings.ts";
import { paste } from "../../core/edit/commands/paste.ts";
import { copied } from "../../core/edit/fragment.ts";
import { after, codeOf, SMALL } from "./given.ts";

const bench = benchFor(SMALL);
const place = (of: typeof bench, part: string) => of.circuit.placement.parts[part];
const over = ({ circuit }: typeof bench) => problemsOf(circuit).filter(({ code }) => code === "part-over-part");

describe("what comes in lands beside what stands there", () => {
  test("where nothing stands it lands where it was asked", () => {
    const next = after(bench, paste(bench, copied(SMALL, ["M1"]), "p1", 50, 60));
    expect(place(next, "M2")).toMatchObject({ x: 50, y: 60 });
  });

  test("a double stands at the same height, with a gap", () => {
    const next = after(bench, duplicateThings(bench, ["F1"], 4, 0));
    expect(place(next, "F2")).toMatchObject({ x: 10, y: 20 });
  });

  test("pasted ten times in one place, all can be seen", () => {
    let next = bench;
    for (let time = 0; time < 10; time++) next = after(next, paste(next, copied(SMALL, ["S1", "F1"]), "p1", 4, 20));
    expect(over(next)).toEqual([]);
    expect(next.circuit.parts).toHaveLength(SMALL.parts.length + 20);
  });

  test("at the edge of the page it lands on it", () => {
    const next = after(bench, duplicateThings(bench, ["L1"], 40, 0));
    expect(place(next, "L3")).toMatchObject({ page: "p1", y: 20 });
  });

  test("on a page with no room it hides nothing", () => {
    const pages = SMALL.pages.map((page) => ({ ...page, widthMm: 230, heightMm: 165 }));
    const narrow = benchFor({ ...SMALL, pages });
    const ids = ["G1", "F1", "S1", "X2", "M1", "L1", "GP1"];
    const next = after(narrow, duplicateThings(narrow, ids, 0, 0));
    expect(next.circuit.parts).toHaveLength(SMALL.parts.length + ids.length);
    expect(place(next, "F2")).not.toEqual(place(next, "F1"));
  });

  test("parts that move together may take each other's places", () => {
    const apart = after(bench, moveThings(bench, ["G1"], 0, -12));
    expect(place(apart, "G1")).toMatchObject({ x: 4, y: 28 });
    expect(codeOf(moveThings(apart, ["G1"], 0, -8))).toBe("part-hidden");
    expect(place(after(apart, moveThings(apart, ["G1", "F1"], 0, -8)), "G1")).toMatchObject({ x: 4, y: 20 });
  });
});
