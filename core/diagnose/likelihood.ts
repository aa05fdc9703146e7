import type { Amps, Ohms, Share, Volts } from "../base/units.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { OPEN_FROM } from "../trade/instruments.ts";
import { figureOf, type Probe, type Shows } from "./reading.ts";
import { type Fineness, spreadAt } from "./spread.ts";

/**
 * How often a reading is not what the point shows: misread, drawn anew each time, and at the wrong pin, which stays wrong
 * as long as the leads stay (guesses; the sum is what is usual between careful and hurried work).
 */
export const WRONG = { once: 0.03, always: 0.02 } as const;
/** A reading that the person doubts is wrong as often as right. */
const DOUBTED = 0.5;

/** What misses by this many spreads still counts as an outlier of the same suspect rather than as wrong. */
const WIDE = 4;
const WIDE_SHARE = 0.1;
/** Most that a lead shows which hangs on nothing (common practice, no source), and how often near nought is taken so. */
const DRIFT: Volts = 0.3;
const DRIFT_SHARE = 0.2;

/** Below an ohm steps count as ohms, above it as shares. */
const FIRST_OHM: Ohms = 1;

const ROOT = Math.sqrt(2 * Math.PI);

function bell(distance: number, spread: number): number {
  return Math.exp(-0.5 * (distance / spread) ** 2) / (spread * ROOT);
}

/**
 * Density of a reading where the drawing predicts `shown`: a bell with wide skirts, on volts near nought with drift. Per
 * volt or amp; of ohms, which run from tenths to a million, per step of e.
 */
function density(read: number, shown: number, fineness: Fineness): number {
  const spread = spreadAt(shown, fineness);
  const distance = read - shown;
  const bells = (1 - WIDE_SHARE) * bell(distance, spread) + WIDE_SHARE * bell(distance, WIDE * spread);
  const plain = fineness === "ohms" ? bells * (read + FIRST_OHM) : bells;
  if (fineness !== "volts" || Math.abs(shown) > spread) return plain;
  const drifts = read >= 0 && read <= DRIFT ? 1 / DRIFT : 0;
  return (1 - DRIFT_SHARE) * plain + DRIFT_SHARE * drifts;
}

const LAMP = ["dark", "dim", "bright"];
/** Share of looks at a lamp that call it a step brighter or darker, and two steps (guesses). */
const ONE_STEP = 0.03;
const TWO_STEPS = 0.001;
/** Share of other looks and sounds that are taken for something else, and of looks into a plug, which hide more (guesses). */
const MISTAKEN = { plug: 0.15, other: 0.02 } as const;

/** How often what is seen or heard there is taken for something else. */
export function mistakenAt(circuit: Circuit, { red, instrument }: Pick<Probe, "red" | "instrument">): Share {
  const isIntoPlug = instrument === "look" && circuit.connectors.some(({ id }) => id === red);
  return isIntoPlug ? MISTAKEN.plug : MISTAKEN.other;
}

function wordShare(read: string, shown: string, mistaken: Share): number {
  const steps = Math.abs(LAMP.indexOf(read) - LAMP.indexOf(shown));
  if (LAMP.includes(read) && LAMP.includes(shown))
    return steps === 0 ? 1 - ONE_STEP : steps === 1 ? ONE_STEP : TWO_STEPS;
  return read === shown ? 1 - mistaken : mistaken;
}

/** How well a reading fits what is predicted: density of its figure, times the share of the word, mistaken so often. */
export function fitOf(read: Shows, shown: Shows, fineness: Fineness, mistaken: Share): number {
  const [figure, predicted] = [figureOf(read), figureOf(shown)];
  const fit = figure === null || predicted === null ? 1 : density(figure, predicted, fineness);
  return fit * (read.word === null || shown.word === null ? 1 : wordShare(read.word, shown.word, mistaken));
}

/** The best that a reading could fit: what the prediction itself would give. */
export function bestFit(shown: Shows, fineness: Fineness, mistaken: Share): number {
  return fitOf(shown, shown, fineness, mistaken);
}

/** Most millivolts across a fuse that carries current, volts. */
const MOST_DROP: Volts = 0.2;

/** Most amps that a clamp is read to (a guess). */
const MOST_AMPS: Amps = 40;

/** Density of a reading that may be anything; across a fuse half of them are millivolts. */
function anywhere(read: number, nominalVolts: Volts, fineness: Fineness): number {
  if (fineness === "ohms") return 1 / Math.log(OPEN_FROM);
  if (fineness === "amps") return 1 / MOST_AMPS;
  const far = 1 / (1.2 * nominalVolts);
  if (fineness === "volts") return far;
  return 0.5 * far + (Math.abs(read) <= MOST_DROP ? 0.25 / MOST_DROP : 0);
}

/**
 * How likely a reading is where nothing is known of what the point shows: half of wrong readings show nothing at all,
 * the others anything up to a fifth over nominal.
 */
export function wrongOf(read: Shows, nominalVolts: Volts, fineness: Fineness): number {
  const figure = figureOf(read);
  const wrong =
    figure === null ? 1 : 0.5 * nothingThere(figure, fineness) + 0.5 * anywhere(figure, nominalVolts, fineness);
  return wrong * (read.word === null ? 1 : 1 / 3);
}

/** Density of a reading at a point that shows nothing: no volts, no amps, open on ohms. */
function nothingThere(read: number, fineness: Fineness): number {
  if (fineness === "ohms") return density(read, OPEN_FROM, fineness);
  return bell(read, 2 * spreadAt(0, fineness === "amps" ? fineness : "volts"));
}

/** How likely a reading is where the cause is not on the drawing: anything, evenly. */
export function elsewhereOf(read: Shows, nominalVolts: Volts, fineness: Fineness): number {
  const figure = figureOf(read);
  return (figure === null ? 1 : anywhere(figure, nominalVolts, fineness)) * (read.word === null ? 1 : 1 / 3);
}

/**
 * How likely several readings with the same leads are. They are not independent: at a wrong pin all are wrong, so a repeat
 * buys no more than what is drawn anew.
 */
export function likelihoodOf(
  fits: readonly number[],
  wrongs: readonly number[],
  isDoubted: readonly boolean[],
): number {
  let stuck = 1;
  let plain = 1;
  fits.forEach((fit, index) => {
    const wrong = wrongs[index]!;
    const share = isDoubted[index] ? DOUBTED : WRONG.once;
    plain *= (1 - share) * fit + share * wrong;
    // What is wrong in the same way each time tells nothing anew.
    stuck *= wrong;
  });
  return (1 - WRONG.always) * plain + WRONG.always * stuck;
}
