import type { Circuit } from "../../core/circuit/circuit.ts";
import { terminalPoint, terminalsOf, wireSideOf } from "../../core/circuit/points.ts";
import type { Live } from "../../core/live/live.ts";
import { kindOf } from "../../core/parts/catalogue.ts";
import type { Part } from "../../core/parts/kind.ts";
import { ampsText } from "./figures.ts";
import { partWords, pointWords } from "./live.ts";

/** What a part is called beside its designator: its label, of a page link what it links and where to, else its kind. */
export function partTitle(circuit: Circuit, part: Part): string {
  const title = part.label ?? kindOf(part.kind)?.title ?? part.kind;
  if (part.kind !== "page-link") return title;
  const name = linkName(part);
  const others = circuit.parts.filter((each) => each.kind === part.kind && each !== part && linkName(each) === name);
  const ends = name === "" ? [] : others.map(({ id }) => `${id}${pageWords(circuit, id)}`);
  const where = ends.length === 0 ? "joined to nothing" : `to ${ends.join(" and ")}`;
  return `${part.label ?? (name === "" ? title : name)}, ${where}`;
}

function linkName({ settings }: Part): string {
  return String(settings?.name ?? "").trim();
}

function pageWords({ placement, pages }: Circuit, part: string): string {
  const at = pages.findIndex(({ id }) => id === placement.parts[part]?.page);
  return at < 0 ? ", on no page" : ` on page\u00A0${at + 1}`;
}

/**
 * What a part does now. What only lets current through says so: a fuse "whole, 4.2 A", a ground or page link the state of
 * its terminal and the amps there.
 */
export function partStands(circuit: Circuit, live: Live, part: Part): string {
  const now = live.parts.get(part.id);
  const isFuse = kindOf(part.kind)?.role === "protection";
  const isJoint = part.kind === "ground" || part.kind === "page-link";
  if (!now || (isFuse && now.doing !== null) || (!isFuse && !isJoint)) return partWords(now);
  const point = wireSideOf(circuit, terminalPoint(part, terminalsOf(circuit, part)[0] ?? ""));
  const first = isFuse ? "whole" : pointWords(live.points.get(point));
  return [first, ampsText(ampsInto(circuit, live, point))].filter((word) => word !== "").join(", ");
}

/** Amps that the wires at a point bring there, negative where they take them away. */
function ampsInto({ wires }: Circuit, live: Live, point: string): number {
  return wires.reduce((sum, { id, from, to }) => {
    const amps = live.wires.get(id)?.amps ?? 0;
    return sum + (to === point ? amps : 0) - (from === point ? amps : 0);
  }, 0);
}
