import type { Minutes } from "../base/units.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import { springsBack } from "../circuit/points.ts";
import { handsFor } from "../diagnose/candidates.ts";
import { finenessOf } from "../diagnose/evidence.ts";
import { feedingOf } from "../diagnose/feeding.ts";
import { isAct, isBySense } from "../diagnose/step.ts";
import { MINUTES, minutesToOpen, placeOf, reachOf, type TestPoint, testPointsOf } from "../diagnose/testPoint.ts";
import type { Exercise } from "./exercise.ts";
import type { Move, ProbeMove } from "./move.ts";
import { throwsTo, triedAs } from "./stand.ts";

/** What a meter is set to: changing it takes a moment. */
export type Mode = "volts" | "millivolts" | "ohms" | "amps" | "lamp";

/** How the person stands on the vehicle: where, what the meter is set to, which trim is off. */
export interface Standing {
  readonly condition: Condition;
  /** Access groups that are off. */
  readonly open: readonly string[];
  /** Access group of the place last worked at, null for one that lies free; undefined before the first. */
  readonly place: string | null | undefined;
  readonly mode: Mode | null;
}

/** Minutes that a move takes from where the person stands: the same figures that the probe order reckons with. */
export function minutesOf({ circuit, hints }: Exercise, now: Standing, move: Move): Minutes {
  switch (move.do) {
    case "throw":
    case "engine":
      return MINUTES.throwControl;
    case "try":
      return MINUTES.throwControl * Math.max(1, throwsTo(now.condition, triedAs(circuit, move.check)));
    case "open":
      return minutesToOpen(circuit, move.access, new Set(now.open));
    case "unplug":
      return MINUTES.plugApart + wayTo(circuit, now, move);
    case "plug-in":
    case "put-in":
      return MINUTES.throwControl + wayTo(circuit, now, move);
    case "take-out":
      return placeOf(circuit, move.part).minutes + wayTo(circuit, now, move);
    case "renew": {
      const isOut = now.condition.out?.includes(move.part) ?? false;
      return (isOut ? 0 : placeOf(circuit, move.part).minutes) + MINUTES.throwControl + wayTo(circuit, now, move);
    }
    case "probe":
      return probeMinutes(circuit, now, move) + wayTo(circuit, now, move) + modeMinutes(circuit, now, move);
    case "hint":
      return hints.minutes;
    case "verdict":
      return 0;
  }
}

function wayTo(circuit: Circuit, { place }: Standing, move: Move): Minutes {
  const there = placeAfter(circuit, move);
  return place === undefined || there === undefined || there === place ? 0 : MINUTES.changePlace;
}

/** Access group of the place a move is made at, null where it lies free; undefined where it is made anywhere. */
export function placeAfter(circuit: Circuit, move: Move): string | null | undefined {
  switch (move.do) {
    case "unplug":
    case "plug-in":
      return reachOf(circuit, move.connector).access ?? null;
    case "take-out":
    case "put-in":
    case "renew":
      return reachOf(circuit, move.part).access ?? null;
    case "probe":
      // A click is heard from anywhere.
      return move.instrument === "listen" ? undefined : placeOfProbe(circuit, move).access;
    default:
      return undefined;
  }
}

/** The place that a probe is put on: a test point, or of a look or an act the part or the plug it is done at. */
export function placeOfProbe(circuit: Circuit, { red, black, instrument }: ProbeMove): TestPoint {
  if (isAct(instrument)) return placeOf(circuit, feedingOf(circuit)(red)?.plug ?? red);
  if (isBySense(instrument)) return placeOf(circuit, red);
  const points = testPointsOf(circuit);
  const at = points.find(({ point }) => point === red) ?? points.find(({ point }) => point === black);
  return at ?? placeOf(circuit, red);
}

function probeMinutes(circuit: Circuit, { condition }: Standing, move: ProbeMove): Minutes {
  const { red, instrument, lampTo } = move;
  switch (instrument) {
    case "look":
      return placeOf(circuit, red).minutes + (circuit.connectors.some(({ id }) => id === red) ? MINUTES.plugApart : 0);
    case "listen":
      return MINUTES.listen + 2 * MINUTES.throwControl;
    case "scan tool":
      return MINUTES.scanTool;
    case "fed direct":
      return MINUTES.plugApart + MINUTES.jumper;
    case "fed loose":
      return MINUTES.plugApart + MINUTES.jumper + MINUTES.offMechanism;
    case "like relay":
      return MINUTES.swapRelay + MINUTES.throwControl;
    default: {
      const at = placeOfProbe(circuit, move);
      const second = handsAt(circuit, condition, at, lampTo !== null) === 2 ? MINUTES.secondPerson : 0;
      return at.minutes + (lampTo === null ? 0 : MINUTES.lamp) + (instrument === "clamp" ? MINUTES.clamp : 0) + second;
    }
  }
}

/** Pairs of hands at a point as the vehicle stands: a control that springs back is held meanwhile. */
export function handsAt(circuit: Circuit, { set = {} }: Condition, at: TestPoint, isBusy: boolean): 1 | 2 {
  const held = Object.entries(set).filter(([key, position]) => springsBack(circuit, key, position));
  const hands = held.map(([key, position]) =>
    handsFor(circuit, at, { conditions: [], sweepOf: key, positions: [position], isAsleep: false }, 0, isBusy),
  );
  return at.hands === 2 || hands.includes(2) ? 2 : 1;
}

function modeMinutes(circuit: Circuit, { mode }: Standing, move: ProbeMove): Minutes {
  const next = modeAfter(circuit, move);
  return mode === null || next === null || next === mode ? 0 : MINUTES.meterMode;
}

/** What the meter is set to for a probe; null where it is not used. */
export function modeAfter(circuit: Circuit, { red, black, instrument, lampTo }: ProbeMove): Mode | null {
  if (isBySense(instrument)) return null;
  if (lampTo === "black") return "lamp";
  const fineness = finenessOf(circuit, { red, black, lampTo, instrument });
  return fineness === "tenths" ? "millivolts" : fineness;
}
