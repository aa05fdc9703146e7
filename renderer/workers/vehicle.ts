import { z } from "zod";
import type { Outcome } from "../../core/base/outcome.ts";
import { type VehicleAnswer, type VehicleQuestion, vehicleKeeper } from "../learner/keeper.ts";

/** A question to the vehicle on its way. */
export interface VehicleAsked {
  readonly number: number;
  readonly question: VehicleQuestion;
}

/** Its answer on the way back; null where the program itself is at fault, and nothing is told of how. */
export interface VehicleAnswered {
  readonly number: number;
  readonly outcome: Outcome<VehicleAnswer> | null;
}

// The page's policy allows no code made from text, which the validator would otherwise use to be quick.
z.config({ jitless: true });

const answerTo = vehicleKeeper();
let last: Promise<unknown> = Promise.resolve();

/** One question after the other: each move goes on from the one before. */
self.onmessage = ({ data }: MessageEvent<VehicleAsked>) => {
  last = last.then(async () => {
    const answered: VehicleAnswered = {
      number: data.number,
      // What broke may name the fault, so that nothing of it leaves here.
      outcome: await answerTo(data.question).catch(() => null),
    };
    self.postMessage(answered);
  });
};
