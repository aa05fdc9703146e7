import type { WireState } from "../states.ts";

/** Words of a circuit sheet: banner, legend, title block, flags. */
export const SHEET_WORDS = {
  positionDrawn: "Position drawn:",
  allAtRest: "all controls at rest",
  key: "key",
  held: "held",
  apart: "apart",
  out: "out",
  driven: "driven",
  batteryOff: "battery off",
  running: "engine running",
  weak: "weak",
  withoutRoom: "Wires with no room for their colour:",
  to: "to",
  page: "page",
  notPlaced: "not placed",
  notJoined: "not joined",
  vehicle: "Vehicle",
  circuit: "Circuit",
  revision: "revision",
  pageTitle: "Page",
  sheet: "Sheet",
  of: "of",
  voltsFor: "Volts for",
  code: "Code",
  date: "Date",
  atRestInInk: "no live state",
  atThePost: "at the battery",
  lineAndSign: "Line and sign",
  current: "current, + to −",
  contactNow: "contact now",
  contactRest: "at rest",
  chassis: "body (chassis)",
  swatch: "base colour and stripe",
  alwaysFed: "always fed",
} as const;

/** Wire states as they are said to people. */
export const STATE_WORDS: Readonly<Record<WireState, string>> = {
  powered: "powered",
  "powered-through-load": "powered through a load",
  grounded: "grounded",
  "grounded-through-load": "grounded through a load",
  between: "between",
  floating: "floating",
  clash: "clash: dead short",
  undecided: "undecided",
};

/** States of parts that are worth a word on the drawing; others are the usual ones. */
export const PART_STATE_WORDS: Readonly<Record<string, string>> = {
  "pulled-in": "pulled in",
  melted: "melted",
  tripped: "tripped",
};

/** What a part does that works, as a word beside it on the drawing; of one that is off there is none. */
export const WORKING_WORDS: Readonly<Record<string, string>> = {
  on: "on",
  dim: "dim",
  forward: "runs forward",
  reverse: "runs in reverse",
  stalled: "held still",
  flashing: "flashes",
  charging: "charges",
};
