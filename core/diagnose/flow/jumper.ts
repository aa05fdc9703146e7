import type { PartId, PointId } from "../../base/ids.ts";
import { type Outcome, ok, refuse } from "../../base/outcome.ts";
import type { Amps } from "../../base/units.ts";
import type { Circuit, Condition } from "../../circuit/circuit.ts";
import { terminalPoint, wireSideOf } from "../../circuit/points.ts";
import type { Lead } from "../../live/attachment.ts";
import type { Fault } from "../../live/fault.ts";
import { AMPS } from "../../live/instruments/clipped.ts";
import { isIdle, type Live, liveOf } from "../../live/live.ts";
import { plusBattery, referenceBattery } from "../../live/network.ts";
import { kindOf } from "../../parts/catalogue.ts";
import type { Doing } from "../../parts/kind.ts";
import { JUMPER_FUSE } from "../../trade/instruments.ts";
import { type MeltWindow, meltWindow } from "../../trade/meltWindow.ts";
import { loadAcross, untouchable } from "../leadRules.ts";
import { parseLead } from "../readingText.ts";
import { fuseLimit, type Limit, wireLimit } from "./limits.ts";

/** What a jumper lead is put between, with what in it. */
export interface JumperWanted {
  readonly from: string;
  readonly to: string;
  readonly condition: Condition;
  readonly faults?: readonly Fault[];
  /** Rating of the lead's own fuse; without one the lead is bare. */
  readonly fuseAmps?: Amps;
}

/** Something that a jumper makes run, stop or change, in words of what parts do. */
export interface JumperEffect {
  readonly part: PartId;
  readonly before: Doing["doing"];
  readonly now: Doing["doing"];
  readonly amps: Amps;
}

/** What happens when a jumper is put between two points, before anything melts and after. */
export interface JumperCheck {
  readonly from: Lead;
  readonly to: Lead;
  readonly fuseAmps: Amps | null;
  /** Amps through the lead the moment it is clipped on, from -> to positive. */
  readonly amps: Amps;
  /** Fuses and wires that carry more than without it, at that moment; tightest first. */
  readonly limits: readonly Limit[];
  /** What melts first; null where nothing does. `target` is empty for the lead's own fuse. */
  readonly melts: {
    readonly target: PartId | "";
    readonly rating: Amps;
    readonly amps: Amps;
    readonly window: MeltWindow;
  } | null;
  readonly effects: readonly JumperEffect[];
  readonly cautions: readonly JumperCaution[];
}

/** Why a jumper does not belong there. */
export type JumperCaution =
  | { readonly caution: "module-pin" | "do-not-probe"; readonly point: PointId; readonly reason: string }
  | { readonly caution: "dead-short" | "bare-lead" | "may-move" }
  | { readonly caution: "across-load"; readonly part: PartId };

/** Ohms of a bare lead with its clips (common practice, no source: the fused lead's, without the fuse). */
const LEAD_OHMS = 0.02;
const JUMPER = "jumper lead";
/** A part's amps that change by less are left as they are. */
const LEAST_CHANGE: Amps = 0.01;
/** From these amps on, with nothing between two posts to do work, a lead is a dead short (our own number). */
const SHORT_AMPS: Amps = 60;

/** Ratings that a jumper's own fuse may have. */
export const JUMPER_RATINGS = AMPS.jumper;

/**
 * What flows through a jumper between two points in a condition, solved with the lead in the circuit. Points as elsewhere, or
 * `battery +` and `battery -`. Refuses as `parsePoint` does, `jumper-same`, and `jumper-fuse` outside 0.5 to 40 A.
 */
export function jumperCheck(circuit: Circuit, wanted: JumperWanted): Outcome<JumperCheck> {
  const { condition, faults = [], fuseAmps } = wanted;
  const ends = [leadOf(circuit, wanted.from), leadOf(circuit, wanted.to)];
  const [from, to] = ends;
  if (!from!.ok) return from!;
  if (!to!.ok) return to!;
  if (from!.value === to!.value) return refuse("jumper-same", { point: wanted.from });
  const { least, most } = JUMPER_RATINGS;
  if (fuseAmps !== undefined && !(fuseAmps >= least && fuseAmps <= most))
    return refuse("jumper-fuse", { typed: String(fuseAmps), least, most });
  const bridged = withJumper(circuit, [from!.value, to!.value], fuseAmps);
  const without = liveOf(circuit, condition, faults);
  const after = liveOf(bridged, condition, faults);
  const now = after.before ?? after;
  const amps = now.wires.get(`${JUMPER} 1`)!.amps;
  const points = [from!.value, to!.value];
  const effects = effectsOf(circuit, without, now);
  return ok({
    from: from!.value,
    to: to!.value,
    fuseAmps: fuseAmps ?? null,
    amps,
    limits: limitsNow(circuit, without, now),
    melts: firstMelted(circuit, after, fuseAmps),
    effects,
    cautions: cautionsFor(circuit, points, { amps, fuseAmps, without, effects }),
  });
}

/** Reads an end of the lead: `S5.6`, `X5-6`, `battery +`, `battery-`. */
function leadOf(circuit: Circuit, text: string): Outcome<string> {
  const lead = parseLead(circuit, text.trim());
  if (!lead.ok) return lead;
  if (lead.value !== "battery +" && lead.value !== "battery -") return ok(wireSideOf(circuit, lead.value));
  const [battery, pole] = lead.value === "battery +" ? [plusBattery(circuit), "+"] : [referenceBattery(circuit), "-"];
  return battery ? ok(terminalPoint(battery, pole)) : refuse("point-spelling", { text });
}

/** The circuit with the lead in it: a fused lead as its kind is, a bare one as a wire. */
function withJumper(circuit: Circuit, [from, to]: readonly string[], fuseAmps: Amps | undefined): Circuit {
  const wire = (id: string, one: string, other: string) => ({
    id: `${JUMPER} ${id}`,
    from: one,
    to: other,
    ohms: LEAD_OHMS / 2,
  });
  if (fuseAmps === undefined) return { ...circuit, wires: [...circuit.wires, wire("1", from!, to!)] };
  return {
    ...circuit,
    parts: [...circuit.parts, { id: JUMPER, kind: "jumper", settings: { amps: fuseAmps } }],
    wires: [...circuit.wires, wire("1", from!, `${JUMPER}.1`), wire("2", `${JUMPER}.2`, to!)],
  };
}

/** Fuses and wires that carry more with the lead than without it. */
function limitsNow(circuit: Circuit, without: Live, now: Live): readonly Limit[] {
  const fuses = circuit.parts.flatMap(({ id, kind }): readonly Limit[] => {
    if (kindOf(kind)?.role !== "protection") return [];
    const [was, is] = [fuseAmpsOf(circuit, without, id), fuseAmpsOf(circuit, now, id)];
    const limit = is > was + LEAST_CHANGE ? fuseLimit(circuit, id, is) : null;
    return limit ? [limit] : [];
  });
  const wires = circuit.wires.flatMap(({ id }): readonly Limit[] => {
    const [was, is] = [without, now].map((live) => Math.abs(live.wires.get(id)!.amps));
    const limit = is! > was! + LEAST_CHANGE ? wireLimit(circuit, id, is!) : null;
    return limit ? [limit] : [];
  });
  return [...fuses, ...wires].sort((one, other) => other.amps / other.allowed - one.amps / one.allowed);
}

/** Amps through a fuse: those of what it does where its kind says, else of the wires at one blade together. */
function fuseAmpsOf(circuit: Circuit, live: Live, id: PartId): Amps {
  const blade = `${id}.2`;
  const sum = circuit.wires.reduce((all, { id: wire, from, to }) => {
    const amps = live.wires.get(wire)!.amps;
    return all + (from === blade ? amps : 0) - (to === blade ? amps : 0);
  }, 0);
  return Math.max(Math.abs(live.parts.get(id)?.amps ?? 0), Math.abs(sum));
}

/** The first fuse that melts with the lead on, the lead's own among them. */
function firstMelted(circuit: Circuit, after: Live, fuseAmps: Amps | undefined): JumperCheck["melts"] {
  const event = after.happenings.find(({ what }) => what === "melted" || what === "may-melt");
  if (event?.what !== "melted" && event?.what !== "may-melt") return null;
  const { part, amps } = event;
  if (part === JUMPER) {
    const rating = fuseAmps ?? 0;
    return { target: "", rating, amps, window: meltWindow("regular", rating, amps) };
  }
  const limit = fuseLimit(circuit, part, amps);
  const rating = limit?.allowed ?? 0;
  return { target: part, rating, amps, window: limit?.melts ?? meltWindow("regular", rating, amps) };
}

function effectsOf(circuit: Circuit, without: Live, now: Live): readonly JumperEffect[] {
  return circuit.parts.flatMap(({ id, kind }): readonly JumperEffect[] => {
    const role = kindOf(kind)?.role;
    const [was, is] = [without.parts.get(id), now.parts.get(id)];
    if (role === "source" || role === "protection" || !was?.doing || !is?.doing || was.doing === is.doing) return [];
    return [{ part: id, before: was.doing, now: is.doing, amps: Math.abs(is.amps) }];
  });
}

interface Clipped {
  readonly amps: Amps;
  readonly fuseAmps: Amps | undefined;
  readonly without: Live;
  readonly effects: readonly JumperEffect[];
}

function cautionsFor(
  circuit: Circuit,
  points: readonly PointId[],
  { amps, fuseAmps, without, effects }: Clipped,
): readonly JumperCaution[] {
  const cautions: JumperCaution[] = [];
  for (const point of points) {
    const untouched = untouchable(circuit, point);
    if (untouched === null) continue;
    const reason = untouched.is === "do-not-probe" ? untouched.reason : "";
    cautions.push({ caution: untouched.is, point, reason });
  }
  const states = points.map((point) => without.points.get(point)?.state);
  if (Math.abs(amps) >= SHORT_AMPS && states.includes("powered") && states.includes("grounded"))
    cautions.push({ caution: "dead-short" });
  const across = loadAcross(circuit, points);
  if (across !== null) cautions.push({ caution: "across-load", part: across });
  if (fuseAmps === undefined || fuseAmps > JUMPER_FUSE.amps) cautions.push({ caution: "bare-lead" });
  if (effects.some(({ now }) => !isIdle({ doing: now }))) cautions.push({ caution: "may-move" });
  return cautions;
}
