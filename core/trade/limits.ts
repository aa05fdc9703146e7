import type { Amps, Ohms, Volts } from "../base/units.ts";
import type { Source } from "./source.ts";
import { MEMORY, PRACTICE, published, quoted } from "./source.ts";

/** Most volts that a place may lose, circuit working. */
export interface DropLimit {
  readonly place: string;
  readonly volts: Volts;
  readonly source: Source;
}

const BENTLEY = published(
  "Bentley Publishers, passenger car service manual 1999-2005, Electrical System, voltage drop",
);
const CRANKING = published("US Army TM 10-3930-671-24, pages F-299 and F-303");
const TRUCK = published("US Army TM 9-2320-211-20");
const GROUNDS = published("FenderBender, Ground Circuits part 12, 25 November 2019");
const GARDEN = published("Cub Cadet SLTX1000 service manual, page 189");
const SOLENOID = published("US Army TM 5-2420-230-24-2, page 13-33");

/**
 * Drop limits under load. Sources: Bentley Publishers service manual 1999-2005 (a set it lays to SAE, no number given), US
 * Army TM 10-3930-671-24 and TM 9-2320-211-20, FenderBender 25 November 2019, Cub Cadet SLTX1000 manual page 189; some are
 * common practice, no source.
 */
export const DROP_LIMITS = [
  { place: "small-connection", volts: 0, source: BENTLEY },
  { place: "high-current-connection", volts: 0.1, source: BENTLEY },
  { place: "high-current-cable", volts: 0.2, source: BENTLEY },
  { place: "contact", volts: 0.3, source: BENTLEY },
  { place: "any-part", volts: 1, source: BENTLEY },
  { place: "post-clamp-cranking", volts: 0, source: CRANKING },
  { place: "positive-cable-cranking", volts: 0.4, source: CRANKING },
  { place: "truck-24-cable-to-solenoid", volts: 0.2, source: TRUCK },
  { place: "truck-24-starter-ground", volts: 0.1, source: TRUCK },
  { place: "ground", volts: 0.1, source: GROUNDS },
  { place: "module-ground", volts: 0.05, source: GROUNDS },
  { place: "ground-side-good", volts: 0.1, source: GARDEN },
  { place: "ground-side-fault", volts: 0.2, source: GARDEN },
  { place: "starter-positive-side", volts: 0.6, source: PRACTICE },
  { place: "starter-ground-side", volts: 0.3, source: PRACTICE },
  { place: "feed-side", volts: 0.5, source: PRACTICE },
  { place: "harness-wire", volts: 0.2, source: PRACTICE },
] as const satisfies readonly DropLimit[];
export type DropPlace = (typeof DROP_LIMITS)[number]["place"];

/** The limit of a place. */
export function dropLimit(place: DropPlace): DropLimit {
  return DROP_LIMITS.find((each) => each.place === place)!;
}

/** Whether a drop of either sign, read under load, is within a limit; a hair of rounding is let through. */
export function isWithin(dropVolts: Volts, limitVolts: Volts): boolean {
  return Math.abs(dropVolts) <= limitVolts + 1e-9;
}

/** Most volts along one side of a cranking circuit: 0.20 V for each 100 A (US Army TM 10-3930-671-24). */
export function crankingDropLimit(amps: Amps): DropLimit {
  return { place: "cranking-side", volts: (0.2 * Math.abs(amps)) / 100, source: CRANKING };
}

/** Most volts lost in a starter solenoid's control circuit, both sides added (US Army TM 5-2420-230-24-2, page 13-33). */
export const SOLENOID_CONTROL_LIMITS: Readonly<Record<12 | 24 | 32, DropLimit>> = {
  12: { place: "solenoid-control", volts: 1, source: SOLENOID },
  24: { place: "solenoid-control", volts: 2, source: SOLENOID },
  32: { place: "solenoid-control", volts: 2.6, source: SOLENOID },
};

/** What a drop budget allows where nothing else is said. */
export interface BudgetLimits {
  readonly connection: DropLimit;
  readonly ground: DropLimit;
  readonly moduleGround: DropLimit;
  readonly contact: DropLimit;
  readonly wire: DropLimit;
  readonly feedSide: DropLimit;
  readonly returnSide: DropLimit;
}

/**
 * The limits of the drop budget, chosen from DROP_LIMITS; the return side as the feed side. A place keeps its limit on 24 V
 * (common practice, no source); only shares of the supply double.
 */
export const BUDGET_LIMITS: BudgetLimits = {
  connection: dropLimit("high-current-connection"),
  ground: dropLimit("ground"),
  moduleGround: dropLimit("module-ground"),
  contact: dropLimit("contact"),
  wire: dropLimit("harness-wire"),
  feedSide: dropLimit("feed-side"),
  returnSide: { ...dropLimit("feed-side"), place: "return-side" },
};

/** An ohm check of a thin ground wire: expect less than this; says nothing for loads above `worthUpToAmps`. */
export const GROUND_OHM_CHECK = {
  belowOhms: 2 as Ohms,
  worthUpToAmps: 5 as Amps,
  source: published("a vehicle maker's diagnostic methods, checking ground-providing circuits, 2012"),
};

/** Ohms of a new connector contact, and from where it counts as corroded (from memory). */
export const CONNECTOR_CONTACT = {
  leastOhms: 0.005 as Ohms,
  mostOhms: 0.01 as Ohms,
  corrodedFromOhms: 0.05 as Ohms,
  source: MEMORY,
};

/** Ceiling and floor for a lamp tester on electronic circuits (Mercury service manuals no. 22, 2002, and no. 24, 1999). */
export const TESTER_LIMITS = {
  belowAmps: 0.3 as Amps,
  falseGlowAmps: 0.1 as Amps,
  source: published("Mercury / MerCruiser service manuals no. 22 (2002) page 5A-5 and no. 24 (1999) page 5D-4"),
};

/**
 * What to say of a tester that draws these amps, on a module's circuit: `refused` from 0.3 A, `false-glow` up to 0.1 A (it
 * may glow where the answer is no light), else `allowed`.
 */
export function testerOnModule(amps: Amps): "allowed" | "refused" | "false-glow" {
  if (amps >= TESTER_LIMITS.belowAmps) return "refused";
  return amps <= TESTER_LIMITS.falseGlowAmps ? "false-glow" : "allowed";
}

/** Above these volts DC a circuit is high voltage (UN R100, ISO 6469-3 class B, quoted), and out of this program's scope. */
export const HIGH_VOLTAGE = {
  aboveVolts: 60 as Volts,
  source: quoted("UN R100 and ISO 6469-3 class B, named at motion-drives.com, 10 August 2020"),
};

/** Whether these volts DC, of either sign, count as high voltage. */
export function isHighVoltage(voltsDc: Volts): boolean {
  return Math.abs(voltsDc) > HIGH_VOLTAGE.aboveVolts;
}

/** Bonding of exposed high-voltage parts to the body: less than these ohms, at this current or more (AIS-038 draft, 2019). */
export const BONDING = {
  belowOhms: 0.1 as Ohms,
  atAmps: 0.2 as Amps,
  source: published("AIS-038 revision 2 draft D1, September 2019, 5.1.2.2"),
};

/** Whether a bonding reading passes; `null` where the test current was too small to tell. */
export function passesBonding(ohms: Ohms, testAmps: Amps): boolean | null {
  return testAmps < BONDING.atAmps ? null : ohms < BONDING.belowOhms;
}

/** Opening in which unsupervised closing must reverse before the force is reached (NHTSA interpretation 10790, FMVSS 118 S.5). */
export const PINCH_ZONE = {
  leastMm: 4,
  mostMm: 200,
  beforeNewtons: 100,
  source: published("NHTSA interpretation 10790 on FMVSS 118, S.5"),
};

/** Whether a remaining opening lies in the zone where closing must reverse. */
export function isInPinchZone(openingMm: number): boolean {
  return openingMm >= PINCH_ZONE.leastMm && openingMm <= PINCH_ZONE.mostMm;
}
