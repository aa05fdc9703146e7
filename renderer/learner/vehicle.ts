import type { Outcome } from "../../core/base/outcome.ts";
import type { VehicleAnswered, VehicleAsked } from "../workers/vehicle.ts";
import type { VehicleAnswer, VehicleQuestion } from "./keeper.ts";

/** The vehicle as the page knows it: something to ask. It rejects where the program itself is at fault. */
export type AskVehicle = <Question extends VehicleQuestion>(
  question: Question,
) => Promise<Outcome<VehicleAnswer<Question["ask"]>>>;

/** The part of a worker that is needed. */
export interface VehiclePort {
  postMessage(message: VehicleAsked): void;
  onmessage: ((event: MessageEvent<VehicleAnswered>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

interface Waiting {
  readonly done: (outcome: Outcome<VehicleAnswer>) => void;
  readonly failed: (trouble: Error) => void;
}

/** Asks the vehicle in a worker, which is started with the first question. */
export function askVehicle(start: () => VehiclePort): AskVehicle {
  const waiting = new Map<number, Waiting>();
  let port: VehiclePort | null = null;
  let number = 0;

  const begun = (): VehiclePort => {
    const made = start();
    made.onmessage = ({ data }) => {
      const asked = waiting.get(data.number);
      waiting.delete(data.number);
      if (data.outcome) asked?.done(data.outcome);
      else asked?.failed(new Error("the vehicle does not answer"));
    };
    made.onerror = () => {
      for (const { failed } of waiting.values()) failed(new Error("the vehicle does not answer"));
      waiting.clear();
      // What it kept is gone with it: the next exercise begins with another.
      port = null;
    };
    return made;
  };
  return (question) => {
    port ??= begun();
    number += 1;
    const asked = { number, question };
    const answer = new Promise<Outcome<VehicleAnswer>>((done, failed) => waiting.set(asked.number, { done, failed }));
    port.postMessage(asked);
    return answer as ReturnType<AskVehicle> as never;
  };
}
