import { describe, expect, test } from "vitest";
import { ontoPage, underlayAt, underlaysOf } from "../../core/circuit/underlays.ts";
import { projected, rectangle } from "../../core/drawing/projection.ts";
import { benchFor } from "../../core/edit/bench.ts";
import { bringBack } from "../../core/edit/commands/bringBack.ts";
import { cropUnderlay } from "../../core/edit/commands/cropUnderlay.ts";
import { duplicateThings } from "../../core/edit/commands/duplicateThings.ts";
import { moveUnderlay } from "../../core/edit/commands/moveUnderlay.ts";
import { placeUnderlay } from "../../core/edit/commands/placeUnderlay.ts";
import { removePage } from "../../core/edit/commands/removePage.ts";
import { removeUnderlay } from "../../core/edit/commands/removeUnderlay.ts";
import { renamePart } from "../../core/edit/commands/renamePart.ts";
import { showUnderlay } from "../../core/edit/commands/showUnderlay.ts";
import { copied } from "../../core/edit/fragment.ts";
import { liveNow } from "../../core/edit/liveNow.ts";
import { printedOn } from "../circuit/printed.ts";
import { after, got, SMALL } from "./given.ts";

const circuit = printedOn(SMALL);
const bench = benchFor(circuit);
const tieOf = (id: string, { parts } = circuit) => parts.find((part) => part.id === id)?.printed;

describe("what is tied to a printed page", () => {
  test("is tied no more when the printed page goes, by itself or with its page", () => {
    expect(tieOf("S1", after(bench, removeUnderlay(bench, "u1")).circuit)).toBeUndefined();
    const apart = benchFor({ ...circuit, pages: [{ ...SMALL.pages[0]!, id: "p9" }, ...circuit.pages] });
    const gone = after(apart, removePage(apart, circuit.pages[0]!.id, "p9")).circuit;
    expect(tieOf("S1", gone)).toBeUndefined();
    expect(underlaysOf(gone)).toEqual([]);
  });

  test("stays when another printed page goes, and under another name", () => {
    expect(tieOf("S1", after(bench, removeUnderlay(bench, "u2")).circuit)).toBeDefined();
    expect(tieOf("S77", after(bench, renamePart(bench, "S1", "S77")).circuit)).toEqual(tieOf("S1"));
  });

  test("is not what its copies are tied to", () => {
    const twice = after(bench, duplicateThings(bench, ["S1"], 4, 4)).circuit;
    expect(twice.parts.filter(({ printed }) => printed)).toHaveLength(1);
    expect(copied(circuit, ["S1"]).parts.every(({ printed }) => printed === undefined)).toBe(true);
  });

  test("comes back with an earlier version", () => {
    const gone = after(bench, removeUnderlay(bench, "u1"));
    expect(after(gone, bringBack(gone, circuit, "Bring back")).circuit).toEqual(circuit);
  });
});

describe("a crop", () => {
  test("of a photograph laid askew leaves every spot of it where it lies", () => {
    const askew = after(
      bench,
      placeUnderlay(bench, "u2", [
        [10, 20],
        [250, 5],
        [270, 190],
        [30, 160],
      ]),
    );
    const before = ontoPage(underlayAt(askew.circuit, "u2")!.underlay);
    const cropped = after(askew, cropUnderlay(askew, "u2", { left: 0.2, top: 0.1, right: 0.7, bottom: 0.9 }));
    const later = ontoPage(underlayAt(cropped.circuit, "u2")!.underlay);
    for (const spot of [
      [500, 300],
      [1_000, 700],
      [1_300, 1_200],
    ] as const) {
      const [[x, y], [u, v]] = [projected(before, spot), projected(later, spot)];
      expect(Math.hypot(x - u, y - v)).toBeLessThan(0.02);
    }
    const whole = after(cropped, cropUnderlay(cropped, "u2", null));
    expect(underlayAt(whole.circuit, "u2")!.underlay.cut).toBeUndefined();
  });
});

test("what is printed under the drawing solves nothing anew", () => {
  const { shown } = liveNow(bench);
  const moved = after(bench, moveUnderlay(bench, "u1", 3, 4));
  const faded = after(moved, showUnderlay(moved, "u1", { opacity: 0.1 }));
  const laid = after(faded, placeUnderlay(faded, "u2", rectangle(0, 0, 100, 75)));
  expect(liveNow(laid).shown).toBe(shown);
  expect(got(removeUnderlay(laid, "u2")).changes).toHaveLength(1);
});
