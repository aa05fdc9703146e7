import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { controlsOf } from "../../core/circuit/points.ts";
import { sheetOf } from "../../core/circuit/sheet.ts";
import { layoutOf } from "../../core/circuit/sheetLayout.ts";
import type { Mark } from "../../core/drawing/mark.ts";
import { liveOf } from "../../core/live/live.ts";
import { gridCircuit } from "../bench/window/gridCircuit.ts";
import { trials } from "../long.ts";
import { unknownPage } from "./unknownPage.ts";
import { VENT } from "./ventFixture.ts";

const edit = fc.oneof(
  fc.record({
    is: fc.constant("move" as const),
    which: fc.nat(99),
    by: fc.tuple(fc.integer({ min: -6, max: 6 }), fc.integer({ min: -6, max: 6 })),
  }),
  fc.record({ is: fc.constant("turn" as const), which: fc.nat(99) }),
  fc.record({
    is: fc.constant("label" as const),
    which: fc.nat(99),
    label: fc.constantFrom("", "Fan", "Rear vent motor"),
  }),
  fc.record({ is: fc.constant("cut" as const), which: fc.nat(99) }),
  fc.record({ is: fc.constant("remove" as const), which: fc.nat(99) }),
  fc.record({ is: fc.constant("bring to front" as const), which: fc.nat(99) }),
);
type Edit = typeof edit extends fc.Arbitrary<infer T> ? T : never;

function edited(circuit: Circuit, change: Edit): Circuit {
  const { parts, wires, placement } = circuit;
  const part = parts[change.which % parts.length]!;
  const place = placement.parts[part.id];
  const placed = (made: typeof place): Circuit =>
    made ? { ...circuit, placement: { ...placement, parts: { ...placement.parts, [part.id]: made } } } : circuit;
  const others = parts.filter((each) => each !== part);
  switch (change.is) {
    case "move":
      return placed(place && { ...place, x: place.x + change.by[0], y: place.y + change.by[1] });
    case "turn":
      return placed(place && { ...place, turn: place.turn === 90 ? 0 : 90 });
    case "label":
      return { ...circuit, parts: parts.map((each) => (each === part ? { ...part, label: change.label } : each)) };
    case "cut":
      return { ...circuit, wires: wires.toSpliced(change.which % wires.length, 1) };
    case "remove": {
      const isOn = (point: string) => point.startsWith(`${part.id}.`) || point.startsWith(`${part.id}-`);
      return others.length < 3
        ? circuit
        : { ...circuit, parts: others, wires: wires.filter(({ from, to }) => !isOn(from) && !isOn(to)) };
    }
    case "bring to front":
      return { ...circuit, parts: [part, ...others] };
  }
}

/** With every control in its last position, so that current runs. */
function marksOf(circuit: Circuit, zoom: number | undefined): readonly Mark[] {
  const set = Object.fromEntries(controlsOf(circuit).map(({ key, control }) => [key, control.positions.at(-1)!.name]));
  const live = liveOf(circuit, { set });
  const page = circuit.pages[0]!.id;
  const sheet = sheetOf({ circuit, page, live, framed: false, ...(zoom !== undefined && { zoom }) });
  if (!sheet.ok) throw new Error(sheet.refusal.code);
  return sheet.value.marks;
}

describe("a page drawn again", () => {
  test.each([
    ["a small circuit", VENT],
    ["a grid of parts", gridCircuit(24)],
  ])("after any edits %s is drawn as it would be from nothing, on paper and at any zoom", (_, circuit) => {
    fc.assert(
      fc.property(
        fc.array(edit, { minLength: 1, maxLength: 5 }),
        fc.constantFrom(undefined, 1, 0.5, 0.2),
        (edits, zoom) => {
          let now: Circuit = circuit;
          // After whatever was drawn of this page before.
          expect(marksOf(now, zoom)).toEqual(marksOf(unknownPage(now, "p1").circuit, zoom));
          for (const change of edits) {
            now = edited(now, change);
            expect(marksOf(now, zoom)).toEqual(marksOf(unknownPage(now, "p1").circuit, zoom));
          }
        },
      ),
      {
        numRuns: trials(10, 200),
        seed: 5,
        examples: [
          [[{ is: "move", which: 6, by: [0, -5] }], undefined],
          [[{ is: "turn", which: 0 }], 1],
        ],
      },
    );
  });

  test("names and words of terminals far from a part that is moved are the same objects", () => {
    const circuit = gridCircuit(80);
    const { E1: place } = circuit.placement.parts;
    const moved = { ...circuit.placement.parts, E1: { ...place!, x: place!.x - 1 } };
    const [before, after] = [circuit, { ...circuit, placement: { ...circuit.placement, parts: moved } }].map((each) =>
      layoutOf({ circuit: each, page: "p1", zoom: 1 }, each.pages[0]!),
    );
    const others = circuit.parts.filter(({ id }) => before!.names.get(id) !== after!.names.get(id));
    expect(others.map(({ id }) => id)).toContain("E1");
    expect(others.length).toBeLessThan(20);
    expect(
      after!.ways.filter(({ corners }) => !before!.ways.some((way) => way.corners === corners)).length,
    ).toBeLessThan(8);
  });
});
