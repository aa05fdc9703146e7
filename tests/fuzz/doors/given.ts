import { readdirSync, readFileSync } from "node:fs";
import { assert, type Outcome } from "../../../core/base/outcome.ts";
import type { Circuit } from "../../../core/circuit/circuit.ts";
import { readCircuit } from "../../../schemas/circuit.ts";

/** Folder of the samples. */
export const SAMPLES = new URL("../../../samples/", import.meta.url);

/** The text of a file of the samples. */
export function sampleText(name: string): string {
  return readFileSync(new URL(name, SAMPLES), "utf8");
}

/** The texts of the smaller circuits among the samples, each of which is read in a few milliseconds. */
export function smallCircuits(): readonly string[] {
  const names = ["4-horn", "13-unlike-lamps", "10-power-and-ground", "12-reversing-motor", "8-wiper"];
  return names.map((name) => sampleText(`${name}.circuit.json`));
}

/** All exercises among the samples. */
export function exercises(): readonly string[] {
  return readdirSync(SAMPLES)
    .filter((name) => name.endsWith(".exercise.json"))
    .map(sampleText);
}

/** The value of an outcome that is known to hold one. */
export function got<T>(outcome: Outcome<T>): T {
  assert(outcome.ok, outcome.ok ? "" : outcome.refusal.code);
  return outcome.value;
}

let horn: Circuit | null = null;

/** The circuit of sample 4. */
export function hornCircuit(): Circuit {
  horn ??= got(readCircuit(sampleText("4-horn.circuit.json")));
  return horn;
}
