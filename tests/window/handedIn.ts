import { readFileSync } from "node:fs";
import { assert, type Outcome } from "../../core/base/outcome.ts";
import { probeFor } from "../../core/diagnose/candidates.ts";
import { type Attempt, begun, evidentIn, groundOf, moved } from "../../core/lesson/attempt.ts";
import { exerciseFor } from "../../core/lesson/exercise.ts";
import { nextRow } from "../../core/lesson/hint.ts";
import { leadsText, parseMoves } from "../../core/lesson/moveText.ts";
import { plantOf } from "../../core/lesson/plant.ts";
import { conditionText } from "../../core/live/condition.ts";
import { readCircuit } from "../../schemas/circuit.ts";
import { formatExercise, type Opened, openForLearner, readExercise } from "../../schemas/exercise.ts";
import { formatHandin } from "../../schemas/handin.ts";
import { ROUNDS_LIMITS } from "../../schemas/seal.ts";

const SAMPLES = new URL("../../samples/", import.meta.url);

/** What is read in these exercises: by meter and lamp alone. */
const ALLOWED = ["meter volts", "meter ohms", "4 A lamp", "look"] as const;

/** The value of an outcome that a story has made sure of. */
function got<T>(outcome: Outcome<T>): T {
  assert(outcome.ok, outcome.ok ? "" : outcome.refusal.code);
  return outcome.value;
}

/** The text of an exercise of a sample; sealed as quickly as a seal may be. */
export async function exerciseText(
  asked: Readonly<Record<"sample" | "check" | "fault" | "title" | "passphrase", string>>,
): Promise<string> {
  const { sample, fault, title, passphrase } = asked;
  const circuit = got(readCircuit(readFileSync(new URL(`${sample}.circuit.json`, SAMPLES))));
  const check = circuit.checks.find(({ id }) => id === asked.check)!;
  const exercise = got(
    exerciseFor(circuit, { check, fault: got(plantOf(circuit, fault)), title, instruments: ALLOWED }),
  );
  const hidden = { fault, seed: null, note: "After the lesson on feeds." };
  return got(await formatExercise(exercise, hidden, passphrase, ROUNDS_LIMITS.least));
}

/** An exercise as a learner's program opens it. */
export async function asLearner(text: string): Promise<Opened> {
  return got(await openForLearner(got(readExercise(text))));
}

/** What a learner handed in after these moves, as they are typed. */
export async function handedIn(learner: string, opened: Opened, ...texts: readonly string[]): Promise<string> {
  return formatHandin(learner, opened, after(opened, texts).route);
}

function after({ exercise, vehicle }: Opened, texts: readonly string[]): Attempt {
  let attempt = begun(exercise);
  for (const text of texts)
    for (const move of got(parseMoves(exercise.circuit, text, attempt.condition)))
      attempt = got(moved(attempt, vehicle, move, "2026-03-02T08:00:00Z"));
  return attempt;
}

/** The moves of somebody who reads what the planner would, until nothing more can be told; trim comes off where it must. */
export function asPlanned(opened: Opened): readonly string[] {
  const ground = groundOf(opened.exercise);
  const moves: string[] = [];
  for (;;) {
    const attempt = after(opened, moves);
    const row = nextRow(ground, attempt, evidentIn(attempt));
    if (row === null) return moves;
    const { candidate } = ground.rows.columns[row]!;
    const { access } = candidate.at;
    if (access !== null && !attempt.open.includes(access)) moves.push(`open ${access}`);
    for (const number of candidate.conditions) {
      const condition = ground.rows.conditions[number]!;
      moves.push(`${leadsText(probeFor(candidate, condition))} @ ${conditionText(condition) || "rest"}`);
    }
  }
}
