import { describe, expect, test } from "vitest";
import type { Condition } from "../../core/circuit/circuit.ts";
import { controlsOf } from "../../core/circuit/points.ts";
import { byClaim, controlsByPlace, inCircuitOrder, pageFirst } from "../../renderer/panels/stripControls.ts";
import { type StripRow, stripRow } from "../../renderer/panels/stripRow.ts";
import { VENTS } from "../edit/given.ts";

const KEYS = inCircuitOrder(VENTS).map(({ key }) => key);
const WIDTHS = new Map(KEYS.map((key) => [key, 100]));
const PAGE = "p2";

function row(
  before: StripRow | null,
  condition: Condition,
  about: { recent?: string[]; room?: number; page?: string } = {},
) {
  const hand = { circuit: VENTS, condition, page: about.page ?? PAGE, recent: about.recent ?? [], wanted: [] };
  return stripRow(before, hand, { room: about.room ?? 520, widths: WIDTHS, gap: 0, more: 100 });
}

describe("who has a place in the strip", () => {
  test("the key stands first, and no throw changes the order", () => {
    expect(KEYS[0]).toBe("S1");
    expect([...KEYS].sort()).toEqual(
      controlsOf(VENTS)
        .map(({ key }) => key)
        .sort(),
    );
  });

  test("thrown goes before wanted, wanted before thrown lately", () => {
    const far = KEYS.filter((key) => key !== "S1").slice(-3);
    const [lately = "", wanted = "", thrown = ""] = far;
    const hand = { circuit: VENTS, condition: { set: { [thrown]: "open" } }, page: PAGE, standing: [] };
    const claims = byClaim({ ...hand, recent: [lately], wanted: [wanted] }).map(({ key }) => key);
    expect(claims.slice(0, 4)).toEqual(["S1", thrown, wanted, lately]);
  });

  test("a throw of one that is shown leaves all that is shown where it is", () => {
    const first = row(null, {});
    expect(first.shown).toHaveLength(4);
    for (const key of first.shown) {
      const thrown = row(first, { set: { [key]: "open" } }, { recent: [key] });
      expect(thrown).toBe(first);
      // Back at rest, with all the others thrown since.
      const recent = first.shown.filter((other) => other !== key);
      expect(row(thrown, {}, { recent })).toBe(first);
    }
  });

  test("one that is thrown without a place gets it, and those that stood there stay as far as there is room", () => {
    const first = row(null, {});
    const hidden = KEYS.find((key) => !first.shown.includes(key)) ?? "";
    const next = row(first, { set: { [hidden]: "open" } });
    expect(next.shown).toContain(hidden);
    expect(next.shown).toHaveLength(4);
    expect(first.shown.filter((key) => next.shown.includes(key))).toHaveLength(3);
    // Back at rest it stays too.
    expect(row(next, {}).shown).toEqual(next.shown);
  });

  test("another page or another room is laid out anew", () => {
    const first = row(null, {});
    expect(row(first, {}, { page: "p4" }).shown).not.toEqual(first.shown);
    expect(row(first, {}, { room: 10_000 }).shown).toHaveLength(KEYS.length);
  });

  test("a control of another page fills no room that one of this page is too wide for", () => {
    const far = controlsOf(VENTS).filter(({ part }) => VENTS.placement.parts[part.id]?.page !== PAGE);
    const narrow = far.find(({ key }) => key !== "S1")?.key ?? "";
    const widths = new Map(KEYS.map((key) => [key, key === narrow || key === "S1" ? 50 : 300]));
    const hand = { circuit: VENTS, condition: {}, page: PAGE, recent: [], wanted: [] };
    expect(stripRow(null, hand, { room: 400, widths, gap: 0, more: 100 }).shown).toEqual(["S1"]);
  });
});

describe("the list under More", () => {
  test("has those of this page first, and every other page by number and title", () => {
    const places = controlsByPlace(VENTS, controlsOf(VENTS), PAGE);
    expect(places[0]?.place).toBe("This page");
    expect(places.slice(1).every(({ place }) => /^Page [134], /.test(place))).toBe(true);
    expect(places.flatMap(({ controls }) => controls)).toHaveLength(KEYS.length);
  });

  test("a row that is pushed sideways has the key, this page, then the rest", () => {
    const pages = pageFirst(VENTS, PAGE).map(({ part }) => VENTS.placement.parts[part.id]?.page === PAGE);
    expect(pages.indexOf(false, 1)).toBeGreaterThan(pages.lastIndexOf(true));
  });
});
