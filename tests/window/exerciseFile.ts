import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { type ExerciseChoice, exerciseFor } from "../../core/lesson/exercise.ts";
import { plantOf } from "../../core/lesson/plant.ts";
import { readCircuit } from "../../schemas/circuit.ts";
import { formatExercise } from "../../schemas/exercise.ts";
import { ROUNDS_LIMITS } from "../../schemas/seal.ts";
import { got } from "../edit/given.ts";
import { ROOT } from "./machine.ts";

/** Writes an exercise on a sample into a folder: this check fails by this fault. Gives the file's path. */
export async function exerciseFile(
  folder: string,
  sample: string,
  complaint: string,
  fault: string,
  choice: Partial<ExerciseChoice> = {},
): Promise<string> {
  const circuit = got(readCircuit(readFileSync(join(ROOT, "samples", `${sample}.circuit.json`))));
  const check = circuit.checks.find(({ id }) => id === complaint)!;
  const exercise = got(exerciseFor(circuit, { check, fault: got(plantOf(circuit, fault)), ...choice }));
  const hidden = { fault, seed: null, note: "" };
  const file = join(folder, `${sample}.exercise.json`);
  writeFileSync(file, got(await formatExercise(exercise, hidden, "correct horse", ROUNDS_LIMITS.least)));
  return file;
}
