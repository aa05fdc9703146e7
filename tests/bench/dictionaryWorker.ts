import { parentPort, workerData } from "node:worker_threads";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { dictionaryOf, fill } from "./dictionaryOf.ts";

const { circuit, from, cores } = workerData as { circuit: Circuit; from: number; cores: number };
const dictionary = dictionaryOf(circuit);

// Every message asks for this thread's share of the dictionary once more.
parentPort!.on("message", () => parentPort!.postMessage(fill(dictionary, from, cores)));
