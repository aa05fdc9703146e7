import { remember } from "../../core/base/memo.ts";
import { type Outcome, ok, refuse } from "../../core/base/outcome.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { questionsIn } from "../../core/lesson/scene.ts";
import { readBytes } from "../files.ts";
import { exerciseFile, samplesIn } from "../samples.ts";
import type { AnswersOf, Host } from "./host.ts";

/** What the samples answer. */
export const SAMPLE_ANSWERS: AnswersOf<"samples.list" | "samples.open" | "samples.exercise"> = {
  "samples.list": async (_, host) => {
    const samples = await samplesOf(host);
    const rows = [...samples].map(([sample, { circuit, exercises }]) => ({
      sample,
      title: circuit.title,
      vehicle: circuit.vehicle ?? "",
      pages: circuit.pages.length,
      parts: circuit.parts.length,
      wires: circuit.wires.length,
      scenes: circuit.scenes.length,
      questions: questionsIn(circuit),
      exercises: [...exercises],
    }));
    return ok({ samples: rows });
  },

  "samples.open": async ({ sample }, host) => {
    const circuit = await sampleOf(host, sample);
    return circuit.ok ? ok({ circuit: circuit.value }) : circuit;
  },

  "samples.exercise": async ({ exercise }, host) => {
    const isKnown = [...(await samplesOf(host)).values()].some(({ exercises }) => exercises.includes(exercise));
    if (!isKnown) return refuse("sample-unknown", { sample: exercise });
    const bytes = await readBytes(exerciseFile(host.samples, exercise));
    return bytes.ok ? ok({ text: new TextDecoder().decode(bytes.value) }) : bytes;
  },
};

/** A sample by its name. Refuses `sample-unknown`; the name never becomes a path. */
export async function sampleOf(host: Host, sample: string): Promise<Outcome<Circuit>> {
  const found = (await samplesOf(host)).get(sample);
  return found ? ok(found.circuit) : refuse("sample-unknown", { sample });
}

/** Samples by name, in the order of their numbers; read once in the life of a host. */
const samplesOf = remember(({ samples }: Host) => samplesIn(samples));
