import { describe, expect, test } from "vitest";
import { BENCH_INSTRUMENTS } from "../../core/base/words/instruments.ts";
import type { Circuit, Condition } from "../../core/circuit/circuit.ts";
import {
  attachmentsOf,
  type Clipped,
  freshInstrument,
  INSTRUMENTS,
  type InstrumentName,
  type LeadsClipped,
} from "../../core/live/instruments/clipped.ts";
import { type Showing, showings } from "../../core/live/instruments/showing.ts";
import { type Live, liveOf } from "../../core/live/live.ts";
import type { Part } from "../../core/parts/kind.ts";
import { ROW } from "../live/vehicle.ts";
import { build } from "../published/build.ts";
import { near } from "../published/near.ts";

const ON: Condition = { set: { S1: "on" } };

/** A circuit with one instrument of the bench clipped on: what it shows, and the live state that it leaves. */
function clippedOn(circuit: Circuit, each: Clipped, condition: Condition = {}): { shown: Showing; live: Live } {
  const attached = attachmentsOf([each], circuit.nominalVolts).map(({ attachment }) => attachment);
  const live = liveOf(circuit, condition, [], attached);
  const read = { circuit, live, now: { condition, states: {} }, faults: [] };
  return { shown: showings([each], read).get(each.id)!, live };
}

const lead = (instrument: LeadsClipped["instrument"], red: string, black = "battery -"): Clipped => ({
  ...(freshInstrument("1", instrument) as LeadsClipped),
  red,
  black,
});

function volts(shown: Showing): number {
  expect(shown).toHaveProperty("volts");
  return "volts" in shown ? shown.volts : Number.NaN;
}

const cell = (volts: number) => ["battery", { volts, internalOhms: 1e-6, soc: 1 }] as const;
const resistor = (ohms: number) => ["resistor", { ohms }] as const;
/** Volts of a cell at rest, by the program's own law: what is published is scaled to them. */
const atRest = (circuit: Circuit): number => liveOf(circuit).points.get("G1.+")!.volts!;

describe("published cases of instruments, read on the bench", () => {
  // Lessons In Electric Circuits, voltmeter impact on measured circuit; a resistor here has 10 megohm at most
  test("39: of two arms of 250 megohm on 24 V the voltmeter shows 0.8889 V on one", () => {
    const chain = Array.from({ length: 50 }, (_, index) => `R${index + 1}`);
    const parts = { G1: cell(24), ...Object.fromEntries(chain.map((id) => [id, resistor(1e7)])) };
    const runs = ["G1.+ R1.1", ...chain.slice(1).map((id, index) => `${chain[index]!}.2 ${id}.1`), "R50.2 G1.-"];
    const circuit = build("Two high arms", 24, parts, runs);
    const { shown } = clippedOn(circuit, lead("voltmeter", "R26.1"));
    near((volts(shown) / atRest(circuit)) * 24, 0.8889, 0.0005);
  });

  // ASE study guide page on the 10 megohm tester
  test("40: it draws 1.20 microampere at 12 V", () => {
    const circuit = build("A voltmeter alone", 12, { G1: cell(12), R1: resistor(1) }, ["G1.+ R1.1"]);
    const { live } = clippedOn(circuit, lead("voltmeter", "R1.2"));
    near((live.clipped[0]!.amps / atRest(circuit)) * 12 * 1e6, 1.2, 0.01);
  });

  // Derived from the loading rule Rs / (Rs + Ri)
  test.each([
    ["41", 1e6, 11.4545],
    ["42", 1e3, 12.5987],
  ])("%s: of 12.6 V through %d ohm it shows %d V", (_case, ohms, wanted) => {
    const circuit = build("Reading through ohms", 12, { G1: cell(12.6), R1: resistor(ohms) }, ["G1.+ R1.1"]);
    const { shown } = clippedOn(circuit, lead("voltmeter", "R1.2"));
    near((volts(shown) / atRest(circuit)) * 12.6, wanted, 0.0005);
  });

  // A vehicle maker's wire and connector repair section, 2021; the last line derived
  test.each([
    [25, true],
    [200, false],
  ])("43: the test lamp through %d ohm lights: %s", (ohms, lights) => {
    const circuit = build("Tester through ohms", 12, { G1: cell(12.6), R1: resistor(ohms) }, ["G1.+ R1.1"]);
    const { shown } = clippedOn(circuit, lead("small-lamp", "R1.2"));
    expect(shown).toMatchObject({ shows: "lamp" });
    expect("light" in shown && shown.light !== "dark").toBe(lights);
  });
});

/**
 * Each instrument as a part that is drawn: between the same two places the solver must find the same. An ohmmeter has a test
 * current of its own and a clamp adds nothing.
 */
const DRAWN: Readonly<Record<InstrumentName, Omit<Part, "id"> | null>> = {
  voltmeter: { kind: "meter-leads" },
  "small-lamp": { kind: "stand-in-load", settings: { type: "lamp", volts: 12, amps: 0.25 } },
  "heavy-lamp": { kind: "stand-in-load", settings: { type: "lamp", volts: 12, amps: 4 } },
  "stand-in": { kind: "stand-in-load", settings: { type: "lamp", volts: 12, amps: 4 } },
  jumper: { kind: "jumper", settings: { amps: 5 } },
  ohmmeter: null,
  clamp: null,
};

/** The row with a part drawn from a point to battery negative, on wires of next to nothing. */
function drawnOn(part: Omit<Part, "id">, red: string): Circuit {
  const [one, other] = part.kind === "meter-leads" ? ["red", "black"] : ["1", "2"];
  return {
    ...ROW,
    parts: [...ROW.parts, { id: "X9", ...part }],
    wires: [
      ...ROW.wires,
      { id: "L1", from: red, to: `X9.${one}`, ohms: 1e-5 },
      { id: "L2", from: `X9.${other}`, to: "G1.-", ohms: 1e-5 },
    ],
  };
}

describe.each(INSTRUMENTS)("%s", (instrument) => {
  // Behind the motor, which gives few amps, so that even a jumper's fuse holds.
  const RED = "M1.2";
  const each: Clipped =
    instrument === "clamp" ? { id: "1", instrument, around: "W3" } : lead(instrument, RED, "battery -");
  const open: Circuit = { ...ROW, wires: ROW.wires.filter(({ id }) => id !== "W4") };

  test("has a name", () => {
    expect(BENCH_INSTRUMENTS[instrument]).not.toBe("");
  });

  test("shows what the solver gives with the same element drawn in the circuit", () => {
    const part = DRAWN[instrument];
    const { shown, live } = clippedOn(open, each, ON);
    if (part === null) {
      const plain = liveOf(open, ON);
      expect(live.wires.get("W3")).toEqual(plain.wires.get("W3"));
      if (instrument === "clamp") expect(shown).toEqual({ shows: "amps", amps: plain.wires.get("W3")!.amps });
      return;
    }
    const drawn = liveOf(
      { ...drawnOn(part, RED), wires: drawnOn(part, RED).wires.filter(({ id }) => id !== "W4") },
      ON,
    );
    expect(Math.abs(live.clipped[0]!.amps)).toBeGreaterThan(1e-7);
    near(live.clipped[0]!.amps, drawn.wires.get("L1")!.amps, 1e-3);
    near(live.points.get(RED)!.volts!, drawn.points.get(RED)!.volts!, 1e-2);
  });

  test("changes the state of a wire only where it is a load or a jumper", () => {
    const isLoad = instrument !== "voltmeter" && instrument !== "ohmmeter" && instrument !== "clamp";
    const { live } = clippedOn(open, each, ON);
    expect(live.points.get(RED)!.state !== liveOf(open, ON).points.get(RED)!.state).toBe(isLoad);
  });

  test("shows nothing while a lead hangs free", () => {
    expect(clippedOn(open, freshInstrument("1", instrument), ON).shown).toEqual({ shows: "free" });
  });
});
