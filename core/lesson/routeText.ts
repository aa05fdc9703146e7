import { figure } from "../base/figure.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { finenessOf } from "../diagnose/evidence.ts";
import { showsText } from "../diagnose/readingText.ts";
import type { Attempt } from "./attempt.ts";
import type { Answer, Move, Recorded } from "./move.ts";
import { moveText } from "./moveText.ts";

/** A move of a route in words, for a list beside the drawing or in the terminal. */
export interface RouteLine {
  /** From 1. */
  readonly number: number;
  /** As it is typed. */
  readonly move: string;
  readonly minutes: string;
  /** Number by which a verdict names the reading; null where nothing was read. */
  readonly reading: number | null;
  /** What the vehicle showed; "" where nothing can be seen. */
  readonly shown: string;
}

/** The route of an attempt, one line a move. */
export function routeLines({ exercise, route }: Pick<Attempt, "exercise" | "route">): readonly RouteLine[] {
  let readings = 0;
  return route.map(({ move, minutes, answer }: Recorded, index) => ({
    number: index + 1,
    move: moveText(move),
    minutes: figure(minutes, 1),
    reading: answer.shows ? ++readings : null,
    shown: shownText(exercise.circuit, move, answer),
  }));
}

function shownText(circuit: Circuit, move: Move, { shows, loads, checks, hint }: Answer): string {
  return [
    shows ? showsText(shows, move.do === "probe" ? finenessOf(circuit, move) : "volts") : "",
    loads.map(({ part, does }) => `${part} ${does}`).join(", "),
    Object.entries(checks)
      .map(([check, word]) => `${check} ${word}`)
      .join(", "),
    hint ?? "",
  ]
    .filter((each) => each !== "")
    .join("; ");
}
