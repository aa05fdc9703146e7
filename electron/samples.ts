import { readdir } from "node:fs/promises";
import { join } from "node:path";
import { assert } from "../core/base/outcome.ts";
import type { Circuit } from "../core/circuit/circuit.ts";
import { readCircuitFile } from "./files.ts";

const ENDING = ".circuit.json";
const HIDDEN_ENDING = ".exercise.json";

/** A circuit that comes with the program. */
export interface Sample {
  readonly circuit: Circuit;
  /** Names of the exercises made of it, in their order: `10-power-and-ground.1`. */
  readonly exercises: readonly string[];
}

/** The samples of a folder by name, in the order of their numbers. */
export async function samplesIn(folder: string): Promise<ReadonlyMap<string, Sample>> {
  const files = (await readdir(folder)).toSorted((one, other) => one.localeCompare(other, "en", { numeric: true }));
  const exercises = files.filter((name) => name.endsWith(HIDDEN_ENDING));
  const read = await Promise.all(
    files
      .filter((name) => name.endsWith(ENDING))
      .map(async (file) => {
        const name = file.slice(0, -ENDING.length);
        const circuit = await readCircuitFile(join(folder, file));
        assert(circuit.ok, `the sample ${file} is a circuit`);
        const own = exercises.filter((each) => each.startsWith(`${name}.`));
        return [
          name,
          { circuit: circuit.value, exercises: own.map((each) => each.slice(0, -HIDDEN_ENDING.length)) },
        ] as const;
      }),
  );
  return new Map(read);
}

/** The file of an exercise among the samples. */
export function exerciseFile(folder: string, name: string): string {
  return join(folder, name + HIDDEN_ENDING);
}
