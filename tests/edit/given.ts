import { readFileSync } from "node:fs";
import { expect } from "vitest";
import { assert, type Outcome } from "../../core/base/outcome.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { type Bench, benchFor } from "../../core/edit/bench.ts";
import { apply, type Edit } from "../../core/edit/edit.ts";
import type { Live } from "../../core/live/live.ts";
import { circuitOf, formatCircuit, readCircuit } from "../../schemas/circuit.ts";
import type { Json } from "../../schemas/json.ts";
import { SMALL } from "../circuit/small.ts";
import { G1, makeSwitch, ROW, vehicle } from "../live/vehicle.ts";

/** Sample 1, as its file has it. */
export const VENTS: Circuit = got(
  readCircuit(readFileSync(new URL("../../samples/1-roof-vents.circuit.json", import.meta.url))),
);

/** A button that holds a relay in through the relay's own contact, and a lamp on it. */
export const LATCH: Circuit = vehicle(
  [
    G1,
    {
      ...makeSwitch("S1"),
      positions: [
        { name: "out", joins: [] },
        { name: "in", joins: [["1", "2"]], springsBackTo: "out" },
      ],
    },
    { id: "K1", kind: "relay" },
    { id: "E1", kind: "lamp" },
  ],
  [
    "W1 G1.+ S1.1",
    "W2 S1.2 K1.86",
    "W3 K1.85 G1.-",
    "W4 G1.+ K1.30",
    "W5 K1.87 K1.86",
    "W6 K1.87 E1.1",
    "W7 E1.2 G1.-",
  ],
);

export { ROW, SMALL };

/** The value of an outcome that must hold one. */
export function got<T>(outcome: Outcome<T>): T {
  assert(outcome.ok, `refused: ${outcome.ok ? "" : JSON.stringify(outcome.refusal)}`);
  return outcome.value;
}

/** The code of an outcome that must refuse. */
export function codeOf(outcome: Outcome<unknown>): string {
  return outcome.ok ? "not refused" : outcome.refusal.code;
}

/** The bench after an edit that must be possible. */
export function after(bench: Bench, edit: Outcome<Edit>): Bench {
  return got(apply(bench, got(edit))).bench;
}

/** The bench after some commands, each given the bench that the one before left. */
export function afterAll(circuit: Circuit, ...commands: readonly ((bench: Bench) => Outcome<Edit>)[]): Bench {
  return commands.reduce((bench, command) => after(bench, command(bench)), benchFor(circuit));
}

/** A copy that shares nothing with the bench. */
export function frozen(bench: Bench): Bench {
  return JSON.parse(JSON.stringify(bench));
}

/** Fails where two benches differ, or where their circuits would be written in other bytes. */
export function expectSame(one: Bench, other: Bench): void {
  expect(one).toEqual(other);
  expect(formatCircuit(one.circuit)).toBe(formatCircuit(other.circuit));
}

/** Volts below which two solutions of one circuit, its nodes in another order, are the same. */
const SAME_VOLTS = 1e-6;

/** Fails where a wire of two live states is not in the same state at both ends, or not at the same volts. */
export function expectAlike(one: Live, other: Live): void {
  const ends = ({ wires }: Live) => [...wires].map(([id, { state }]) => [id, ...state]);
  expect(ends(one)).toEqual(ends(other));
  const apart = [...one.wires].flatMap(([id, { volts }]) =>
    volts.flatMap((each, end) => {
      const there = other.wires.get(id)!.volts[end]!;
      if (each === null || there === null) return each === there ? [] : [id];
      return Math.abs(each - there) < SAME_VOLTS ? [] : [id];
    }),
  );
  expect(apart).toEqual([]);
}

/** Fails where the circuit of a bench is none that a file may hold, or the bench is no plain data. */
export function expectSound(bench: Bench): void {
  expect(frozen(bench)).toEqual(bench);
  const read = circuitOf(JSON.parse(formatCircuit(bench.circuit)) as Json);
  expect(read.ok ? "sound" : JSON.stringify(read.refusal)).toBe("sound");
}
