import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { problemsOf } from "../../core/circuit/check.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { emptyCircuit } from "../../core/circuit/emptyCircuit.ts";
import { netsOf } from "../../core/circuit/nets.ts";
import { terminalPoint, terminalsOf } from "../../core/circuit/points.ts";
import { sheetArea } from "../../core/circuit/sheetArea.ts";
import { sheetPage } from "../../core/circuit/sheetPage.ts";
import { overlaps } from "../../core/circuit/sheetRoom.ts";
import { compareTidiness, sumOf, tidinessOf } from "../../core/circuit/tidiness.ts";
import { partsToArrange } from "../../core/edit/arranging.ts";
import { benchFor } from "../../core/edit/bench.ts";
import { arrangeParts } from "../../core/edit/commands/arrangeParts.ts";
import { pinParts } from "../../core/edit/commands/pinParts.ts";
import { apply } from "../../core/edit/edit.ts";
import { liveOf } from "../../core/live/live.ts";
import { KINDS } from "../../core/parts/catalogue.ts";
import type { Part } from "../../core/parts/kind.ts";
import { arranged } from "../../renderer/arrange/arrange.ts";
import { readCircuit } from "../../schemas/circuit.ts";
import { after, codeOf, expectSame, expectSound, got, SMALL } from "../edit/given.ts";
import { isLong } from "../long.ts";
import { lotsOf } from "../lots.ts";
import { scattered } from "../scattered.ts";
import { draftingHere } from "./drafting.ts";

const SAMPLES = new URL("../../samples/", import.meta.url);
const PAGES = readdirSync(SAMPLES)
  .filter((name) => name.endsWith(".circuit.json"))
  .flatMap((name) => {
    const circuit = got(readCircuit(readFileSync(new URL(name, SAMPLES))));
    return circuit.pages.map(({ id }) => ({ name: name.split(".")[0]!, page: id, circuit }));
  });
const SEED = 7;

function outlines(circuit: Circuit, page: string) {
  return sheetPage(circuit, page, "iec").parts.map(({ part, placed, rest }) => ({
    id: part.id,
    box: placed(rest).outline,
  }));
}

/** A circuit by lot: parts of any kind on one page, wires between any of their terminals. */
function circuitByLot(seed: number): Circuit {
  const lots = lotsOf(seed);
  const bare = emptyCircuit(`By lot ${seed}`);
  const parts = Array.from({ length: lots.upTo(7) + 4 }, (_, index): Part => {
    return { id: `Q${index + 1}`, kind: lots.oneOf(KINDS).name };
  });
  const points = parts.flatMap((part) => terminalsOf(bare, part).map((terminal) => terminalPoint(part, terminal)));
  const wires = Array.from({ length: parts.length * 2 }, (_, index) => {
    return { id: `W${index + 1}`, from: lots.oneOf(points), to: lots.oneOf(points) };
  }).filter(({ from, to }) => from !== to);
  const places = parts.map(({ id }, index) => [id, { page: "p1", x: 10 + 4 * index, y: 40 }] as const);
  return { ...bare, parts, wires, placement: { parts: Object.fromEntries(places), wires: {} } };
}

test.each(isLong ? [1, 2, 3, 4, 5, 6] : [1, 2, 3])(
  "a circuit by lot (%i) keeps its nets and live state",
  async (seed) => {
    const circuit = scattered(circuitByLot(seed), "p1", seed);
    const bench = benchFor(circuit);
    const parts = got(partsToArrange(circuit, "p1", "page", []));
    const attempt = await arranged(draftingHere(), { bench, page: "p1", parts }, () => undefined);
    const { bench: next } = got(apply(bench, got(arrangeParts(bench, attempt!.places))));
    expectSound(next);
    expect(netsOf(next.circuit)).toEqual(netsOf(circuit));
    expect([...liveOf(next.circuit, {}).points]).toEqual([...liveOf(circuit, {}).points]);
    expect(compareTidiness(tidinessOf(next.circuit, "p1"), tidinessOf(circuit, "p1"))).toBeLessThan(0);
  },
);

describe("what is arranged", () => {
  const bench = benchFor(SMALL);

  test("is the page, what is chosen of it, or what lies on others or off the room for the drawing", () => {
    const standing = got(partsToArrange(SMALL, "p1", "page", []));
    expect(standing.every((id) => SMALL.placement.parts[id]?.page === "p1")).toBe(true);
    expect(got(partsToArrange(SMALL, "p1", "chosen", ["M1", "L2"]))).toEqual(["M1"]);
    expect(codeOf(partsToArrange(SMALL, "p1", "crowded", []))).toBe("nothing-to-arrange");
    const place = SMALL.placement.parts.F1!;
    const onF1 = { ...SMALL.placement.parts, M1: { ...SMALL.placement.parts.M1!, x: place.x, y: place.y } };
    const crowded = { ...SMALL, placement: { ...SMALL.placement, parts: onF1 } };
    expect(got(partsToArrange(crowded, "p1", "crowded", []))).toHaveLength(1);
  });

  test("is never what is pinned", () => {
    const pinned = after(bench, pinParts(bench, ["M1"], true)).circuit;
    expect(got(partsToArrange(pinned, "p1", "page", []))).not.toContain("M1");
    expect(codeOf(partsToArrange(pinned, "p1", "chosen", ["M1"]))).toBe("all-pinned");
  });
});

describe.each(PAGES)("$name $page, scattered and arranged", ({ page, circuit }) => {
  test("is the same circuit, drawn better, on the page, and pinned parts stayed", async () => {
    const first = outlines(circuit, page)[0]!.id;
    const pinned = after(benchFor(circuit), pinParts(benchFor(circuit), [first], true));
    const bench = benchFor(scattered(pinned.circuit, page, SEED));
    const parts = got(partsToArrange(bench.circuit, page, "page", []));
    expect(parts).not.toContain(first);
    const attempts: number[] = [];
    const attempt = await arranged(draftingHere(), { bench, page, parts }, (number) => attempts.push(number));
    expect(attempts).toEqual([1, 2, 3, 4]);
    const edit = got(arrangeParts(bench, attempt!.places));
    const { bench: next, inverse } = got(apply(bench, edit));
    expectSound(next);
    expectSame(got(apply(next, inverse)).bench, bench);

    const { drawing } = sheetArea(circuit.pages.find(({ id }) => id === page)!);
    const boxes = outlines(next.circuit, page);
    for (const [index, { id, box }] of boxes.entries()) {
      if (id === first) continue;
      expect(box.left >= drawing.left && box.right <= drawing.right, id).toBe(true);
      expect(box.top >= drawing.top && box.bottom <= drawing.bottom, id).toBe(true);
      for (const other of boxes.slice(0, index)) expect(overlaps(box, other.box), `${id} ${other.id}`).toBe(false);
    }
    expect(next.circuit.placement.parts[first]).toEqual(bench.circuit.placement.parts[first]);

    expect(problemsOf(next.circuit)).toEqual(problemsOf(circuit));
    expect(netsOf(next.circuit)).toEqual(netsOf(circuit));
    for (const { condition } of circuit.checks) {
      const [now, was] = [liveOf(next.circuit, condition), liveOf(circuit, condition)];
      expect([...now.points]).toEqual([...was.points]);
      expect([...now.parts]).toEqual([...was.parts]);
    }

    const [thrown, tidy] = [tidinessOf(bench.circuit, page), tidinessOf(next.circuit, page)];
    expect(tidy).toEqual(attempt!.compared.after);
    expect(compareTidiness(tidy, thrown)).toBeLessThan(0);
    // As a floor under the layouts: even made in haste, a big page loses a quarter of what was thrown about.
    if (sumOf(thrown) > 40) expect(sumOf(tidy)).toBeLessThan(0.75 * sumOf(thrown));
  });
});
