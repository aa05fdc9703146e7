import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { sentence } from "../../core/base/words.ts";
import { problemsOf } from "../../core/circuit/check.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { placeSymbol } from "../../core/circuit/placeSymbol.ts";
import { controlsOf } from "../../core/circuit/points.ts";
import { sheetArea } from "../../core/circuit/sheetArea.ts";
import type { Bounds } from "../../core/drawing/measure.ts";
import { judge } from "../../core/live/judge.ts";
import { liveOf } from "../../core/live/live.ts";
import { kindOf } from "../../core/parts/catalogue.ts";
import { viewOf } from "../../core/parts/view.ts";
import { formatCircuit, readCircuit } from "../../schemas/circuit.ts";

/** Loose ends that a sample is meant to have, `code at`; none unless it stands here. */
const INTENDED: Readonly<Record<string, readonly string[]>> = {};

const FOLDER = new URL("../../samples/", import.meta.url);
const FILES = readdirSync(FOLDER).filter((name) => name.endsWith(".circuit.json"));

function sample(name: string): Circuit {
  const read = readCircuit(readFileSync(new URL(name, FOLDER)));
  if (!read.ok) throw new Error(sentence(read.refusal));
  return read.value;
}

interface Outline {
  readonly id: string;
  readonly box: Bounds;
}

/** Outlines of the symbols of a page, with every contact at rest. */
function outlines(circuit: Circuit, page: string): readonly Outline[] {
  return circuit.parts.flatMap((part) => {
    const place = circuit.placement.parts[part.id];
    const kind = kindOf(part.kind)!;
    if (place?.page !== page) return [];
    const pose = { closed: new Set<string>(), rest: new Set<string>(), state: kind.start };
    const shape = kind.symbol(viewOf(kind, part, circuit.nominalVolts), pose, "iec");
    return [{ id: part.id, box: placeSymbol(shape, place).outline }];
  });
}

const overlap = (a: Bounds, b: Bounds) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

describe.each(FILES)("%s", (name) => {
  const circuit = sample(name);

  test("is written in the canonical way", () => {
    expect(readFileSync(new URL(name, FOLDER), "utf8")).toBe(formatCircuit(circuit));
  });

  test("has no problems, and only the loose ends it is meant to have", () => {
    expect(problemsOf(circuit).map(({ code, at }) => `${code} ${at}`)).toEqual(INTENDED[name] ?? []);
  });

  test.each(circuit.pages.map((page) => [page.title, page] as const))(
    "page %s: no symbols overlap, all are on the sheet",
    (_, page) => {
      const placed = outlines(circuit, page.id);
      const { drawing } = sheetArea(page);
      expect(placed.length).toBeGreaterThan(0);
      for (const [index, one] of placed.entries()) {
        const { left, top, right, bottom } = one.box;
        expect(left >= drawing.left && right <= drawing.right, `${one.id} stands beside the sheet`).toBe(true);
        expect(top >= drawing.top && bottom <= drawing.bottom, `${one.id} stands above or below the sheet`).toBe(true);
        for (const other of placed.slice(index + 1)) {
          expect(overlap(one.box, other.box), `${one.id} lies over ${other.id}`).toBe(false);
        }
      }
    },
  );

  test("does in every function check what is expected of it", () => {
    for (const check of circuit.checks) {
      const load = liveOf(circuit, check.condition).parts.get(check.load);
      expect(`${check.id} ${judge(check, load)}, ${load?.doing}`).toMatch(/ works, (?!dim)/);
    }
  });

  test("settles in every scene", () => {
    for (const scene of circuit.scenes) {
      expect(`${scene.label}: ${liveOf(circuit, scene.condition).settled}`).toBe(`${scene.label}: true`);
    }
  });
});

describe("sample 1, the roof vents", () => {
  const vents = sample("1-roof-vents.circuit.json");

  test("has a check for each vent, from each switch, in each direction", () => {
    const ids = vents.checks.map(({ id }) => id);
    for (const vent of ["front-left", "front-right", "middle", "rear"]) {
      for (const way of ["open-own", "close-own", "open-master", "close-master"])
        expect(ids).toContain(`${vent}-${way}`);
    }
  });

  test("has one handle for the key, five on the panel, four own switches and the rain", () => {
    expect(
      controlsOf(vents)
        .map(({ key }) => key)
        .join(" "),
    ).toBe("S1 S2.lock-out S2.front-left S2.front-right S2.middle S2.rear S3 S4 S5 S6 B1");
  });

  test("uses no green with yellow, which belongs to the mains' protective earth", () => {
    for (const { id, colour } of vents.wires) expect(/GN/.test(colour!) && /YE/.test(colour!), id).toBe(false);
  });

  // The volts that the circuit sheet of the middle vent, opening, prints for this sample: 12.6 V at rest, 3.0 A.
  test.each([
    ["F1.1", 12.56],
    ["F1.2", 12.56],
    ["K1.87", 12.51],
    ["F4.2", 12.49],
    ["X5-6", 12.22],
    ["X5-4", 12.16],
    ["X32-1b", 12.05],
    ["X32-2b", 0.49],
    ["X5-5", 0.38],
    ["X5-2", 0.32],
    ["S2.31", 0.06],
  ])("with the middle vent opening, %s is at %f V", (point, volts) => {
    const live = liveOf(vents, { set: { S1: "on", S5: "open" } });
    expect(live.points.get(point)?.volts).toBeCloseTo(volts, 2);
  });
});
