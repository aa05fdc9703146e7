import { z } from "zod";
import type { Recorded } from "../../core/lesson/move.ts";
import type { KeptAttempt } from "../../schemas/calls.ts";
import { recordedShape } from "../../schemas/handinShape.ts";
import { LIMITS } from "../../schemas/limits.ts";
import { unpacked } from "./packed.ts";

const routeShape = z.array(recordedShape).max(LIMITS.moves);

/** A route as it lies in the library, packed; null where its bytes changed. */
export function routeIn(blob: Buffer): KeptAttempt["route"] | null {
  const text = unpacked(blob);
  const read = text === null ? null : routeShape.safeParse(JSON.parse(text));
  return read?.success ? read.data : null;
}

/** What the row of an exercise tells of a route: minutes to hundredths, moves, and whether a verdict ended it. */
export function factsOfRoute(route: readonly Recorded[]): {
  readonly minutes: number;
  readonly moves: number;
  readonly isOver: boolean;
} {
  const minutes = route.reduce((sum, each) => sum + each.minutes, 0);
  return {
    minutes: Math.round(minutes * 100) / 100,
    moves: route.length,
    isOver: route.at(-1)?.move.do === "verdict",
  };
}
