import { parentPort, workerData } from "node:worker_threads";
import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Predicted } from "../../core/diagnose/predict.ts";
import { dictionaryOf, fill } from "./dictionaryOf.ts";

/** What a thread is told once: its share, and the array that all fill. */
export interface Share {
  readonly circuit: Circuit;
  readonly from: number;
  readonly cores: number;
  readonly numbers: SharedArrayBuffer;
}

/** What a thread answers beside the numbers: of each fault, states by condition and part as numbers of words, and what is seen. */
export interface Answer {
  readonly words: readonly string[];
  readonly states: Uint8Array;
  readonly seen: readonly Pick<Predicted, "left" | "plugs">[];
}

const { circuit, from, cores, numbers } = workerData as Share;
const dictionary = dictionaryOf(circuit);
const all = new Float64Array(numbers);

function answerOf(filled: readonly Predicted[]): Answer {
  const words: string[] = [];
  const states: number[] = [];
  for (const { shown } of filled)
    for (const each of shown)
      for (const state of each.states.values()) {
        const known = words.indexOf(state);
        states.push(known < 0 ? words.push(state) - 1 : known);
      }
  return { words, states: Uint8Array.from(states), seen: filled.map(({ left, plugs }) => ({ left, plugs })) };
}

// Every message asks for this thread's share of the dictionary once more.
parentPort!.on("message", () => parentPort!.postMessage(answerOf(fill(dictionary, all, from, cores))));
