import { once } from "node:events";
import { availableParallelism } from "node:os";
import { Worker } from "node:worker_threads";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { Rig } from "../../core/live/rig.ts";
import { circuitsOf } from "./circuits.ts";
import { dictionaryOf, fill, numbersIn } from "./dictionaryOf.ts";
import type { Share } from "./dictionaryWorker.ts";
import { median, medianMs } from "./measure.ts";
import { referenceMs } from "./yardsticks.ts";

const NODES = 200;
const TIMES = 15;
/** So much code takes a dozen runs until it is compiled for good. */
const WARM_MS = 2_000;

/** What one circuit came to, in milliseconds. */
interface Row {
  readonly seed: number;
  readonly unknowns: number;
  /** One process of the reference for one operating point. */
  readonly processMs: number;
  /** The whole dictionary on one thread, and shared out to a thread a core: started before, numbers in shared memory. */
  readonly aloneMs: number;
  readonly sharedMs: number;
}

async function measure(seed: number, circuit: Circuit): Promise<Row> {
  const rig = new Rig(circuit);
  const dictionary = dictionaryOf(circuit);
  // Process and dictionary by turns: what else runs on the machine slows both alike.
  const processes: number[] = [];
  const before = (): void => void processes.push(referenceMs(rig, 1));
  const numbers = new Float64Array(numbersIn(dictionary));
  const aloneMs = medianMs(() => fill(dictionary, numbers), { times: TIMES, mostMs: 10_000, warmMs: WARM_MS, before });
  return {
    seed,
    unknowns: rig.solver.pattern.unknowns,
    processMs: median(processes),
    aloneMs,
    sharedMs: await sharedMs(circuit, numbers.byteLength),
  };
}

/** Milliseconds until all threads have filled their shares of one array of so many bytes, and sent what else they found. */
async function sharedMs(circuit: Circuit, bytes: number): Promise<number> {
  const cores = availableParallelism();
  const numbers = new SharedArrayBuffer(bytes);
  const threads = Array.from({ length: cores }, (_, from) => {
    const workerData: Share = { circuit, from, cores, numbers };
    return new Worker(new URL("./dictionaryWorker.ts", import.meta.url), { workerData });
  });
  const spent: number[] = [];
  // The first half warms the threads up.
  for (let run = 0; run < 2 * TIMES; run++) {
    const start = performance.now();
    for (const thread of threads) thread.postMessage("fill");
    await Promise.all(threads.map((thread) => once(thread, "message")));
    spent.push(performance.now() - start);
  }
  await Promise.all(threads.map((thread) => thread.terminate()));
  return median(spent.slice(TIMES));
}

/** A dictionary may take this many processes on one thread, and this many on all cores. */
const ALONE_CEILING = 3;
const SHARED_CEILING = 1.5;

/** Times a whole dictionary of 150 faults in 16 states, all outputs, against one process of the reference. */
export async function benchDictionary(): Promise<readonly string[]> {
  const rows: Row[] = [];
  for (const [seed, circuit] of circuitsOf(NODES)) rows.push(await measure(seed, circuit));
  console.table(
    rows.map(({ seed, unknowns, processMs, aloneMs, sharedMs }) => ({
      seed,
      unknowns,
      "process, ms": processMs.toFixed(1),
      "dictionary, ms": aloneMs.toFixed(0),
      "dictionary / process": (aloneMs / processMs).toFixed(2),
      "on all cores, ms": sharedMs.toFixed(0),
      "on all cores / process": (sharedMs / processMs).toFixed(2),
    })),
  );
  return [
    tooDear("a dictionary", median(rows.map(({ aloneMs, processMs }) => aloneMs / processMs)), ALONE_CEILING),
    tooDear("on all cores it", median(rows.map(({ sharedMs, processMs }) => sharedMs / processMs)), SHARED_CEILING),
  ].flat();
}

function tooDear(what: string, ratio: number, ceiling: number): readonly string[] {
  return ratio <= ceiling
    ? []
    : [`${what} takes ${ratio.toFixed(2)} processes of the reference, at most ${ceiling} are allowed`];
}
