import type { WireState } from "../../core/base/states.ts";
import type { Circuit, Condition } from "../../core/circuit/circuit.ts";
import { jumperCheck } from "../../core/diagnose/flow/jumper.ts";
import { sharesOf } from "../../core/diagnose/flow/shares.ts";
import { sneaksOf } from "../../core/diagnose/flow/sneaks.ts";
import { NO_ORDER, probeOrder } from "../../core/diagnose/order.ts";
import { proofRun } from "../../core/diagnose/proofRun.ts";
import { mayBeProbed } from "../../core/diagnose/scope.ts";
import { seenIn } from "../../core/diagnose/seen.ts";
import type { ProbeOrder } from "../../core/diagnose/step.ts";
import { positionTable } from "../../core/diagnose/tableReading.ts";
import { wiggleSheet } from "../../core/diagnose/wiggle.ts";
import { conditionText } from "../../core/live/condition.ts";
import type { Fault } from "../../core/live/fault.ts";
import { judge, type Verdict } from "../../core/live/judge.ts";
import { type Live, liveOf } from "../../core/live/live.ts";
import type { Answers, OrderAnswer, Question } from "./question.ts";
import { printedPages } from "./sheets.ts";

/** Answers a question about a circuit. A check or connector that the circuit does not have gives an empty answer. */
export function answerTo(circuit: Circuit, question: Question): Answers[Question["ask"]] {
  switch (question.ask) {
    case "order":
      return orderAnswer(circuit, question);
    case "table":
      return question.connectors.map((connector) => positionTable(circuit, connector, question.faults));
    case "verdicts":
      return verdictsOf(circuit, question.faults);
    case "proof":
      return proofAnswer(circuit, question);
    case "pages":
      return printedPages(circuit, question.wanted);
    case "shares":
      return sharesOf(circuit, question.place);
    case "sneaks":
      return sneaksOf(circuit);
    case "jumper":
      return jumperAnswer(circuit, question);
  }
}

function orderAnswer(
  circuit: Circuit,
  {
    complaint,
    observed,
    readings,
    batteryVolts,
    sleepingAmps,
    when,
    wiggled,
    weighing,
  }: Extract<Question, { ask: "order" }>,
): OrderAnswer {
  const seen = seenIn(circuit, complaint, observed, sleepingAmps);
  if (!seen) return { order: NO_ORDER, states: [], wiggle: null };
  const order = probeOrder(circuit, seen.complaint, {
    others: seen.others,
    readings,
    batteryVolts,
    weighing,
    wantsDetours: true,
  });
  const { complaint: own, others } = seen;
  const wiggle =
    own.word === "sometimes" && mayBeProbed(circuit).ok ? wiggleSheet(circuit, own, others, when, wiggled) : null;
  return { order, states: statesOf(circuit, order), wiggle };
}

function jumperAnswer(
  circuit: Circuit,
  { fuseAmps, ...wanted }: Extract<Question, { ask: "jumper" }>,
): Answers["jumper"] {
  const probed = mayBeProbed(circuit);
  return probed.ok ? jumperCheck(circuit, { ...wanted, ...(fuseAmps !== null && { fuseAmps }) }) : probed;
}

function proofAnswer(circuit: Circuit, { complaint, ...asked }: Extract<Question, { ask: "proof" }>): Answers["proof"] {
  const check = circuit.checks.find(({ id }) => id === complaint);
  const proof = check && proofRun({ circuit, complaint: check, ...asked });
  return { run: proof?.ok ? proof.value : null };
}

/** Each condition is solved once, however many rows are read in it. */
function statesOf(circuit: Circuit, { steps }: ProbeOrder): readonly (readonly WireState[])[] {
  const solved = new Map<string, Live>();
  const liveIn = (condition: Condition): Live => {
    const key = conditionText(condition);
    const live = solved.get(key) ?? liveOf(circuit, condition);
    solved.set(key, live);
    return live;
  };
  return steps.map(({ point, settings }) =>
    settings.map(({ condition }) => liveIn(condition).points.get(point)?.state ?? "floating"),
  );
}

function verdictsOf(circuit: Circuit, faults: readonly Fault[]): Readonly<Record<string, Verdict>> {
  return Object.fromEntries(
    circuit.checks.map((check) => [
      check.id,
      judge(check, liveOf(circuit, check.condition, faults).parts.get(check.load)),
    ]),
  );
}
