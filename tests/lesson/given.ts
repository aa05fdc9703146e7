import { readFileSync } from "node:fs";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { type Attempt, begun, moved } from "../../core/lesson/attempt.ts";
import { type Exercise, type ExerciseChoice, exerciseFor } from "../../core/lesson/exercise.ts";
import { parseMoves } from "../../core/lesson/moveText.ts";
import { plantOf } from "../../core/lesson/plant.ts";
import { type Vehicle, vehicleOf } from "../../core/lesson/vehicle.ts";
import { readCircuit } from "../../schemas/circuit.ts";
import { got } from "../edit/given.ts";
import { G1, makeSwitch, vehicle } from "../live/vehicle.ts";

/** Battery, fuse, switch and a lamp behind a panel of 5 minutes, ground to the body; one check: the lamp lights. */
export const LAMP: Circuit = vehicle(
  [
    G1,
    { id: "F1", kind: "fuse", settings: { amps: 10 } },
    makeSwitch("S1"),
    { id: "E1", kind: "lamp", settings: { watts: 21 } },
    { id: "GP1", kind: "ground" },
    { id: "GP2", kind: "ground" },
  ],
  ["W1 G1.+ F1.1", "W2 F1.2 S1.1", "W3 S1.2 X1-1", "W4 X1-2 GP1.stud", "W5 GP2.stud G1.-"],
  {
    connectors: [{ id: "X1", rows: [["1", "2"]], cavities: { "1": "E1.1", "2": "E1.2" } }],
    access: [{ id: "panel", label: "Panel off", minutes: 5 }],
    reach: { X1: { access: "panel" }, E1: { access: "panel" } },
    checks: [{ id: "lights", label: "The lamp lights", condition: { set: { S1: "on" } }, load: "E1", expect: "on" }],
  },
);

/** Sample 4, as its file has it. */
export const HORN: Circuit = got(
  readCircuit(readFileSync(new URL("../../samples/4-horn.circuit.json", import.meta.url))),
);

/** An exercise on the first check of a circuit with this fault in it, and its vehicle. */
export function exerciseWith(
  circuit: Circuit,
  fault: string,
  choice: Partial<ExerciseChoice> = {},
): { readonly exercise: Exercise; readonly vehicle: Vehicle } {
  const exercise = got(
    exerciseFor(circuit, { check: circuit.checks[0]!, fault: got(plantOf(circuit, fault)), ...choice }),
  );
  return { exercise, vehicle: got(vehicleOf(exercise, { fault, seed: null, note: "" })) };
}

/** The attempt after all these moves as typed, each of which must be possible. */
export function worked(
  { exercise, vehicle }: { readonly exercise: Exercise; readonly vehicle: Vehicle },
  ...texts: readonly string[]
): Attempt {
  let attempt = begun(exercise);
  for (const text of texts)
    for (const move of got(parseMoves(exercise.circuit, text, attempt.condition)))
      attempt = got(moved(attempt, vehicle, move, "2026-03-02T08:00:00Z"));
  return attempt;
}
