import ELK from "elkjs/lib/elk-api.js";
import elkWorker from "elkjs/lib/elk-worker.min.js?url";
import type { Attempt } from "../../core/edit/arranging.ts";
import type { Drafting } from "./arrange.ts";
import type { StraightenAsked, Straightened } from "./straighten.ts";

/** Starts both workers: the library, one and a half megabytes, is loaded only when something is arranged. */
export function startDrafting(): Drafting {
  const elk = new ELK({ workerUrl: elkWorker });
  const straightener = new Worker(new URL("./straighten.ts", import.meta.url), { type: "module" });
  const straighten = (asked: StraightenAsked): Promise<Attempt | null> =>
    new Promise((resolve, reject) => {
      straightener.onmessage = ({ data }: MessageEvent<Straightened>) => {
        if (data.trouble === undefined) resolve(data.attempt);
        else reject(new Error(data.trouble));
      };
      straightener.onerror = ({ message }) => reject(new Error(message || "the worker does not answer"));
      straightener.postMessage(asked);
    });
  return {
    layOut: (graph) => elk.layout(graph),
    attempt: (bench, question, answer) => straighten({ bench, question, from: { answer } }),
    refine: (bench, question, best) => straighten({ bench, question, from: { best } }),
    end: () => {
      elk.terminateWorker();
      straightener.terminate();
    },
  };
}
