import { once } from "node:events";
import { availableParallelism } from "node:os";
import { Worker } from "node:worker_threads";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { Rig } from "../../core/live/rig.ts";
import { circuitsOf } from "./circuits.ts";
import { dictionaryOf, fill, numbersIn } from "./dictionaryOf.ts";
import type { Share } from "./dictionaryWorker.ts";
import { judged } from "./goal.ts";
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
  /** The whole dictionary on one thread, and on a thread a core: started and compiled before, numbers in shared memory. */
  readonly aloneMs: number;
  readonly sharedMs: number;
}

async function measure(seed: number, circuit: Circuit): Promise<Row> {
  const rig = new Rig(circuit);
  const dictionary = dictionaryOf(circuit);
  const processes: number[] = [];
  const numbers = new Float64Array(numbersIn(dictionary));
  // Process and dictionary by turns: what else runs on the machine slows both alike. To start a process has this one's
  // memory marked for copying, which the first to write to it pays for: a dictionary that does not count.
  const before = (): void => {
    processes.push(referenceMs(rig, 1));
    fill(dictionary, numbers);
  };
  const aloneMs = medianMs(() => fill(dictionary, numbers), { times: TIMES, mostMs: 10_000, warmMs: WARM_MS, before });
  return {
    seed,
    unknowns: rig.solver.pattern.unknowns,
    processMs: median(processes),
    aloneMs,
    sharedMs: await sharedMs(circuit, numbers.byteLength),
  };
}

/**
 * Milliseconds until threads have filled one array of so many bytes, and sent what else they found: what another
 * dictionary costs a program that has made some before.
 */
async function sharedMs(circuit: Circuit, bytes: number): Promise<number> {
  const untaken = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT));
  const workerData: Share = { circuit, numbers: new SharedArrayBuffer(bytes), untaken };
  const threads = Array.from(
    { length: availableParallelism() },
    () => new Worker(new URL("./dictionaryWorker.ts", import.meta.url), { workerData }),
  );
  const made = async (): Promise<number> => {
    const start = performance.now();
    Atomics.store(untaken, 0, 0);
    for (const thread of threads) thread.postMessage("fill");
    await Promise.all(threads.map((thread) => once(thread, "message")));
    return performance.now() - start;
  };
  const warmUntil = performance.now() + WARM_MS;
  while (performance.now() < warmUntil) await made();
  const spent: number[] = [];
  while (spent.length < TIMES) spent.push(await made());
  await Promise.all(threads.map((thread) => thread.terminate()));
  return median(spent);
}

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
  return judged([
    {
      name: "a dictionary / a process of the reference",
      figure: median(rows.map(({ aloneMs, processMs }) => aloneMs / processMs)),
      best: "most",
      goal: 3,
      limit: 4,
    },
    {
      name: "a dictionary on all cores / the same",
      figure: median(rows.map(({ sharedMs, processMs }) => sharedMs / processMs)),
      best: "most",
      goal: 1.5,
      limit: 2.5,
    },
  ]);
}
