import type { Circuit } from "../../core/circuit/circuit.ts";
import { answerTo } from "./answer.ts";
import type { Answered, Asked } from "./question.ts";
import { troubleIn } from "./trouble.ts";

let kept: Circuit | null = null;

/** Answers one question after the other, about the circuit sent last. */
self.onmessage = ({ data }: MessageEvent<Asked>) => {
  if (data.circuit) kept = data.circuit;
  self.postMessage(reply(data));
};

function reply({ number, question }: Asked): Answered {
  if (!kept) return { number, trouble: "no circuit was sent" };
  try {
    return { number, answer: answerTo(kept, question) };
  } catch (error) {
    return { number, ...troubleIn(error) };
  }
}
