import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Answered, Answers, Asked, Question } from "./question.ts";
import { faultOf, isTrouble } from "./trouble.ts";

/** Something that answers questions about a circuit in its own time. */
export interface Asker {
  /** The answer, or null where a newer question of the same kind came before this one was begun. */
  ask<Kind extends Question["ask"]>(
    circuit: Circuit,
    question: Extract<Question, { ask: Kind }>,
  ): Promise<Answers[Kind] | null>;
  /** Starts the worker before anything is asked, so that the first answer does not wait for it. */
  begin(): void;
}

/** The part of a worker that an asker needs. */
export interface WorkerPort {
  postMessage(message: Asked): void;
  onmessage: ((event: MessageEvent<Answered>) => void) | null;
  /** The worker could not be loaded, or failed outside a question. */
  onerror: ((event: ErrorEvent) => void) | null;
}

interface Waiting {
  readonly circuit: Circuit;
  readonly question: Question;
  readonly done: (answer: Answers[Question["ask"]] | null) => void;
  readonly failed: (trouble: Error) => void;
}

/**
 * An asker before a worker, which is started once something is asked: one question at a time is under way, and of each kind
 * only the newest waits.
 */
export function workerAsker(start: () => WorkerPort): Asker {
  let worker: WorkerPort | null = null;
  const waiting = new Map<Question["ask"], Waiting>();
  let underWay: Waiting | null = null;
  let sent: Circuit | null = null;
  let number = 0;

  const next = (): void => {
    const first = waiting.entries().next().value;
    if (underWay || !first) return;
    const [kind, asked] = first;
    waiting.delete(kind);
    underWay = asked;
    number += 1;
    const { circuit, question } = asked;
    begun().postMessage({ number, question, ...(circuit !== sent && { circuit }) });
    sent = circuit;
  };
  const ended = (end: (asked: Waiting) => void): void => {
    const asked = underWay;
    underWay = null;
    if (asked) end(asked);
    next();
  };
  const begun = (): WorkerPort => {
    if (worker) return worker;
    worker = start();
    worker.onmessage = ({ data }) =>
      ended(({ done, failed }) => {
        if (isTrouble(data)) failed(faultOf(data));
        else done(data.answer ?? null);
      });
    worker.onerror = ({ message }) => {
      // What it was sent last may not have reached it.
      sent = null;
      ended(({ failed }) => failed(new Error(message || "the worker does not answer")));
    };
    return worker;
  };
  return {
    begin: () => void begun(),
    ask: (circuit, question) =>
      new Promise((resolve, reject) => {
        waiting.get(question.ask)?.done(null);
        const done = resolve as Waiting["done"];
        waiting.set(question.ask, { circuit, question, done, failed: reject });
        next();
      }),
  };
}
