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
  const began = performance.now();
  try {
    const end = await ending(door, input);
    const ms = performance.now() - began;
    slowest = ms > slowest.ms ? { ms, bytes: bytesOf(input).length } : slowest;
    return ms > door.mostMs ? await slowTwice(door, input, ms) : end;
  } catch (error) {
    return { input, why: error instanceof Error ? (error.stack ?? error.message) : String(error) };
  } finally {
    Atomics.store(clock, 0, 0);
  }
}

/** A machine that does other things too takes longer; what is slow by chance is not slow twice. */
async function slowTwice(door: Door, input: Input, first: number): Promise<Ending | Fault> {
  const began = performance.now();
  const end = await ending(door, input);
  const ms = performance.now() - began;
  return ms > door.mostMs ? { input, why: `took ${Math.round(first)} ms, and ${Math.round(ms)} ms again` } : end;
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
