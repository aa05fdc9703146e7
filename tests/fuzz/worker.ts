import { parentPort, workerData } from "node:worker_threads";
import { lotsOf } from "../lots.ts";
import { type Door, type Ending, ending, type Input } from "./door.ts";
import { allDoors } from "./doors.ts";
import { guide } from "./guide.ts";
import { bytesOf, mutated } from "./mutate.ts";
import type { Fault, Task, Told } from "./task.ts";

// Run as a thread of its own: tries inputs at one door, and keeps the one in hand where the other thread can see it, should this
// one never come back.
const task = workerData as Task;
const hand = new Uint8Array(task.hand);
const clock = new Int32Array(task.clock);
/** Faults that are told of one door; the others are alike. */
const MOST_FAULTS = 20;

/** Lays an input where it can be found, and notes since when. */
function take(input: Input): void {
  const bytes = bytesOf(input).subarray(0, hand.length - 5);
  hand.set(bytes, 5);
  hand[4] = typeof input === "string" ? 1 : 0;
  new DataView(task.hand).setUint32(0, bytes.length);
  Atomics.store(clock, 0, Math.floor(performance.now() / 10) + 1);
}

async function tried(door: Door, input: Input): Promise<Ending | Fault> {
  take(input);
  try {
    const [end, ms] = await timed(door, input);
    slowest = ms > slowest.ms ? { ms, bytes: bytesOf(input).length } : slowest;
    // What is slow by chance, as while code is compiled, is not slow twice.
    const again = ms > door.mostMs ? (await timed(door, input))[1] : 0;
    return again > door.mostMs ? { input, why: `took ${Math.round(ms)} ms, and ${Math.round(again)} ms again` } : end;
  } catch (error) {
    return { input, why: error instanceof Error ? (error.stack ?? error.message) : String(error) };
  } finally {
    Atomics.store(clock, 0, 0);
  }
}

/** What an input came to, and the milliseconds that this thread worked on it: others that work meanwhile do not count. */
async function timed(door: Door, input: Input): Promise<readonly [Ending, number]> {
  const before = process.threadCpuUsage();
  const end = await ending(door, input);
  const { user, system } = process.threadCpuUsage(before);
  return [end, (user + system) / 1_000];
}

let slowest = { ms: 0, bytes: 0 };
const doors = await allDoors();
const watch = task.isGuided ? guide() : null;

async function triedAll(door: Door, runs: number): Promise<Told> {
  const lots = lotsOf(task.seed);
  const faults: Fault[] = [];
  const counts = { value: 0, refused: 0 };
  const seeds: Input[] = [...(await door.seeds())];
  slowest = { ms: 0, bytes: 0 };
  const note = (result: Ending | Fault): void => {
    if (typeof result === "string") counts[result]++;
    else if (faults.length < MOST_FAULTS) faults.push(result);
  };
  for (const input of seeds.slice()) note(await tried(door, input));
  for (let run = seeds.length; run < runs; run++) {
    const input = mutated(door, seeds, lots);
    note(await tried(door, input));
    // What leads where none led before is spoilt further.
    if (watch) seeds.push(...(await watch.noted(input, (again) => tried(door, again))));
  }
  const { ms: slowestMs, bytes: slowestBytes } = slowest;
  return { door: door.name, ...counts, faults, slowestMs, slowestBytes, kept: watch ? seeds.length : 0 };
}

for (const [name, runs] of task.tries) {
  parentPort!.postMessage(await triedAll(doors.find((door) => door.name === name)!, runs));
}
