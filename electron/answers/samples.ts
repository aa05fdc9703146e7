import { readdir } from "node:fs/promises";
import { join } from "node:path";
import { remember } from "../../core/base/memo.ts";
import { assert, type Outcome, ok, refuse } from "../../core/base/outcome.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { readCircuitFile } from "../files.ts";
import type { AnswersOf, Host } from "./host.ts";

const ENDING = ".circuit.json";

/** What the samples answer. */
export const SAMPLE_ANSWERS: AnswersOf<"samples.list" | "samples.open"> = {
  "samples.list": async (_, host) => {
    const samples = await samplesOf(host);
    const rows = [...samples].map(([sample, { title, vehicle = "", pages, parts, wires }]) => ({
      sample,
      title,
      vehicle,
      pages: pages.length,
      parts: parts.length,
      wires: wires.length,
    }));
    return ok({ samples: rows });
  },

  "samples.open": async ({ sample }, host) => {
    const circuit = await sampleOf(host, sample);
    return circuit.ok ? ok({ circuit: circuit.value }) : circuit;
  },
};

/** A sample by its name. Refuses `sample-unknown`; the name never becomes a path. */
export async function sampleOf(host: Host, sample: string): Promise<Outcome<Circuit>> {
  const circuit = (await samplesOf(host)).get(sample);
  return circuit ? ok(circuit) : refuse("sample-unknown", { sample });
}

/** Samples by name, in the order of their numbers; read once in the life of a host. */
const samplesOf = remember(async (host: Host): Promise<ReadonlyMap<string, Circuit>> => {
  const files = (await readdir(host.samples)).filter((name) => name.endsWith(ENDING));
  const inOrder = files.toSorted((one, other) => one.localeCompare(other, "en", { numeric: true }));
  const read = await Promise.all(
    inOrder.map(async (name) => {
      const circuit = await readCircuitFile(join(host.samples, name));
      assert(circuit.ok, `the sample ${name} is a circuit`);
      return [name.slice(0, -ENDING.length), circuit.value] as const;
    }),
  );
  return new Map(read);
});
