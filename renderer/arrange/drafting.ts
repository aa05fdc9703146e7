import ELK from "elkjs/lib/elk-api.js";
import elkWorker from "elkjs/lib/elk-worker.min.js?url";
import type { Attempt } from "../../core/edit/arranging.ts";
import { type Mishaps, watched } from "../report/mishaps.ts";
import { faultOf, isTrouble } from "../workers/trouble.ts";
import type { Drafting } from "./arrange.ts";
import type { StraightenAsked, Straightened } from "./straighten.ts";

/**
 * Starts both workers: the library, one and a half megabytes, is loaded only when something is arranged. What goes wrong in them is noted,
 * and what they were asked for then fails.
 */
export function startDrafting(mishaps: Pick<Mishaps, "note">): Drafting {
  const { promise: broken, reject: breakOff } = Promise.withResolvers<never>();
  // Nobody may be waiting for it.
  broken.catch(() => {});
  const heeded = (worker: Worker): Worker => {
    worker.addEventListener("error", ({ message }) => breakOff(new Error(message || "the worker does not answer")));
    return watched(worker, mishaps);
  };
  const elk = new ELK({ workerFactory: () => heeded(new Worker(elkWorker)) });
  const straightener = heeded(new Worker(new URL("./straighten.ts", import.meta.url), { type: "module" }));
  const straighten = (asked: StraightenAsked): Promise<Attempt | null> =>
    new Promise((resolve, reject) => {
      straightener.onmessage = ({ data }: MessageEvent<Straightened>) => {
        if (!isTrouble(data)) return resolve(data.attempt);
        const fault = faultOf(data);
        mishaps.note(fault, "worker");
        reject(fault);
      };
      straightener.postMessage(asked);
    });
  const unlessBroken = <T>(asked: Promise<T>): Promise<T> => Promise.race([asked, broken]);
  return {
    layOut: (graph) => unlessBroken(elk.layout(graph)),
    attempt: (bench, question, answer) => unlessBroken(straighten({ bench, question, from: { answer } })),
    refine: (bench, question, best) => unlessBroken(straighten({ bench, question, from: { best } })),
    end: () => {
      elk.terminateWorker();
      straightener.terminate();
    },
  };
}
