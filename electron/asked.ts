import { type Outcome, ok, refuse } from "../core/base/outcome.ts";
import type { Volts } from "../core/base/units.ts";
import type { Circuit, FunctionCheck } from "../core/circuit/circuit.ts";
import { checkFor, drainCheck, sleepingAmpsOf } from "../core/diagnose/drain.ts";
import type { Reading } from "../core/diagnose/reading.ts";
import { batteryVoltsOf, parseReading } from "../core/diagnose/readingText.ts";
import { complaintOf, type Seen } from "../core/diagnose/seen.ts";
import type { Observation } from "../core/diagnose/suspects.ts";
import type { Weighing } from "../core/diagnose/weighing.ts";
import { parseWeight } from "../core/diagnose/weightText.ts";
import { type WiggleSheet, wiggleSheet } from "../core/diagnose/wiggle.ts";
import { readHappens, readWiggled } from "../core/diagnose/wiggleEntry.ts";
import { type Fault, parseFault } from "../core/live/fault.ts";
import { OBSERVED_WORDS } from "../core/live/judge.ts";

/** The faults spelled as `W13:open`; refuses the first that the circuit cannot have. */
export function faultsOf(circuit: Circuit, texts: readonly string[]): Outcome<readonly Fault[]> {
  return all(texts.map((text) => parseFault(circuit, text)));
}

/**
 * The function check that fails, seen dead, or wrong where it should be off; an observation of it says how else it
 * fails; `sleeping` is the current expected of a sleeping vehicle. Refuses `sleeping-amps`, `order-complaint`, `order-no-checks`, `check-unknown` and `observed-spelling`.
 */
export function seenOf(
  circuit: Circuit,
  complaint: string | undefined,
  observed: readonly string[] = [],
  sleeping?: string,
): Outcome<Seen> {
  if (complaint === undefined && circuit.checks.length === 0) return refuse("order-no-checks");
  if (complaint === undefined) return refuse("order-complaint", { checks: checkIds(circuit) });
  const amps = sleeping === undefined ? ok(null) : sleepingAmpsOf(sleeping);
  if (!amps.ok) return amps;
  const found = checkFor(circuit, complaint);
  if (!found) return refuse("check-unknown", { check: complaint, checks: checkIds(circuit) });
  const observations = all(observed.map((text) => observationOf(circuit, text)));
  if (!observations.ok) return observations;
  const own = observations.value.find((observation) => observation.check === found);
  return ok({
    complaint: complaintOf(circuit, found, own?.word, amps.value),
    others: observations.value.filter((observation) => observation !== own),
  });
}

/** Readings and battery volts, as they were measured, and what changes the weights. */
export interface KnownNow {
  readonly readings: readonly Reading[];
  readonly batteryVolts: Volts | null;
  readonly weighing: Weighing;
}

/** What changes the starting weights, as typed. */
export interface WeighingTyped {
  readonly weigh?: readonly string[];
  readonly shop?: readonly string[];
  /** Verdicts of earlier jobs. */
  readonly solved?: readonly string[];
}

/** Factors of the circuit and the shop as typed, and earlier verdicts. Refuses as `parseWeight` does. */
export function weighingOf(circuit: Circuit, { weigh = [], shop = [], solved = [] }: WeighingTyped): Outcome<Weighing> {
  const own = all(weigh.map((text) => parseWeight(text, circuit)));
  if (!own.ok) return own;
  const ofShop = all(shop.map((text) => parseWeight(text, null)));
  return ofShop.ok ? ok({ circuit: own.value, shop: ofShop.value, solved }) : ofShop;
}

/** What is known beside complaint and checks: readings, battery volts and weights, as typed. Refuses as they do. */
export function knownOf(
  circuit: Circuit,
  read: readonly string[] = [],
  battery?: string,
  weights: WeighingTyped = {},
): Outcome<KnownNow> {
  const weighing = weighingOf(circuit, weights);
  if (!weighing.ok) return weighing;
  const readings = all(read.map((text) => parseReading(circuit, text)));
  if (!readings.ok) return readings;
  const volts = battery === undefined ? ok(null) : batteryVoltsOf(circuit, battery);
  return volts.ok ? ok({ readings: readings.value, batteryVolts: volts.value, weighing: weighing.value }) : volts;
}

/** The wiggle sheet of a complaint, taken to fail sometimes. Refuses `wiggle-when`, `wiggle-place` and as `readSwing` does. */
export function wiggleOf(
  circuit: Circuit,
  { complaint, others }: Seen,
  when = "",
  wiggled: readonly string[] = [],
): Outcome<WiggleSheet> {
  const happens = readHappens(when);
  if (!happens.ok) return happens;
  const read = all(wiggled.map((text) => readWiggled(text, circuit.nominalVolts)));
  if (!read.ok) return read;
  const sheet = wiggleSheet(circuit, { ...complaint, word: "sometimes" }, others, happens.value, read.value);
  const places = sheet.rows.map(({ place }) => place.id);
  const stray = read.value.find(({ place }) => !places.includes(place));
  return stray ? refuse("wiggle-place", { place: stray.place, places: places.join(", ") }) : ok(sheet);
}

/** The connector of this id, or the circuit's first. Refuses `connector-none` and `connector-unknown`. */
export function connectorOf(circuit: Circuit, typed: string | undefined): Outcome<string> {
  const ids = circuit.connectors.map((connector) => connector.id);
  const id = typed ?? ids[0];
  if (id === undefined) return refuse("connector-none");
  return ids.includes(id) ? ok(id) : refuse("connector-unknown", { connector: id, connectors: ids.join(", ") });
}

function observationOf(circuit: Circuit, text: string): Outcome<Observation> {
  const [id = "", typed = ""] = text.split("=");
  const word = OBSERVED_WORDS.find((each) => each === typed.trim().replaceAll(" ", "-"));
  if (!word) return refuse("observed-spelling", { text, words: OBSERVED_WORDS.join(", ") });
  const check = checkOf(circuit, id);
  return check.ok ? ok({ check: check.value, word }) : check;
}

function checkOf(circuit: Circuit, id: string): Outcome<FunctionCheck> {
  const check = circuit.checks.find((each) => each.id === id);
  return check ? ok(check) : refuse("check-unknown", { check: id, checks: checkIds(circuit) });
}

function checkIds(circuit: Circuit): string {
  const drain = drainCheck(circuit);
  return [...circuit.checks, ...(drain ? [drain] : [])].map((check) => check.id).join(", ");
}

/** All values, or the first refusal. */
function all<T>(outcomes: readonly Outcome<T>[]): Outcome<readonly T[]> {
  const values: T[] = [];
  for (const outcome of outcomes) {
    if (!outcome.ok) return outcome;
    values.push(outcome.value);
  }
  return ok(values);
}
