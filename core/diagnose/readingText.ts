import { type Outcome, ok, refuse } from "../base/outcome.ts";
import type { Volts } from "../base/units.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import { connectorAt, parsePoint, partAt } from "../circuit/points.ts";
import type { Lead } from "../live/attachment.ts";
import { conditionText, parseCondition } from "../live/condition.ts";
import { kindOf } from "../parts/catalogue.ts";
import { finenessOf } from "./evidence.ts";
import { expectedOf } from "./expected.ts";
import { feedingOf } from "./feeding.ts";
import { ohmsText } from "./figureText.ts";
import { fuseAcross, lampForFuse } from "./inPlace.ts";
import { fedLead, takesClamp } from "./otherUnits.ts";
import { figureOf, type Probe, type Reading, readingOf, type Shows } from "./reading.ts";
import { readingFits } from "./readingFits.ts";
import { readValue, unitTyped } from "./readValue.ts";
import { isModule } from "./scanTool.ts";
import type { Fineness } from "./spread.ts";
import { type Act, isAct } from "./step.ts";
import { testPointsOf } from "./testPoint.ts";

/**
 * Reads `RED[/BLACK] @ CONDITION : VALUE`: `X5-6 @ S1=on : 11.9V`, `F4.1/F4.2 @ S1=on,S5=open : 25mV`, the lamp from a point
 * to battery negative `X5-6 @ S1=on : dim`, from battery plus to a point `battery+/X5-1 @ S1=on : dim 7.2V`, in a fuse's
 * place `F4.1/F4.2 @ S1=on,out:F4,apart:X5 : bright`, ohms where nothing is fed `X32-1b/X32-2b @ apart:X32 : 1.2ohm`, a clamp
 * round the wire at a point `X5-6 @ S1=on,S5=open : 5.2A`, a look or a sound `F4 @ : blown`, `K1 @ S1=on : clicks`, what was done to a part
 * `M3 fed direct @ apart:X32 : works`, `K1 like relay @ S1=on : helps`. A question mark behind the value is doubt. Refuses what the circuit does not have, and values no meter shows there.
 */
export function parseReading(circuit: Circuit, text: string): Outcome<Reading> {
  const [, leads = "", setting = "", typed = ""] = /^([^@]+)@(.*):([^:]*)$/.exec(text) ?? [];
  if (leads.trim() === "" || typed.trim() === "") return refuse("reading-spelling", { text });
  const condition = parseCondition(circuit, setting.trim() === "rest" ? "" : setting);
  if (!condition.ok) return condition;
  const act = ACT.exec(leads.trim());
  const [red = "", black = ""] = leads.split("/").map((lead) => lead.trim());
  const isLamp = /^\s*(bright|dim|dark)\b/.test(typed);
  const probe = act
    ? actOn(circuit, act[1]!, act[2] as Act, condition.value)
    : partAt(circuit, red) || connectorAt(circuit, red)
      ? senseAt(circuit, red, typed.replace("?", "").trim(), condition.value)
      : isLamp
        ? lampAt(circuit, red, black, condition.value)
        : metered(circuit, red, black, condition.value, unitTyped(typed.replace("?", "")));
  if (!probe.ok) return probe;
  const fineness = finenessOf(circuit, probe.value);
  const expect = expectedOf(circuit, { ...probe.value, fineness });
  const isDoubted = typed.trim().endsWith("?");
  const shows = readValue(typed.replace(/\?\s*$/, ""), {
    instrument: probe.value.instrument,
    nominalVolts: circuit.nominalVolts,
    expect,
  });
  if (!shows.ok) return shows;
  return ok({ ...readingOf(probe.value, shows.value), standing: isDoubted ? "doubted" : "taken" });
}

/** Reads where a lead goes: `battery+`, `battery -`, or a point; refuses as `parsePoint`. */
export function parseLead(circuit: Circuit, typed: string): Outcome<Lead> {
  const post = /^battery\s*([+-])$/.exec(typed);
  if (post) return ok(post[1] === "+" ? "battery +" : "battery -");
  const point = parsePoint(circuit, typed);
  return point.ok ? ok(point.value.id) : point;
}

/** Leads of a meter, or a clamp round the wire at the point: which of them, the unit of the value says. */
function metered(
  circuit: Circuit,
  red: string,
  black: string,
  condition: Condition,
  unit: ReturnType<typeof unitTyped>,
): Outcome<Probe> {
  const one = parseLead(circuit, red);
  if (!one.ok) return one;
  const other = black === "" ? ok<Lead>("battery -") : parseLead(circuit, black);
  if (!other.ok) return other;
  const leads = { red: one.value, black: other.value, lampTo: null, condition } as const;
  if (unit === "amps")
    return takesClamp(circuit, leads.red) && leads.black === "battery -"
      ? ok({ ...leads, instrument: "clamp" })
      : refuse("reading-clamp", { point: leads.red });
  if (unit !== "ohms") return ok({ ...leads, instrument: "meter volts" });
  const fed = fedLead(circuit, leads.red, leads.black, condition);
  return fed === null ? ok({ ...leads, instrument: "meter ohms" }) : refuse("reading-live", { lead: fed });
}

/** The lamp between a point and a post, where the wire there decides which lamp; or across the blades of a fuse that is out. */
function lampAt(circuit: Circuit, red: string, black: string, condition: Condition): Outcome<Probe> {
  const one = parseLead(circuit, red);
  if (!one.ok) return one;
  const other = black === "" ? ok<Lead>("battery -") : parseLead(circuit, black);
  if (!other.ok) return other;
  const fuse = fuseAcross(circuit, one.value, other.value);
  if (fuse !== null) {
    const leads = { red: one.value, black: other.value, instrument: lampForFuse(circuit, fuse) } as const;
    return ok({ ...leads, lampTo: "black", condition });
  }
  const isFromPlus = one.value === "battery +";
  const point = isFromPlus ? other.value : one.value;
  const at = testPointsOf(circuit).find((each) => each.point === point);
  if (!at) return refuse("reading-lamp", { point, reason: "it cannot be reached with a probe" });
  if (at.doNotProbe !== null) return refuse("reading-lamp", { point, reason: at.doNotProbe });
  if (at.lamp === null) return refuse("reading-lamp", { point, reason: "a module's pin hangs on it" });
  const lampTo = isFromPlus ? "battery +" : "battery -";
  return ok({ red: point, black: "battery -", instrument: at.lamp, lampTo, condition });
}

/** `M3 fed direct`, `K1 like relay`. */
const ACT = /^(\S+) (fed direct|fed loose|like relay)$/;

function actOn(circuit: Circuit, id: string, instrument: Act, condition: Condition): Outcome<Probe> {
  const plug = feedingOf(circuit)(id)?.plug;
  const probe = { red: id, black: "battery -", instrument, lampTo: null, condition } as const;
  if (!readingFits(circuit, probe)) return refuse("reading-act", { part: id, act: instrument });
  return ok(instrument === "like relay" || plug === undefined ? probe : { ...probe, condition: { apart: [plug] } });
}

function senseAt(circuit: Circuit, id: string, typed: string, condition: Condition): Outcome<Probe> {
  const kind = kindOf(partAt(circuit, id)?.kind ?? "");
  const isSound = kind?.name === "relay" && /^(clicks|silent|ok)$/.test(typed);
  const isSeen = connectorAt(circuit, id) || kind?.name === "fuse" || kind?.role === "control";
  if (isModule(circuit, id))
    return ok({ red: id, black: "battery -", instrument: "scan tool", lampTo: null, condition });
  if (!isSound && !isSeen) return refuse("reading-part", { part: id });
  return ok({ red: id, black: "battery -", instrument: isSound ? "listen" : "look", lampTo: null, condition });
}

/** The spelling of a reading, as `parseReading` reads it. */
export function readingText(circuit: Circuit, reading: Reading): string {
  const { red, black, lampTo, condition } = reading;
  const leads = isAct(reading.instrument)
    ? `${red} ${reading.instrument}`
    : lampTo === "battery +"
      ? `battery+/${red}`
      : black === "battery -"
        ? red
        : `${red.replace(" ", "")}/${black.replace(" ", "")}`;
  const value = showsText(reading, finenessOf(circuit, reading));
  return `${leads} @ ${conditionText(condition) || "rest"} : ${value}${reading.standing === "doubted" ? "?" : ""}`;
}

/** Readings as they are typed; what was struck out or has no place on the circuit does not count. */
export function readingsTyped(circuit: Circuit, readings: readonly Reading[]): readonly string[] {
  const counted = readings.filter((reading) => reading.standing !== "struck" && readingFits(circuit, reading));
  return counted.map((reading) => readingText(circuit, reading));
}

/** A value as it is typed and listed: `11.9V`, `25mV`, `1.2ohm`, `0.4A`, `dim 7.2V`, `blown`. */
export function showsText(shows: Shows, fineness: Fineness): string {
  const figure = figureOf(shows);
  return [shows.word ?? "", figure === null ? "" : figureTyped(figure, fineness)]
    .filter((each) => each !== "")
    .join(" ");
}

function figureTyped(figure: number, fineness: Fineness): string {
  if (fineness === "ohms") return ohmsText(figure).replace(" ", "");
  if (fineness === "amps") return `${Number(figure.toFixed(2))}A`;
  return fineness === "millivolts" ? `${Number((figure * 1000).toFixed(1))}mV` : `${voltsRead(figure)}V`;
}

/** Volts as a meter shows them: one decimal at least, two where there are two. */
function voltsRead(volts: Volts): string {
  const figures = volts.toFixed(2);
  return figures.endsWith("0") ? figures.slice(0, -1) : figures;
}

/** A battery at rest lies between these shares of nominal: flat, and fresh from the charger. */
const BATTERY = { least: 0.6, most: 1.2 } as const;

/** Reads measured battery volts at rest; refuses `battery-volts` where no battery of this circuit can show them. */
export function batteryVoltsOf({ nominalVolts }: Circuit, typed: string): Outcome<Volts> {
  const volts = Number(typed.trim().replace(/\s*v$/i, "").replace(",", "."));
  const isPossible = volts >= BATTERY.least * nominalVolts && volts <= BATTERY.most * nominalVolts;
  return isPossible ? ok(volts) : refuse("battery-volts", { typed, nominal: nominalVolts });
}
