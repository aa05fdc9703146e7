import { type Outcome, ok, refuse } from "../base/outcome.ts";
import { type Attempt, begun, moved } from "./attempt.ts";
import type { Exercise } from "./exercise.ts";
import type { Recorded } from "./move.ts";
import { moveText } from "./moveText.ts";
import type { Vehicle } from "./vehicle.ts";

/** An attempt after each move of a route, begun and untouched first: what is shown step by step. */
export type Replay = readonly Attempt[];

/**
 * Makes every move of a route again on the vehicle. Refuses `route-strange`, with the number of the first move that cannot be made
 * or that the vehicle answers otherwise.
 */
export function replayed(exercise: Exercise, vehicle: Vehicle, route: readonly Recorded[]): Outcome<Replay> {
  const attempts: Attempt[] = [begun(exercise)];
  for (const [index, recorded] of route.entries()) {
    const next = moved(attempts[index]!, vehicle, recorded.move, recorded.time);
    if (!next.ok || !isSame(next.value.route[index]!, recorded))
      return refuse("route-strange", { number: index + 1, move: moveText(recorded.move) });
    attempts.push(next.value);
  }
  return ok(attempts);
}

function isSame(made: Recorded, told: Recorded): boolean {
  const { shows, loads, checks, hint } = made.answer;
  const { answer } = told;
  return (
    made.minutes === told.minutes &&
    shows?.volts === answer.shows?.volts &&
    shows?.ohms === answer.shows?.ohms &&
    shows?.amps === answer.shows?.amps &&
    shows?.word === answer.shows?.word &&
    JSON.stringify(loads.map(({ part, does }) => [part, does])) ===
      JSON.stringify(answer.loads.map(({ part, does }) => [part, does])) &&
    JSON.stringify(Object.entries(checks).sort()) === JSON.stringify(Object.entries(answer.checks).sort()) &&
    hint === answer.hint
  );
}
