import type { Heard } from "../../core/lesson/cupboard.ts";
import type { DeskAnswers, DeskAsked, DeskQuestion, DeskSaid } from "./deskQuestion.ts";

/** The part of a worker that an asker needs. */
export interface DeskPort {
  postMessage(message: DeskAsked): void;
  onmessage: ((event: MessageEvent<DeskSaid>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  terminate(): void;
}

/** Asks the instructor's worker, which is started with the first question. */
export interface DeskAsker {
  /** The answer, or null where it was given up. Rejects with the program's own error. */
  ask<Kind extends DeskQuestion["ask"]>(
    question: Extract<DeskQuestion, { ask: Kind }>,
    heard?: Heard,
  ): Promise<DeskAnswers[Kind] | null>;
  /** Gives up all that was asked; the worker is let go with what it holds. */
  stop(): void;
}

interface Waiting {
  readonly heard: Heard | undefined;
  readonly done: (answer: DeskAnswers[DeskQuestion["ask"]] | null) => void;
  readonly failed: (trouble: Error) => void;
}

/** An asker before a worker that `start` begins. */
export function deskAsker(start: () => DeskPort): DeskAsker {
  const waiting = new Map<number, Waiting>();
  let port: DeskPort | null = null;
  let number = 0;

  const letGo = (end: (each: Waiting) => void): void => {
    port?.terminate();
    port = null;
    const all = [...waiting.values()];
    waiting.clear();
    for (const each of all) end(each);
  };
  const begun = (): DeskPort => {
    const next = start();
    next.onmessage = ({ data }) => {
      const asked = waiting.get(data.number);
      if ("done" in data) return asked?.heard?.(data.done);
      waiting.delete(data.number);
      if ("trouble" in data) asked?.failed(new Error(data.trouble));
      else asked?.done(data.answer);
    };
    next.onerror = ({ message }) => letGo(({ failed }) => failed(new Error(message || "the worker does not answer")));
    return next;
  };
  return {
    ask: (question, heard) =>
      new Promise((resolve, reject) => {
        port ??= begun();
        number += 1;
        waiting.set(number, { heard, done: resolve as Waiting["done"], failed: reject });
        port.postMessage({ number, question });
      }),
    stop: () => letGo(({ done }) => done(null)),
  };
}
