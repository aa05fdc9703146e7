import type { WireState } from "../base/states.ts";
import type { Volts } from "../base/units.ts";
import { brightness } from "../trade/instruments.ts";

/**
 * Wrong ideas about circuits that questions are made for. That an open switch has 0 V across it is the commonest of all
 * (Timmermann and Kautz, "Student understanding of open switches and open circuits"); the others are known from teaching.
 */
export const IDEAS = [
  "open-is-zero",
  "no-flow-no-volts",
  "used-up",
  "zero-is-ground",
  "ground-side-is-ground",
  "unloaded-is-good",
  "colour-is-state",
] as const;
/** One of them. */
export type Idea = (typeof IDEAS)[number];

/** The states that a question asks for, in the order they are offered. */
export const STATES = ["powered", "grounded", "between", "floating"] as const;
/** One of them. */
export type State = (typeof STATES)[number];

/** What is true of a point, as far as wrong ideas misread it. */
export interface Facts {
  readonly state: WireState;
  /** What a meter reads to battery negative; 0 where it floats. */
  readonly volts: Volts;
  readonly batteryVolts: Volts;
  readonly nominalVolts: Volts;
  /** Whether current flows at the point. */
  readonly flows: boolean;
  /** Whether the point is joined to the battery's own plus by wires alone. */
  readonly isAtBattery: boolean;
  /** What people take its insulation colour for; null where it tells them nothing. */
  readonly colourSays: "powered" | "grounded" | null;
}

/** What one idea answers; null where it has nothing to say. */
type Says<T> = (facts: Facts) => T | null;

/** What ideas take something for; those that have nothing to say of it are left out. */
export type Sayings<T> = Partial<Readonly<Record<Idea, Says<T>>>>;

const noFlow = ({ state, flows }: Facts): boolean => state === "powered" && !flows;
const onTheWay = ({ state, flows, isAtBattery }: Facts): boolean => state === "powered" && flows && !isAtBattery;

/** The state of a point. */
export const STATE_SAYS: Sayings<State> = {
  "no-flow-no-volts": (facts) => (noFlow(facts) ? "floating" : null),
  "used-up": (facts) => (onTheWay(facts) ? "between" : null),
  "zero-is-ground": ({ state }) => (state === "floating" ? "grounded" : null),
  "colour-is-state": ({ colourSays }) => colourSays,
};

/** The volts of a point to battery negative. */
export const VOLTS_SAYS: Sayings<Volts> = {
  "no-flow-no-volts": (facts) => (noFlow(facts) ? 0 : null),
  "used-up": (facts) => (onTheWay(facts) ? facts.batteryVolts / 2 : null),
  "ground-side-is-ground": ({ state }) => (state === "powered-through-load" ? 0 : null),
  "colour-is-state": ({ colourSays, batteryVolts }) =>
    colourSays === null ? null : colourSays === "powered" ? batteryVolts : 0,
};

/** How a lamp burns from a point to battery negative: by the volts that the meter shows. */
export const LAMP_SAYS: Sayings<string> = {
  "unloaded-is-good": ({ volts, nominalVolts }) => brightness(volts, nominalVolts),
};

/** How a lamp burns from battery positive to a point: what reads 0 V must be ground. */
export const LAMP_FROM_PLUS_SAYS: Sayings<string> = {
  "zero-is-ground": ({ state }) => (state === "floating" ? "bright" : null),
};

/** Volts across a contact that is open, and across one that is closed and carries current. */
export const ACROSS_SAYS = {
  open: { "open-is-zero": () => 0 },
  closed: { "used-up": ({ batteryVolts }: Facts) => batteryVolts / 2 },
} as const satisfies Readonly<Record<string, Sayings<Volts>>>;
