import fc from "fast-check";
import type { AccessGroup, Circuit, Condition } from "../../core/circuit/circuit.ts";
import type { PositionTable } from "../../core/diagnose/positionTable.ts";
import type { Expected, ProbeOrder, Step } from "../../core/diagnose/step.ts";
import { step, suspect, tableCell, VENT_CIRCUIT } from "./fixtures.ts";

const WORDS = [
  "feed",
  "rest",
  "X5-4",
  "12.6 V",
  "through",
  "the",
  "master",
  "illuminated",
  "battery −",
  "0.3 – 0.7",
  "Rückfahrscheinwerfer",
];

/** A label of at most this many characters, with long names among its words. */
export function label(most: number): fc.Arbitrary<string> {
  const word = fc.oneof(
    { arbitrary: fc.constantFrom(...WORDS), weight: 5 },
    { arbitrary: fc.constant("N".repeat(40)), weight: 1 },
  );
  return fc.array(word, { minLength: 1, maxLength: 30 }).map((words) => words.join(" ").slice(0, most).trim());
}

const COLOURS = ["GN", "YE/BK", "BN/WH", "OG/BK", "BK/RD/WH", "no such colour", "VT"];
const colour = fc.option(fc.constantFrom(...COLOURS), { nil: null });

/** Numbers of cavities of a plug this wide, some of them long. */
function rowsOf(columns: number, rows: number, isLong: boolean): readonly (readonly string[])[] {
  return Array.from({ length: rows }, (_, r) =>
    Array.from({ length: columns }, (_, c) => `${isLong ? "CAN_HIGH_" : ""}${r * columns + c + 1}`),
  );
}

const access: fc.Arbitrary<readonly AccessGroup[]> = fc
  .array(
    fc.record({
      label: label(160),
      minutes: fc.integer({ min: 0, max: 90 }),
      cautions: fc.array(label(160), { maxLength: 2 }),
    }),
    {
      minLength: 1,
      maxLength: 4,
    },
  )
  .map((groups) => groups.map((group, i) => ({ ...group, id: `g${i}`, ...(i > 1 && { after: ["g1"] }) })));

/** The vent circuit with names as long as a file may hold, more trim, and a plug X9 of any shape. */
export const circuits: fc.Arbitrary<Circuit> = fc
  .record({
    vehicle: label(160),
    title: label(160),
    part: label(160),
    cautions: fc.array(label(160), { maxLength: 14 }),
    access,
    columns: fc.integer({ min: 1, max: 40 }),
    rows: fc.integer({ min: 1, max: 6 }),
    isLong: fc.boolean(),
  })
  .map(({ vehicle, title, part, cautions, access, columns, rows, isLong }) => {
    const places = rowsOf(columns, rows, isLong);
    return {
      ...VENT_CIRCUIT,
      vehicle,
      title,
      cautions,
      access: [...VENT_CIRCUIT.access, ...access],
      parts: [
        ...VENT_CIRCUIT.parts.map((each) => (each.id === "M3" ? { ...each, label: part } : each)),
        { id: "U9", kind: "module", label: part, terminals: places.flat() },
      ],
      connectors: [
        ...VENT_CIRCUIT.connectors,
        { id: "X9", rows: places, cavities: Object.fromEntries(places.flat().map((name) => [name, `U9.${name}`])) },
      ],
      wires: [
        ...VENT_CIRCUIT.wires,
        ...places
          .flat()
          .filter((_, i) => i % 3 !== 1)
          .map((name, i) => ({ id: `V${i}`, from: `X9-${name}`, to: `SP1.${i + 4}`, colour: "BN/WH" })),
      ],
    };
  });

const expected: fc.Arbitrary<Expected> = fc
  .record({
    low: fc.double({ min: -30, max: 30, noNaN: true }),
    wide: fc.double({ min: 0, max: 3, noNaN: true }),
    lamp: fc.constantFrom(null, "bright" as const, "dim" as const, "dark" as const),
  })
  .map(({ low, wide, lamp }) => ({ low, high: low + wide, unit: "V", lamp, word: null }));

const conditions: fc.Arbitrary<Condition> = fc.record(
  {
    set: fc.constantFrom<Readonly<Record<string, string>>>(
      { S1: "on" },
      { S1: "on", S5: "open" },
      { S1: "start", "S2.middle": "close", "S2.lock-out": "on" },
    ),
    apart: fc.constantFrom(["X5"], ["X5", "X32"]),
    out: fc.constant(["F3"]),
    batteryOff: fc.boolean(),
    running: fc.boolean(),
  },
  { requiredKeys: [] },
);

function pointsOf(circuit: Circuit): readonly string[] {
  const wide = circuit.connectors.find(({ id }) => id === "X9")!.rows.flat();
  const far = [wide[0]!, wide[Math.floor(wide.length / 2)]!, wide.at(-1)!].map((name) => `X9-${name}`);
  return ["X5-4", "X5-3", "X32-1a", "X32-2b", "M3.1", "SP1.1", "GP2.stud", "S2.1", "Z8-1", ...far];
}

function steps(circuit: Circuit): fc.Arbitrary<Step> {
  const places = [...circuit.access.map(({ id }) => id), null, null];
  const point = fc.constantFrom(...pointsOf(circuit));
  return fc
    .record({
      point,
      black: fc.oneof(fc.constantFrom("battery -", "battery +", "X5-5"), point),
      colour,
      instrument: fc.constantFrom("meter volts" as const, "4 A lamp" as const, "0.25 A lamp" as const),
      lampTo: fc.constantFrom(null, "battery +" as const, "battery -" as const),
      isSweep: fc.boolean(),
      settings: fc.array(fc.record({ condition: conditions, position: label(40), expect: expected }), {
        minLength: 1,
        maxLength: 20,
      }),
      access: fc.constantFrom(...places),
      hands: fc.constantFrom(1 as const, 2 as const),
      why: label(300),
      cautions: fc.array(label(160), { maxLength: 2 }),
      words: fc.array(label(60), { maxLength: 3 }),
    })
    .map(({ isSweep, settings, words, ...rest }) =>
      step(1, rest.point, {
        ...rest,
        sweepOf: isSweep ? "S5" : null,
        settings: isSweep ? settings : settings.slice(0, 1),
        outcomes: words.map((word) => ({
          word,
          limit: "",
          probability: 0.3,
          leaves: [suspect("M3", "seized"), suspect("W14", "open")],
          windows: [],
        })),
      }),
    );
}

/** A circuit with an order of up to 40 rows of any sort. */
export const orders: fc.Arbitrary<{
  readonly circuit: Circuit;
  readonly order: ProbeOrder;
  readonly complaintLabel: string;
}> = circuits.chain((circuit) =>
  fc
    .record({
      steps: fc.array(steps(circuit), { minLength: 1, maxLength: 40 }),
      complaintLabel: label(160),
      cleared: fc.subarray(["G1", "F1", "F3", "W13", "W14", "S2", "X5-1", "GP2"]),
    })
    .map(({ steps, complaintLabel, cleared }) => ({
      circuit,
      complaintLabel,
      order: {
        complaint: "Middle roof vent opens",
        suspects: [suspect("M3", "seized", 0.4)],
        cleared: cleared.map((id) => suspect(id, "open", 0.001)),
        steps: steps.map((each, i) => ({ ...each, number: i + 1 })),
        minutes: 20,
        clearedBy: [],
        before: [],
        elsewhere: 0.02,
        progress: "open" as const,
        expectedMinutes: 12,
        detours: [],
        clashes: [],
        jointly: [],
        beforehand: [],
      },
    })),
);

/** A circuit with a position table of up to 20 positions and any number of pins. */
export const tables: fc.Arbitrary<{ readonly circuit: Circuit; readonly table: PositionTable }> = circuits.chain(
  (circuit) =>
    fc
      .record({
        connector: fc.constantFrom("X5", "X9", "X32"),
        columns: fc.array(
          fc.record({
            title: label(40),
            under: label(20),
            plugged: fc.boolean(),
            merged: fc.array(label(60), { maxLength: 5 }),
          }),
          { minLength: 2, maxLength: 20 },
        ),
        leads: fc.array(label(60), { minLength: 1, maxLength: 4 }),
        cell: fc.constantFrom("f", "p12.6", "g0.06", "p-0.35", "g128.4"),
        colour,
      })
      .map(({ connector, columns, leads, cell, colour }) => {
        const names = circuit.connectors.find(({ id }) => id === connector)!.rows.flat();
        const pins = connector === "X32" ? names.flatMap((name) => [`${name}a`, `${name}b`]) : names.slice(0, 30);
        return {
          circuit,
          table: {
            connector,
            columns: columns.map((each) => ({ ...each, condition: {} })),
            rows: pins.map((pin, i) => ({
              point: `${connector}-${pin}`,
              pin,
              colour,
              leadsTo: leads[i % leads.length]!,
              cells: columns.map(() => tableCell(cell)),
            })),
          },
        };
      }),
);
