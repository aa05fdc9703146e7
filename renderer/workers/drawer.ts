import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Picture } from "./picture.ts";
import type { PictureAnswered, PictureAsked } from "./pictures.ts";

/** The part of a worker that a drawer needs. */
export interface PicturePort {
  postMessage(message: PictureAsked): void;
  onmessage: ((event: MessageEvent<PictureAnswered>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  terminate(): void;
}

/** A worker without work for this long is let go, milliseconds: pictures are drawn at the start and seldom again. */
const IDLE_MS = 10_000;

/** Draws pictures in a worker that is there only while there is something to draw. */
export function workerDrawer(start: () => PicturePort): (circuit: Circuit) => Promise<Picture | null> {
  let worker: PicturePort | null = null;
  let number = 0;
  let idle: ReturnType<typeof setTimeout> | undefined;
  const waiting = new Map<number, (picture: Picture | null) => void>();

  const begun = (): PicturePort => {
    const port = start();
    const end = (): void => {
      port.terminate();
      worker = null;
    };
    port.onmessage = ({ data }) => {
      waiting.get(data.number)?.(data.picture);
      waiting.delete(data.number);
      if (waiting.size === 0) idle = setTimeout(end, IDLE_MS);
    };
    // A library without pictures is better than one that waits for them.
    port.onerror = () => {
      for (const done of waiting.values()) done(null);
      waiting.clear();
      end();
    };
    return port;
  };
  return (circuit) => {
    clearTimeout(idle);
    worker ??= begun();
    number += 1;
    const asked = { number, circuit };
    worker.postMessage(asked);
    return new Promise((resolve) => waiting.set(asked.number, resolve));
  };
}
