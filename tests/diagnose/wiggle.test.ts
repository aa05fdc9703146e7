import { describe, expect, it } from "vitest";
import type { Outcome } from "../../core/base/outcome.ts";
import { comesAndGoes } from "../../core/diagnose/comesAndGoes.ts";
import { complaintOf } from "../../core/diagnose/seen.ts";
import { suspectsFor } from "../../core/diagnose/suspects.ts";
import { type Wiggled, type WiggleSheet, wiggleSheet } from "../../core/diagnose/wiggle.ts";
import { readHappens, readSwing, readWiggled } from "../../core/diagnose/wiggleEntry.ts";
import { placeFor } from "../../core/diagnose/wigglePlaces.ts";
import { wiggleSheets } from "../../core/paper/wiggle.ts";
import { SAMPLE_NAMES, sample } from "../samples/onTheBench.ts";

const vents = sample("1-roof-vents");
const check = vents.checks.find(({ id }) => id === "middle-open-own")!;
const complaint = complaintOf(vents, check, "sometimes");
const sheet = (wiggled: readonly Wiggled[] = [], happens: Parameters<typeof wiggleSheet>[3] = []): WiggleSheet =>
  wiggleSheet(vents, complaint, [], happens, wiggled);
const shareOf = ({ rows }: WiggleSheet, id: string): number => rows.find(({ place }) => place.id === id)!.share;
const code = (outcome: Outcome<unknown>): string | null => (outcome.ok ? null : outcome.refusal.code);

describe("a wiggle sheet", () => {
  it("keeps the meter on the load and knows what is good there", () => {
    const { watched } = sheet();
    expect([watched?.red, watched?.black]).toEqual(["M3.1", "M3.2"]);
    expect(watched!.expect.low).toBeGreaterThan(10);
  });

  it.each(SAMPLE_NAMES)("of %s has a row for every place that a suspect sits at, or as many as fit", (name) => {
    const circuit = sample(name);
    const first = circuit.checks[0]!;
    const own = complaintOf(circuit, first, "sometimes");
    const places = new Set(
      suspectsFor(circuit, own).map(({ possible }) => placeFor(circuit, possible.faults[0]!.target).id),
    );
    const { rows } = wiggleSheet(circuit, own, [], [], []);
    expect(rows.length).toBe(Math.min(24, places.size));
    for (const { place } of rows) expect(places).toContain(place.id);
    expect(wiggleSheets({ circuit, wiggle: wiggleSheet(circuit, own, [], ["hot"], []) }).length).toBeGreaterThan(0);
  });

  it("puts first what is most suspect per minute, with trim opened once", () => {
    const { rows } = sheet();
    expect(rows[0]!.share / rows[0]!.minutes).toBeGreaterThan(rows.at(-1)!.share / rows.at(-1)!.minutes);
    expect(
      rows.some(({ place }, index) => rows.slice(0, index).some((before) => before.place.access === place.access)),
    ).toBe(true);
  });

  it("suspects plugs more in the wet, and what hangs loose on bumps", () => {
    expect(shareOf(sheet([], ["wet"]), "X5")).toBeGreaterThan(shareOf(sheet(), "X5"));
    expect(comesAndGoes({ mode: "backed-out" }, ["bumps"])).toBeGreaterThan(comesAndGoes({ mode: "backed-out" }, []));
    expect(comesAndGoes({ mode: "blown" }, [])).toBeLessThan(comesAndGoes({ mode: "corroded" }, []) / 10);
  });

  it("convicts the place whose moving swings the meter beyond the good range", () => {
    const swung = sheet([{ place: "X32", min: 2.1, max: 11.6, when: "bumped" }]);
    const row = swung.rows.find(({ place }) => place.id === "X32")!;
    expect(row.swings).toBe(true);
    expect(row.share).toBeGreaterThan(shareOf(sheet(), "X32") * 3);
    expect(swung.guilty).toBe("X32");
  });

  it("lets go of a place that stayed good, but not for ever", () => {
    const still = sheet([{ place: "X5", min: 11.4, max: 11.6, when: "" }]);
    expect(still.rows.find(({ place }) => place.id === "X5")!.swings).toBe(false);
    expect(shareOf(still, "X5")).toBeLessThan(shareOf(sheet(), "X5"));
    expect(shareOf(still, "X5")).toBeGreaterThan(0);
    expect(still.guilty).toBeNull();
  });

  it("tells of wires between the same two things as one run", () => {
    expect(placeFor(vents, "W16")).toEqual(placeFor(vents, "W17"));
    expect(placeFor(vents, "W16").id).toBe("X32/X5");
    expect(placeFor(vents, "X5-6").id).toBe("X5");
  });
});

describe("what is typed while something is moved", () => {
  it.each([
    ["2.1..11.8", { min: 2.1, max: 11.8, when: "" }],
    ["2,1 .. 11,8 V when wet", { min: 2.1, max: 11.8, when: "when wet" }],
    ["0 to 12", { min: 0, max: 12, when: "" }],
  ])("reads %s", (typed, swing) => {
    const read = readSwing(typed, 12);
    expect(read.ok && read.value).toEqual(swing);
  });
  it.each([
    ["11.8", "wiggle-spelling"],
    ["11.8..2.1", "wiggle-order"],
    ["2..400", "wiggle-high"],
    ["", "wiggle-spelling"],
  ])("refuses %s", (typed, refused) => {
    expect(code(readSwing(typed, 12))).toBe(refused);
  });
  it("reads a place with it, and what brings it on", () => {
    const read = readWiggled("X5/X30 : 2..12 cold", 12);
    expect(read.ok && read.value).toEqual({ place: "X5/X30", min: 2, max: 12, when: "cold" });
    expect(code(readWiggled("2..12", 12))).toBe("wiggle-spelling");
    const when = readHappens("bumps, hot");
    expect(when.ok && when.value).toEqual(["hot", "bumps"]);
    expect(code(readHappens("frost"))).toBe("wiggle-when");
  });
});
