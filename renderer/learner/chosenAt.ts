import type { Attempt } from "../../core/lesson/attempt.ts";
import { offersAt } from "../../core/lesson/offers.ts";
import type { Lead } from "../../core/live/attachment.ts";
import type { Thing } from "../state/state.ts";
import { counted } from "../words/figures.ts";
import { partTitle } from "../words/part.ts";

/** What the keys have come to, for whoever does not see it: its name, what it is, and how much can be done there. */
export function chosenAt(attempt: Attempt, chosen: Thing | null, black: Lead): string {
  if (!chosen) return "";
  const { circuit } = attempt.exercise;
  const part = chosen.is === "part" ? circuit.parts.find(({ id }) => id === chosen.id) : undefined;
  const possible = offersAt(attempt, chosen, black).filter(({ refusal }) => refusal === null).length;
  const words = [chosen.id, part && partTitle(circuit, part), `${counted(possible, "act")} can be done`];
  return words.filter((word) => word !== undefined).join(", ");
}
