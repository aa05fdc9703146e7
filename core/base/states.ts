/** What a wire end is, by the one rule of `core/live/wireState.ts`. The words are those of screen, sheet and JSON. */
export const WIRE_STATES = [
  "powered",
  "powered-through-load",
  "grounded",
  "grounded-through-load",
  "between",
  "floating",
  "clash",
  "undecided",
] as const;
export type WireState = (typeof WIRE_STATES)[number];
