import { PART_STATE_WORDS, STATE_WORDS } from "../../core/base/words/sheet.ts";
import type { PartLive, PointLive, WireLive } from "../../core/live/live.ts";
import { ampsText, voltsText } from "./figures.ts";

/** What a part is doing, said of it as it stands. */
const DOING: Readonly<Record<NonNullable<PartLive["doing"]>, string>> = {
  off: "off",
  on: "on",
  forward: "runs forward",
  reverse: "runs in reverse",
  stalled: "held still",
  "pulled-in": "pulled in",
  released: "released",
  supplying: "supplies",
  charging: "charges",
  melted: "melted",
  tripped: "tripped",
  flashing: "flashes",
  dim: "dim",
};

/** What a part does now: "runs forward, 4.2 A"; empty where there is nothing to say. */
export function partWords(part: PartLive | undefined): string {
  if (!part) return "";
  const doing = part.doing === null ? (PART_STATE_WORDS[part.state] ?? "") : DOING[part.doing];
  const amps = part.doing !== null && Math.abs(part.amps) >= 0.001 ? ampsText(Math.abs(part.amps)) : "";
  return [doing, amps].filter((word) => word !== "").join(", ");
}

/** The state of a wire in words, both ends where they differ: "powered, 12.09 V, 4.2 A". */
export function wireWords(wire: WireLive | undefined): string {
  if (!wire) return "";
  const [from, to] = wire.state;
  const state = from === to ? STATE_WORDS[from] : `${STATE_WORDS[from]} to ${STATE_WORDS[to]}`;
  const fed = wire.alwaysFed ? ", always fed" : "";
  const weak = wire.weak ? ", weak" : "";
  const volts = wire.volts[0] === null ? "" : `, ${voltsText(wire.volts[0])}`;
  const amps = Math.abs(wire.amps) < 0.001 ? "" : `, ${ampsText(Math.abs(wire.amps))}`;
  return `${state}${fed}${weak}${volts}${amps}`;
}

/** The state of a point in words: "grounded, 0.11 V". */
export function pointWords(point: PointLive | undefined): string {
  if (!point) return "";
  return point.volts === null ? STATE_WORDS[point.state] : `${STATE_WORDS[point.state]}, ${voltsText(point.volts)}`;
}
