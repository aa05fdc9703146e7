import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { netsOf } from "../../core/circuit/nets.ts";
import { boxesOn, hides } from "../../core/circuit/overlap.ts";
import { partAt } from "../../core/circuit/points.ts";
import { gridUnitsOf } from "../../core/drawing/scale.ts";
import { type Bench, benchFor } from "../../core/edit/bench.ts";
import { mergePages } from "../../core/edit/commands/mergePages.ts";
import { plantFault } from "../../core/edit/commands/plantFault.ts";
import { recolourWire } from "../../core/edit/commands/recolourWire.ts";
import { apply } from "../../core/edit/edit.ts";
import { liveNow } from "../../core/edit/liveNow.ts";
import { liveOf } from "../../core/live/live.ts";
import { readCircuit } from "../../schemas/circuit.ts";
import { after, got, VENTS } from "./given.ts";

const FOLDER = new URL("../../samples/", import.meta.url);
const SAMPLES = readdirSync(FOLDER)
  .filter((name) => name.endsWith(".circuit.json"))
  .map((name) => [name, got(readCircuit(readFileSync(new URL(name, FOLDER))))] as const)
  .filter(([, circuit]) => circuit.pages.length > 1);

const isLink = (circuit: Circuit, point: string): boolean =>
  partAt(circuit, point.replace(/\.[^.]+$/, ""))?.kind === "page-link";

/** Nets as the points that are in them, page links left out. */
function nets(circuit: Circuit): readonly string[] {
  return netsOf(circuit)
    .map(({ points }) =>
      points
        .filter((point) => !isLink(circuit, point))
        .sort()
        .join(" "),
    )
    .filter((words) => words !== "")
    .sort();
}

/** What every point but a page link is, and its volts to a millivolt. */
function states(circuit: Circuit, condition: Circuit["checks"][number]["condition"]): readonly string[] {
  return [...liveOf(circuit, condition).points]
    .filter(([point]) => !isLink(circuit, point))
    .map(([point, { state, volts }]) => `${point} ${state} ${volts?.toFixed(3)}`)
    .sort();
}

/** Every page merged into the first, one by one. */
function mergedAll(circuit: Circuit): Bench {
  const [first, ...others] = circuit.pages;
  return others.reduce((bench, { id }) => after(bench, mergePages(bench, id, first!.id)), benchFor(circuit));
}

describe.each(SAMPLES)("%s on one page", (_, circuit) => {
  const merged = mergedAll(circuit).circuit;

  test("has the nets and in every check and scene the states that it had", () => {
    expect(merged.pages).toHaveLength(1);
    expect(nets(merged)).toEqual(nets(circuit));
    for (const { condition } of [...circuit.checks, ...circuit.scenes])
      expect(states(merged, condition)).toEqual(states(circuit, condition));
    expect(merged.checks).toEqual(circuit.checks);
    expect(merged.scenes).toEqual(circuit.scenes);
  });

  test("has every part on the page and none over another that was not so before", () => {
    const [page] = merged.pages;
    const boxes = boxesOn(merged, page!.id);
    for (const { box } of boxes) {
      expect(Math.min(box.left, box.top)).toBeGreaterThanOrEqual(0);
      expect(box.right).toBeLessThanOrEqual(gridUnitsOf(page!.widthMm));
      expect(box.bottom).toBeLessThanOrEqual(gridUnitsOf(page!.heightMm));
    }
    const hidden = boxes.filter((one) => boxes.some((other) => other !== one && hides(one.box, other.box)));
    expect(hidden.map(({ id }) => id)).toEqual([]);
  });
});

describe("two pages made one", () => {
  const vents = benchFor(VENTS);
  const feeds = after(vents, mergePages(vents, "p1", "p2"));
  const has = ({ circuit }: Bench, id: string): boolean => partAt(circuit, id) !== undefined;

  test("links of the two alone become the wire they stood for, as long as both; those to a third page stay", () => {
    const [w3, w4] = ["W3", "W4"].map((id) => VENTS.wires.find((wire) => wire.id === id)!);
    const joined = feeds.circuit.wires.filter(({ id }) => id === "W3" || id === "W4");
    expect(joined).toHaveLength(1);
    expect([joined[0]!.from, joined[0]!.to].sort()).toEqual(["F4.1", "K1.87"]);
    expect(joined[0]!.metres).toBeCloseTo(w3!.metres! + w4!.metres!, 9);
    expect(["L1", "L3"].some((id) => has(feeds, id))).toBe(false);
    expect(has(feeds, "L2")).toBe(true);
    expect(liveNow(feeds).shown.points.size).toBe(liveNow(vents).shown.points.size - 2);
  });

  test("links stay where the wires at them are not alike, or one has a fault", () => {
    const other = after(vents, recolourWire(vents, "W4", "YE"));
    expect(has(after(other, mergePages(other, "p1", "p2")), "L1")).toBe(true);
    const faulty = after(vents, plantFault(vents, "W3:open"));
    const kept = after(faulty, mergePages(faulty, "p1", "p2"));
    expect(has(kept, "L3")).toBe(true);
    expect(kept.faults).toEqual(faulty.faults);
  });

  test("is undone whole", () => {
    const edit = got(mergePages(vents, "p1", "p2"));
    const { bench, inverse } = got(apply(vents, edit));
    expect(got(apply(bench, inverse)).bench).toEqual(vents);
  });
});
