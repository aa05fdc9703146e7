import { parentPort, workerData } from "node:worker_threads";
import type { ConnectorId } from "../../core/base/ids.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { type Predicted, plugsWith } from "../../core/diagnose/predict.ts";
import { dictionaryOf, fill } from "./dictionaryOf.ts";

/** What every thread is told once: the array that all fill, and the number of the next fault that none has taken. */
export interface Share {
  readonly circuit: Circuit;
  readonly numbers: SharedArrayBuffer;
  readonly untaken: Int32Array<SharedArrayBuffer>;
}

/** What a thread answers beside the numbers: of each of its faults, states by condition and part as numbers of words, and what is seen. */
export interface Answer {
  readonly faults: readonly number[];
  readonly words: readonly string[];
  readonly states: Uint8Array;
  readonly left: readonly Predicted["left"][];
  /** Plugs that do not look as those of a sound circuit do. */
  readonly plugs: readonly (readonly (readonly [ConnectorId, string])[])[];
}

const { circuit, numbers, untaken } = workerData as Share;
const dictionary = dictionaryOf(circuit);
const all = new Float64Array(numbers);
const sound = plugsWith(circuit, []);

function answerOf(filled: ReadonlyMap<number, Predicted>): Answer {
  const predicted = [...filled.values()];
  const words: string[] = [];
  const states: number[] = [];
  for (const { shown } of predicted)
    for (const each of shown)
      for (const state of each.states.values()) {
        const known = words.indexOf(state);
        states.push(known < 0 ? words.push(state) - 1 : known);
      }
  return {
    faults: [...filled.keys()],
    words,
    states: Uint8Array.from(states),
    left: predicted.map(({ left }) => left),
    plugs: predicted.map(({ plugs }) => [...plugs].filter(([connector, shows]) => shows !== sound.get(connector))),
  };
}

// Every message asks for the dictionary once more: each thread takes the next fault as soon as it is done with one.
parentPort!.on("message", () =>
  parentPort!.postMessage(answerOf(fill(dictionary, all, () => Atomics.add(untaken, 0, 1)))),
);
