import fc from "fast-check";
import { expect, test } from "vitest";
import type { Circuit, Wire } from "../../core/circuit/circuit.ts";
import { pointsOf } from "../../core/circuit/points.ts";
import type { Part } from "../../core/parts/kind.ts";
import { formatCircuit, normalised, readCircuit } from "../../schemas/circuit.ts";
import { SMALL } from "../circuit/small.ts";

const SEED = 20_260;

const words = fc.string({ unit: "grapheme", maxLength: 30 });
const metres = fc.double({ min: 0, max: 100, noNaN: true });
const grid = fc.integer({ min: -200, max: 400 });

const settings = fc.oneof(
  fc.record({
    kind: fc.constant("lamp"),
    settings: fc.record({ watts: fc.double({ min: 0.1, max: 250, noNaN: true }) }),
  }),
  fc.record({
    kind: fc.constant("fuse"),
    settings: fc.record({ amps: fc.double({ min: 0.5, max: 500, noNaN: true }) }),
  }),
  fc.record({ kind: fc.constant("motor"), settings: fc.record({ cutOut: fc.boolean() }) }),
  fc.record({ kind: fc.constant("splice"), settings: fc.record({ legs: fc.integer({ min: 2, max: 9 }) }) }),
  fc.record({ kind: fc.constant("connector"), settings: fc.record({ ways: fc.integer({ min: 1, max: 6 }) }) }),
  fc.record({ kind: fc.constant("battery") }),
);

/** Circuits of a few parts, wired at random between any of their points, with some terminals in plugs. */
const circuits: fc.Arbitrary<Circuit> = fc
  .array(fc.tuple(settings, fc.option(words, { nil: undefined })), { minLength: 2, maxLength: 12 })
  .chain((drawn) => {
    const parts = drawn.map(
      ([part, label], index): Part => ({ id: `P${index}`, ...part, ...(label === undefined ? {} : { label }) }),
    );
    const bare: Circuit = {
      ...SMALL,
      parts,
      wires: [],
      placement: { parts: {}, wires: {} },
      connectors: [],
      reach: {},
      checks: [],
      scenes: [],
    };
    const points = pointsOf(bare).map(({ id }) => id);
    const carried = points.filter((id) => id.includes(".")).slice(0, 4);
    const connectors = carried.map((id, index) => ({ id: `Q${index}`, rows: [["7", "", "1"]], cavities: { "7": id } }));
    const wire = fc.record({
      from: fc.constantFrom(...points),
      to: fc.constantFrom(...points),
      metres,
      colour: words.filter((text) => text !== ""),
    });
    return fc
      .record({
        wires: fc.array(wire, { maxLength: 20 }),
        title: words,
        places: fc.array(fc.record({ x: grid, y: grid, flip: fc.boolean() }), {
          minLength: parts.length,
          maxLength: parts.length,
        }),
        bends: fc.array(fc.tuple(grid, grid), { maxLength: 4 }),
      })
      .map(
        ({ wires, title, places, bends }): Circuit => ({
          ...bare,
          title,
          connectors,
          wires: wires.map((each, index): Wire => ({ id: `W${index}`, ...each })),
          placement: {
            parts: Object.fromEntries(parts.map(({ id }, index) => [id, { page: "p1", ...places[index]! }])),
            wires: wires.length === 0 ? {} : { W0: bends },
          },
        }),
      );
  });

test("what is written is read back as the same circuit, and written again as the same bytes", () => {
  fc.assert(
    fc.property(circuits, (circuit) => {
      const text = formatCircuit(circuit);
      const read = readCircuit(text);
      expect(read).toEqual({ ok: true, value: normalised(circuit) });
      const again = read.ok ? formatCircuit(read.value) : "";
      const back = readCircuit(again);
      expect(back.ok && formatCircuit(back.value)).toBe(again);
    }),
    { seed: SEED, numRuns: 150 },
  );
});

test("any bytes and any text give a circuit or a refusal, never an exception", () => {
  const good = formatCircuit(SMALL);
  const cut = fc
    .tuple(fc.nat(good.length), fc.nat(40), fc.string({ maxLength: 6 }))
    .map(([at, length, put]) => good.slice(0, at) + put + good.slice(at + length));
  fc.assert(
    fc.property(fc.oneof(fc.string(), fc.json(), fc.uint8Array({ maxLength: 60 }), cut), (file) => {
      const read = readCircuit(file);
      expect(read.ok || read.refusal.code.length > 0).toBe(true);
    }),
    { seed: SEED, numRuns: 600 },
  );
});
