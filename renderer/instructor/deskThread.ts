import { z } from "zod";
import { deskAnswer, emptyDesk } from "./deskAnswer.ts";
import type { DeskAsked, DeskSaid } from "./deskQuestion.ts";

// A worker has a policy of its own, and it allows no code made from text.
z.config({ jitless: true });

const desk = emptyDesk();

/** Answers the questions of the instructor's desk. What it opened stays here: nothing of it but what is to be seen leaves. */
self.onmessage = async ({ data: { number, question } }: MessageEvent<DeskAsked>) => {
  const say = (said: DeskSaid): void => self.postMessage(said);
  try {
    say({ number, answer: await deskAnswer(desk, question, (done) => say({ number, done })) });
  } catch (error) {
    say({ number, trouble: error instanceof Error ? error.message : String(error) });
  }
};
