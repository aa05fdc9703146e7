import { Worker } from "node:worker_threads";
import type { Input } from "./door.ts";

/** What a thread is to do. */
export interface Task {
  /** The doors by name, and how many inputs for each. */
  readonly tries: readonly (readonly [door: string, runs: number])[];
  readonly seed: number;
  /** Whether inputs that lead to new places in the program are spoilt further. */
  readonly isGuided: boolean;
  /** The input in hand: four bytes of length, one for text or bytes, then itself. */
  readonly hand: SharedArrayBuffer;
  /** Since when, in hundredths of a second of the thread's own clock; 0 while none is in hand. */
  readonly clock: SharedArrayBuffer;
}

/** An input that did not end as it must, and how. */
export interface Fault {
  readonly input: Input;
  readonly why: string;
}

/** What came of a task at one door. */
export interface Told {
  readonly door: string;
  readonly value: number;
  readonly refused: number;
  readonly faults: readonly Fault[];
  readonly slowestMs: number;
  readonly slowestBytes: number;
  /** Inputs that were kept to be spoilt further; 0 where nothing guides. */
  readonly kept: number;
}

const HAND_BYTES = 8_000_000;
/** What a thread may hold, in megabytes: what a page of a browser has to spare at least. */
const MOST_MB = 700;
/** How often one looks at the clock, in milliseconds, and how many looks at one input are a thread that hangs. */
const LOOK_MS = 2_000;
const HANGS_AFTER = 45;

/**
 * Tries inputs at doors, one after the other, in a thread with so much memory. A thread that hangs or runs out of it is a fault of
 * the input in hand, and the doors after it are not told of.
 */
export function tryAt(about: Pick<Task, "seed" | "tries" | "isGuided">): Promise<readonly Told[]> {
  const hand = new SharedArrayBuffer(HAND_BYTES);
  const clock = new SharedArrayBuffer(4);
  const task: Task = { ...about, hand, clock };
  const thread = new Worker(new URL("./worker.ts", import.meta.url), {
    workerData: task,
    resourceLimits: { maxOldGenerationSizeMb: MOST_MB },
    stdout: true,
  });
  return new Promise((resolve) => {
    const told: Told[] = [];
    const broken = (why: string): void => {
      clearInterval(look);
      void thread.terminate();
      const door = about.tries[told.length]![0];
      const faults = [{ input: inHand(hand), why }];
      resolve([...told, { door, value: 0, refused: 0, faults, slowestMs: 0, slowestBytes: 0, kept: 0 }]);
    };
    let last = 0;
    let looks = 0;
    const look = setInterval(() => {
      const now = Atomics.load(new Int32Array(clock), 0);
      looks = now !== 0 && now === last ? looks + 1 : 0;
      last = now;
      if (looks >= HANGS_AFTER) broken(`hangs for more than ${(HANGS_AFTER * LOOK_MS) / 1_000} s`);
    }, LOOK_MS);
    thread.on("message", (one: Told) => {
      told.push(one);
      if (told.length < about.tries.length) return;
      clearInterval(look);
      void thread.terminate();
      resolve(told);
    });
    thread.once("error", (error) => broken(`the thread ended: ${error.stack ?? error.message}`));
  });
}

function inHand(hand: SharedArrayBuffer): Input {
  const view = new DataView(hand);
  const bytes = Uint8Array.from(new Uint8Array(hand, 5, view.getUint32(0)));
  return view.getUint8(4) === 1 ? Buffer.from(bytes).toString() : bytes;
}
