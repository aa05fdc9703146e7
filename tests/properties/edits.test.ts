import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Outcome } from "../../core/base/outcome.ts";
import { problemsOf } from "../../core/circuit/check.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { controlsOf } from "../../core/circuit/points.ts";
import { possibleFaults } from "../../core/diagnose/possible.ts";
import { ASSEMBLY_IDS, assembly } from "../../core/edit/assemblies.ts";
import { type Bench, benchFor } from "../../core/edit/bench.ts";
import { addAssembly } from "../../core/edit/commands/addAssembly.ts";
import { addPart } from "../../core/edit/commands/addPart.ts";
import { alignThings } from "../../core/edit/commands/alignThings.ts";
import { distributeThings } from "../../core/edit/commands/distributeThings.ts";
import { duplicateThings } from "../../core/edit/commands/duplicateThings.ts";
import { flipThings } from "../../core/edit/commands/flipThings.ts";
import type { CommandId } from "../../core/edit/commands/index.ts";
import { moveThings } from "../../core/edit/commands/moveThings.ts";
import { noteSeen } from "../../core/edit/commands/noteSeen.ts";
import { paste } from "../../core/edit/commands/paste.ts";
import { plantFault } from "../../core/edit/commands/plantFault.ts";
import { recolourWires } from "../../core/edit/commands/recolourWires.ts";
import { removeThings } from "../../core/edit/commands/removeThings.ts";
import { renameConnector } from "../../core/edit/commands/renameConnector.ts";
import { renamePart } from "../../core/edit/commands/renamePart.ts";
import { renameWire } from "../../core/edit/commands/renameWire.ts";
import { replaceKind } from "../../core/edit/commands/replaceKind.ts";
import { resizeWires } from "../../core/edit/commands/resizeWires.ts";
import { throwControl } from "../../core/edit/commands/throwControl.ts";
import { turnThings } from "../../core/edit/commands/turnThings.ts";
import { wireAcross } from "../../core/edit/commands/wireAcross.ts";
import { connectorSides } from "../../core/edit/connectorSides.ts";
import type { Edit } from "../../core/edit/edit.ts";
import { copied } from "../../core/edit/fragment.ts";
import { type Desk, deskFor, perform, redo, undo } from "../../core/edit/history.ts";
import { liveNow } from "../../core/edit/liveNow.ts";
import { faultText } from "../../core/live/fault.ts";
import { KINDS } from "../../core/parts/catalogue.ts";
import { readCircuit } from "../../schemas/circuit.ts";
import { fragmentText, readFragment } from "../../schemas/fragment.ts";
import { after, expectAlike, expectSame, expectSound, frozen, got, SMALL } from "../edit/given.ts";
import { JOBS_BY_LOT, JOBS_REFUSED } from "./jobsByLot.ts";
import { PRINTED_BY_LOT, PRINTED_REFUSED } from "./printedByLot.ts";

const SAMPLES = ["1-roof-vents", "2-exterior-lights", "6-truck-trailer", "8-wiper"].map((name) =>
  got(readCircuit(readFileSync(new URL(`../../samples/${name}.circuit.json`, import.meta.url)))),
);

/** What a run of lots picks from: whole numbers, taken one after another. */
type Lots = readonly number[];

function drawer(lots: Lots) {
  let at = 0;
  const draw = (): number => lots[at++ % lots.length]!;
  return {
    number: draw,
    one: <T>(list: readonly T[]): T => list[draw() % list.length]!,
    some: <T>(list: readonly T[]): readonly T[] =>
      list.length === 0 ? [] : Array.from({ length: 1 + (draw() % 4) }, () => list[draw() % list.length]!),
  };
}

type Draws = ReturnType<typeof drawer>;
type Make = (bench: Bench, draws: Draws) => Outcome<Edit>;

/** What a command by lot gives where the bench has nothing for it. */
const nothing: Outcome<Edit> = { ok: false, refusal: { code: "not-there", about: {} } };
const parts = ({ circuit }: Bench): readonly string[] => circuit.parts.map(({ id }) => id);
const LINES = ["left", "right", "top", "bottom", "middle-across", "middle-down"] as const;

/** Commands by lot from what the bench has. */
const MAKES: Readonly<Partial<Record<CommandId, Make>>> = {
  "add-part": (bench, { one, number }) =>
    addPart(bench, one(KINDS).name, one(bench.circuit.pages).id, number() % 90, number() % 60, {
      flip: number() % 2 === 0,
    }),
  "add-assembly": (bench, { one, number }) =>
    addAssembly(bench, one(ASSEMBLY_IDS), one(bench.circuit.pages).id, number() % 90, number() % 60),
  "remove-things": (bench, { some, one, number }) => {
    const { wires, connectors } = bench.circuit;
    if (number() % 3 > 0) return removeThings(bench, [one([...parts(bench), ...wires.map(({ id }) => id)])]);
    return removeThings(bench, some([...parts(bench), ...[...wires, ...connectors].map(({ id }) => id)]));
  },
  "move-things": (bench, { some, number }) =>
    moveThings(bench, some(parts(bench)), (number() % 9) - 4, (number() % 9) - 4),
  "turn-things": (bench, { some, one }) => turnThings(bench, some(parts(bench)), one(["clockwise", "back"] as const)),
  "flip-things": (bench, { some }) => flipThings(bench, some(parts(bench))),
  "align-things": (bench, { some, one }) => alignThings(bench, some(parts(bench)), one(LINES)),
  "distribute-things": (bench, { some, one }) =>
    distributeThings(bench, some(parts(bench)), one(["across", "down"] as const)),
  "duplicate-things": (bench, { some, number }) =>
    duplicateThings(bench, some(parts(bench)), number() % 9, number() % 9),
  paste: (bench, { some, one, number }) => {
    const source = one([...SAMPLES, SMALL]);
    const ids = some(source.parts).map(({ id }) => id);
    const fragment = number() % 2 === 0 ? assembly(one(ASSEMBLY_IDS), 12) : copied(source, ids);
    return paste(bench, fragment, one(bench.circuit.pages).id, number() % 60, number() % 40);
  },
  "replace-kind": (bench, { one }) => replaceKind(bench, one(parts(bench)), one(KINDS).name),
  "wire-across": (bench, { one, number }) => {
    const sides = connectorSides(bench.circuit);
    if (sides.length === 0) return nothing;
    return wireAcross(bench, one(sides).id, one(sides).id, number() % 2 === 0 ? "GY" : "");
  },
  "recolour-wires": (bench, { some, one }) =>
    bench.circuit.wires.length === 0
      ? nothing
      : recolourWires(
          bench,
          some(bench.circuit.wires).map(({ id }) => id),
          one(["GY", "RD/BK"]),
        ),
  "resize-wires": (bench, { some, one }) =>
    bench.circuit.wires.length === 0
      ? nothing
      : resizeWires(
          bench,
          some(bench.circuit.wires).map(({ id }) => id),
          one(["0.5", "AWG 16"]),
        ),
  "note-seen": (bench, { some, one }) =>
    bench.circuit.wires.length === 0
      ? nothing
      : noteSeen(
          bench,
          some(bench.circuit.wires).map(({ id }) => id),
          one([null, {}, { colour: "BN" }, { to: "9" }, { from: "1", to: "" }]),
        ),
  "rename-part": (bench, { one, number }) => renamePart(bench, one(parts(bench)), `Q${number() % 30}`),
  "rename-wire": (bench, { one, number }) =>
    bench.circuit.wires.length === 0 ? nothing : renameWire(bench, one(bench.circuit.wires).id, `${number() % 30}`),
  "rename-connector": (bench, { one, number }) =>
    bench.circuit.connectors.length === 0
      ? nothing
      : renameConnector(bench, one(bench.circuit.connectors).id, `C${number() % 30}`),
  ...PRINTED_BY_LOT,
  ...JOBS_BY_LOT,
  "throw-control": (bench, { one }) => {
    const control = one(controlsOf(bench.circuit));
    return control ? throwControl(bench, control.key, one(control.control.positions).name) : nothing;
  },
  "plant-fault": (bench, { one }) => {
    const suspect = one(possibleFaults(bench.circuit));
    return suspect ? plantFault(bench, faultText(suspect.faults[0]!)) : nothing;
  },
};

// ---------------------------------------------------------------- what may not get worse

/** What is wrong with the supply follows from what is there: a lamp that is drawn has no feed yet. */
const OF_SUPPLY = [
  "no-battery",
  "no-supply",
  "no-return",
  "load-bridged",
  "references-many",
  "battery-shorted",
  "batteries-in-a-ring",
  "batteries-facing",
];
/** Commands that change nothing which current can feel. */
const ONLY_SHOW: readonly string[] = [
  "move-things",
  "turn-things",
  "flip-things",
  "align-things",
  "distribute-things",
  "rename-part",
  "rename-wire",
  "rename-connector",
  ...Object.keys(PRINTED_BY_LOT),
  ...Object.keys(JOBS_BY_LOT),
];

/** Codes of the problems of a circuit, each as often as it is there, but for some. */
function codes(circuit: Circuit, but: readonly string[]): readonly string[] {
  const found = problemsOf(circuit).filter(({ severity, code }) => severity === "problem" && !but.includes(code));
  return found.map(({ code }) => code).toSorted();
}

/** What may be refused here; any other code would be a command that leaves something dangling. */
const REFUSED = [
  "already-so",
  "id-taken",
  "no-room",
  "not-there",
  "off-the-page",
  "pages-several",
  "part-hidden",
  "parts-few",
  "terminals-lost",
  "wires-none",
  ...PRINTED_REFUSED,
  ...JOBS_REFUSED,
];

function run(start: Circuit, steps: readonly (readonly [string, Lots])[]): void {
  const first = benchFor(start);
  const benches: Bench[] = [first];
  let desk: Desk = deskFor(first);
  for (const [id, lots] of steps) {
    if (desk.bench.circuit.parts.length === 0 && id !== "paste") continue;
    const edit = MAKES[id as CommandId]!(desk.bench, drawer(lots));
    if (!edit.ok) {
      expect(REFUSED).toContain(edit.refusal.code);
      continue;
    }
    const was = desk.bench;
    desk = got(perform(desk, edit.value));
    benches.push(frozen(desk.bench));
    expectSound(desk.bench);
    const but = ONLY_SHOW.includes(id) ? [] : OF_SUPPLY;
    if (ONLY_SHOW.includes(id))
      expect(codes(desk.bench.circuit, but), edit.value.name).toEqual(codes(was.circuit, but));
    else expect(codes(desk.bench.circuit, but), edit.value.name).toEqual([]);
    expect(liveNow(desk.bench).shown.wires.size).toBe(desk.bench.circuit.wires.length);
  }
  for (const bench of benches.slice(0, -1).toReversed()) {
    desk = got(undo(desk));
    expectSame(desk.bench, bench);
  }
  for (const bench of benches.slice(1)) {
    desk = got(redo(desk));
    expectSame(desk.bench, bench);
  }
}

const lots = fc.array(fc.nat(1_000_000), { minLength: 12, maxLength: 12 });
const steps = fc.array(fc.tuple(fc.constantFrom(...Object.keys(MAKES)), lots), { minLength: 1, maxLength: 30 });

describe("any drawing commands in any order", () => {
  test.each([
    ["a small circuit", SMALL, 150],
    ...SAMPLES.map((sample, index) => [sample.title, sample, index === 0 ? 12 : 6] as const),
  ] as const)(
    "%s: stays a circuit that a file may hold, with nothing dangling; undo and redo give the same bytes",
    (_, circuit, numRuns) => {
      expect(codes(circuit, OF_SUPPLY)).toEqual([]);
      fc.assert(
        fc.property(steps, (taken) => run(circuit, taken)),
        { seed: 11, numRuns },
      );
    },
  );
});

// ---------------------------------------------------------------- copies

/** A circuit of the same volts and pages with nothing in it. */
function emptied(circuit: Circuit): Circuit {
  const placement = { parts: {}, wires: {} };
  const nothing = { parts: [], wires: [], connectors: [], access: [], reach: {}, checks: [], scenes: [] };
  return { ...circuit, ...nothing, placement, pages: [{ id: "all", title: "", widthMm: 5_000, heightMm: 5_000 }] };
}

/** About half of the parts, all batteries and grounds among them so that something is alive. */
function half(circuit: Circuit, picks: readonly boolean[]): readonly string[] {
  const always = ["battery", "ground", "fuse"];
  return circuit.parts
    .filter(({ kind }, index) => always.includes(kind) || picks[index % picks.length])
    .map(({ id }) => id);
}

const picks = fc.array(fc.boolean(), { minLength: 7, maxLength: 61 });

describe.each([SMALL, ...SAMPLES].map((circuit) => [circuit.title, circuit] as const))("copies of %s", (_, circuit) => {
  const start = benchFor(circuit);
  const kept = (ids: readonly string[]): Bench => {
    const others = circuit.parts.filter(({ id }) => !ids.includes(id)).map(({ id }) => id);
    return others.length === 0 ? start : after(start, removeThings(start, others));
  };

  test("pasted into an empty circuit live as the parts alone do, in every position of one control", () => {
    let alive = 0;
    fc.assert(
      fc.property(picks, fc.nat(1_000), (chosen, pick) => {
        const ids = half(circuit, chosen);
        const empty = benchFor(emptied(circuit));
        let [alone, pasted] = [kept(ids), after(empty, paste(empty, copied(circuit, ids), "all", 0, 0))];
        // A plug that also carried what stays behind is not copied: in the original, its pins go on joining.
        const plugs = alone.circuit.connectors.filter(({ id }) =>
          pasted.circuit.connectors.every((each) => each.id !== id),
        );
        if (plugs.length > 0)
          alone = after(
            alone,
            removeThings(
              alone,
              plugs.map(({ id }) => id),
            ),
          );
        const controls = controlsOf(alone.circuit);
        const control = controls[pick % Math.max(1, controls.length)];
        for (const { name } of control?.control.positions.slice(1) ?? []) {
          alone = after(alone, throwControl(alone, control!.key, name));
          pasted = after(pasted, throwControl(pasted, control!.key, name));
          expectAlike(liveNow(pasted).now, liveNow(alone).now);
        }
        expectAlike(liveNow(pasted).now, liveNow(alone).now);
        if ([...liveNow(pasted).now.wires.values()].some(({ state }) => state.includes("powered"))) alive++;
      }),
      { seed: 5, numRuns: 25 },
    );
    expect(alive).toBeGreaterThan(5);
  });

  test("come back from their text", () => {
    fc.assert(
      fc.property(picks, (chosen) => {
        const fragment = copied(circuit, half(circuit, chosen));
        expect(got(readFragment(fragmentText(fragment)))).toEqual(fragment);
      }),
      { seed: 5, numRuns: 25 },
    );
  });
});
