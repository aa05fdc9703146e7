import type { PartId, PointId } from "../../core/base/ids.ts";
import type { Amps, Volts } from "../../core/base/units.ts";
import { STATE_WORDS } from "../../core/base/words/sheet.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { partAt, terminalPoint, terminalsOf, wireSideOf } from "../../core/circuit/points.ts";
import type { Live, PointLive } from "../../core/live/live.ts";
import { kindOf } from "../../core/parts/catalogue.ts";
import { voltsText } from "../words/figures.ts";
import { partWords } from "../words/live.ts";
import type { Focus, Ids } from "./focus.ts";

/** Loads that are spoken of with their volts at most: two lines across a wall. */
const MOST = 2;
/** Loads that are named at most where there are more. */
const MOST_LISTED = 4;
/** Less current than this is none, and volts no farther apart read the same on a wall. */
const LEAST_AMPS: Amps = 0.005;
const SAME_VOLTS: Volts = 0.05;

/**
 * The state of what is in focus, in words: what its loads do, and the volts on both sides of them. Of the branch of one load
 * that load alone is spoken of.
 */
export function focusSaid(circuit: Circuit, live: Live, focus: Focus, ids: Ids | null): string {
  if (focus.is === "load") return loadSaid(circuit, live, focus.load);
  const loads = circuit.parts.filter(({ id, kind }) => kindOf(kind)?.role === "load" && (ids?.has(id) ?? true));
  // Of a whole page with many loads those that work are news; of a few, all.
  const told = ids === null && loads.length > MOST ? loads.filter(({ id }) => isWorking(live, id)) : loads;
  if (told.length === 0) return loads.length === 0 ? "" : "No load works.";
  if (told.length > MOST) return `${listed(told.map(({ id }) => `${id} ${partWords(live.parts.get(id))}`.trim()))}.`;
  return told.map(({ id }) => loadSaid(circuit, live, id)).join(" ");
}

/** The first of many in a row, and how many there are beside them. */
function listed(all: readonly string[]): string {
  const left = all.length - MOST_LISTED;
  return left > 0 ? `${all.slice(0, MOST_LISTED).join("; ")}; and ${left} more` : all.join("; ");
}

function isWorking(live: Live, id: PartId): boolean {
  const doing = live.parts.get(id)?.doing ?? null;
  return doing !== null && doing !== "off" && doing !== "released";
}

function loadSaid(circuit: Circuit, live: Live, id: PartId): string {
  const part = partAt(circuit, id)!;
  const [one, other] = terminalsOf(circuit, part).map((name) => wireSideOf(circuit, terminalPoint(part, name)));
  const now = live.parts.get(id);
  const does = `${id} ${partWords(now)}`.trim();
  const [first, second] = [at(live, one), at(live, other)];
  if (!first || !second) return `${does}.`;
  const isStill = Math.abs(now?.amps ?? 0) < LEAST_AMPS;
  if (isStill && areAlike(first, second)) return `${voltsText(first.volts, 1)} on both sides of ${id}: no current.`;
  return `${does}, from ${sideSaid(first)} to ${sideSaid(second)}.`;
}

function sideSaid({ state, volts }: PointLive): string {
  return volts === null ? STATE_WORDS[state] : `${STATE_WORDS[state]} at ${voltsText(volts, 1)}`;
}

function at({ points }: Live, point: PointId | undefined): PointLive | undefined {
  return point === undefined ? undefined : points.get(point);
}

function areAlike({ volts: one }: PointLive, { volts: other }: PointLive): boolean {
  return one !== null && other !== null && Math.abs(one - other) < SAME_VOLTS;
}
