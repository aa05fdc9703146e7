import type { Outcome } from "../../core/base/outcome.ts";
import type { OpenedCircuit } from "../../schemas/calls.ts";
import { readPackedFile } from "../files.ts";
import type { Library } from "../store/library.ts";

/** Takes in a circuit file on the disk, plain or packed with its pictures; refuses as reading it does. */
export async function bringFile(library: Library, path: string, now: Date): Promise<Outcome<OpenedCircuit>> {
  const packed = await readPackedFile(path);
  return packed.ok ? library.circuits.bringIn(packed.value, now) : packed;
}
