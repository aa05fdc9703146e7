import type { Volts } from "../base/units.ts";
import type { Asked, Circuit, Condition } from "../circuit/circuit.ts";
import { netOf } from "../circuit/nets.ts";
import { controlsOf, terminalPoint, wireSideOf } from "../circuit/points.ts";
import { lampReads, meterReads, predict, type Shown } from "../diagnose/predict.ts";
import { gapAt } from "../diagnose/spread.ts";
import { type TestPoint, testPointsOf, wiresAt } from "../diagnose/testPoint.ts";
import type { Fault } from "../live/fault.ts";
import { type Live, liveOf } from "../live/live.ts";
import { plusBattery } from "../live/network.ts";
import { restVoltsOf } from "../live/restVolts.ts";
import { parseColour } from "../trade/colours.ts";
import { brightness, testLamp } from "../trade/instruments.ts";
import {
  ACROSS_SAYS,
  type Facts,
  IDEAS,
  type Idea,
  LAMP_FROM_PLUS_SAYS,
  LAMP_SAYS,
  type Sayings,
  STATE_SAYS,
  STATES,
  VOLTS_SAYS,
} from "./ideas.ts";
import type { Choice } from "./question.ts";

/** A question before it is worded. */
export interface Draft {
  readonly asked: Asked;
  readonly condition: Condition;
  readonly choices: readonly Choice[];
  readonly right: number;
  /** Wrong ideas that some choice shows. */
  readonly ideas: readonly Idea[];
}

/** Less current than this is none. */
const LEAST_AMPS = 0.005;
const LAMPS = ["bright", "dim", "dark"] as const;

/** Everything that could be asked of a circuit in these conditions, with these faults in it: points by state, volts and lamp, contacts by volts. */
export function questionPool(
  circuit: Circuit,
  conditions: readonly Condition[],
  faults: readonly Fault[],
): readonly Draft[] {
  const points = testPointsOf(circuit).filter(({ doNotProbe }) => doNotProbe === null);
  const batteryVolts = restVoltsOf(circuit);
  const { shown } = predict(circuit, faults, {}, conditions, points);
  return conditions.flatMap((condition, index) => {
    const live = liveOf(circuit, condition, faults);
    const here: Here = { circuit, condition, live, shown: shown[index]!, points, batteryVolts };
    return [...points.flatMap((at, number) => draftsAt(here, at, number)), ...contactDrafts(here)];
  });
}

/** A condition with all that is known of it. */
interface Here {
  readonly circuit: Circuit;
  readonly condition: Condition;
  readonly live: Live;
  readonly shown: Shown;
  readonly points: readonly TestPoint[];
  readonly batteryVolts: Volts;
}

function draftsAt(here: Here, at: TestPoint, number: number): readonly Draft[] {
  const facts = factsOf(here, at, number);
  if (!facts || facts.state === "undecided" || facts.state === "clash") return [];
  const { condition, circuit, shown } = here;
  const { point, lamp } = at;
  const drafts: Draft[] = [];
  const state = STATES.find((each) => each === facts.state);
  if (state) drafts.push(wordDraft({ asks: "state", point }, condition, STATES, state, said(STATE_SAYS, facts)));
  const volts = said(VOLTS_SAYS, facts);
  drafts.push(voltsDraft({ asks: "volts", point, black: "battery -" }, condition, facts, facts.volts, volts));
  if (lamp === null) return drafts;
  const rated = testLamp(lamp === "4 A lamp" ? "heavy" : "small", circuit.nominalVolts);
  for (const lampTo of ["battery -", "battery +"] as const) {
    const burns = brightness(lampReads(shown, number, lampTo, rated).across, circuit.nominalVolts);
    const ideas = said(lampTo === "battery -" ? LAMP_SAYS : LAMP_FROM_PLUS_SAYS, facts);
    drafts.push(wordDraft({ asks: "lamp", point, lampTo, lamp }, condition, LAMPS, burns, ideas));
  }
  return drafts;
}

function factsOf(
  { circuit, live, shown, batteryVolts }: Here,
  { point, colour }: TestPoint,
  number: number,
): Facts | null {
  const here = live.points.get(point);
  if (!here) return null;
  const plus = plusBattery(circuit);
  const net = netOf(circuit, point);
  return {
    state: here.state,
    volts: meterReads(shown, number),
    batteryVolts,
    nominalVolts: circuit.nominalVolts,
    flows: wiresAt(circuit, point).some(({ id }) => Math.abs(live.wires.get(id)?.amps ?? 0) > LEAST_AMPS),
    isAtBattery: plus !== null && net !== undefined && netOf(circuit, terminalPoint(plus, "+")) === net,
    colourSays: colourSays(circuit, colour),
  };
}

/** Black and brown are taken for ground, red for feed; whatever else the stripe says. */
function colourSays({ colourCodes }: Circuit, code: string | null): Facts["colourSays"] {
  if (code === null || colourCodes === "free") return null;
  const colour = parseColour(code, colourCodes);
  if (!colour.ok) return null;
  const { name } = colour.value.base;
  if (name === "red") return "powered";
  return name === "black" || name === "brown" ? "grounded" : null;
}

/** What each idea answers that has something to say. */
function said<T>(sayings: Sayings<T>, facts: Facts): readonly (readonly [Idea, T])[] {
  return IDEAS.flatMap((idea) => {
    const says = sayings[idea]?.(facts) ?? null;
    return says === null ? [] : [[idea, says] as const];
  });
}

function wordDraft(
  asked: Asked,
  condition: Condition,
  answers: readonly string[],
  right: string,
  ideas: readonly (readonly [Idea, string])[],
): Draft {
  const choices = answers.map((answer): Choice => {
    const own = ideas.flatMap(([idea, says]) => (says === answer && answer !== right ? [idea] : []));
    return { answer, volts: null, ideas: own };
  });
  return drafted(asked, condition, choices, answers.indexOf(right));
}

/** Volts to choose from: the right ones, what the ideas say, and nought, half and all of the battery between them. */
function voltsDraft(
  asked: Asked,
  condition: Condition,
  { batteryVolts }: Pick<Facts, "batteryVolts">,
  right: Volts,
  ideas: readonly (readonly [Idea, Volts])[],
): Draft {
  const isSame = (one: Volts, other: Volts): boolean =>
    Math.abs(one - other) <= gapAt(Math.max(Math.abs(one), Math.abs(other)));
  const offered: Volts[] = [right];
  for (const volts of [...ideas.map(([, says]) => says), 0, batteryVolts, batteryVolts / 2])
    if (!offered.some((each) => isSame(each, volts))) offered.push(volts);
  offered.sort((one, other) => one - other);
  const choices = offered.map((volts): Choice => {
    const own = volts === right ? [] : ideas.flatMap(([idea, says]) => (isSame(says, volts) ? [idea] : []));
    return { answer: `${(Math.round(volts * 10) / 10 + 0).toFixed(1)} V`, volts, ideas: own };
  });
  return drafted(asked, condition, choices, offered.indexOf(right));
}

function drafted(asked: Asked, condition: Condition, choices: readonly Choice[], right: number): Draft {
  return { asked, condition, choices, right, ideas: [...new Set(choices.flatMap(({ ideas }) => ideas))] };
}

/** Contacts of switches that can be touched on both sides: open with volts across them, or closed with current. */
function contactDrafts(here: Here): readonly Draft[] {
  const { circuit, condition, live, shown, points } = here;
  const numbers = new Map(points.map(({ point }, number) => [point, number]));
  return controlsOf(circuit).flatMap(({ part, control }) => {
    const joins = new Map(control.positions.flatMap(({ joins }) => joins).map((join) => [join.join("-"), join]));
    return [...joins].flatMap(([key, ends]): readonly Draft[] => {
      const [one, other] = ends.map((terminal) => wireSideOf(circuit, terminalPoint(part, terminal)));
      const [a, b] = [numbers.get(one!), numbers.get(other!)];
      if (a === undefined || b === undefined) return [];
      const across = meterReads(shown, a) - meterReads(shown, b);
      const isClosed = live.parts.get(part.id)?.closed.has(key) ?? false;
      const facts = factsOf(here, points[a]!, a);
      if (!facts || (isClosed ? !facts.flows : Math.abs(across) <= gapAt(facts.batteryVolts))) return [];
      const [red, black] = across < 0 ? [other!, one!] : [one!, other!];
      const ideas = said<Volts>(isClosed ? ACROSS_SAYS.closed : ACROSS_SAYS.open, facts);
      return [voltsDraft({ asks: "volts", point: red, black }, condition, facts, Math.abs(across), ideas)];
    });
  });
}
