import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { readCircuit } from "../../schemas/circuit.ts";

/** Root of the project. */
export const ROOT = fileURLToPath(new URL("../..", import.meta.url));
/** Folder of the samples. */
export const SAMPLES = join(ROOT, "samples");

/** Text of a sample by its name. */
export function sampleText(name = "4-horn"): string {
  return readFileSync(join(SAMPLES, `${name}.circuit.json`), "utf8");
}

/** A sample as a circuit, under another title where one is given. */
export function sample(title?: string, name?: string): Circuit {
  const circuit = readCircuit(sampleText(name));
  if (!circuit.ok) throw new Error(circuit.refusal.code);
  return title === undefined ? circuit.value : { ...circuit.value, title };
}
