import type { PointId } from "../base/ids.ts";
import type { Part } from "../parts/kind.ts";
import { type ColourSet, isHighVoltageColour, parseColour } from "../trade/colours.ts";
import type { Circuit, Wire } from "./circuit.ts";
import { parsePoint, pointAt, pointsOf, wireSideOf } from "./points.ts";
import { looseEnd, type Problem, problem } from "./problem.ts";
import { seenDifferences } from "./seen.ts";

/** An unstriped orange wire from this size up is taken for a high-voltage cable, not for a wire of a 12 V circuit. */
const ORANGE_CABLE_MM2 = 10;

/** What is wrong with the wires, and the terminals to which none goes. */
export function checkWires(circuit: Circuit): readonly Problem[] {
  return [
    ...circuit.wires.flatMap((wire) => [
      ...checkEnds(circuit, wire),
      ...checkColour(circuit, wire),
      ...checkMissing(wire),
      ...checkSeen(wire),
      ...checkPages(circuit, wire),
    ]),
    ...bareTerminals(circuit),
  ];
}

function checkEnds(circuit: Circuit, { id, from, to }: Wire): readonly Problem[] {
  const nowhere = [from, to].filter((end) => {
    const point = parsePoint(circuit, end);
    return !point.ok || (point.value.kind === "cavity" && point.value.carries === undefined);
  });
  if (nowhere.length > 0) return nowhere.map((end) => problem("wire-to-nowhere", id, { wire: id, end }));
  return from === to ? [problem("wire-to-itself", id, { wire: id, end: from })] : [];
}

function checkColour(circuit: Circuit, { id, colour, mm2 }: Wire): readonly Problem[] {
  if (colour === undefined || circuit.colourCodes === "free") return [];
  const set: ColourSet = circuit.colourCodes;
  const read = parseColour(colour, set);
  if (!read.ok) return [problem("wire-colour", id, { wire: id, colour, set })];
  const isCable = isHighVoltageColour(read.value) && read.value.stripes.length === 0 && (mm2 ?? 0) >= ORANGE_CABLE_MM2;
  return isCable ? [problem("orange-cable", id, { wire: id, mm2: mm2 ?? 0 })] : [];
}

/** A wire that lacks both colour and size, as each that is just drawn, is one loose end. */
function checkMissing({ id, colour, mm2, ohms }: Wire): readonly Problem[] {
  const isSized = mm2 !== undefined || (ohms ?? null) !== null;
  if (colour !== undefined && isSized) return [];
  const code = isSized ? "wire-without-colour" : colour === undefined ? "wire-bare" : "wire-without-size";
  return [looseEnd(code, id, { wire: id })];
}

/** Where the vehicle is not as printed, one of the two is to be corrected, or there was a repair. */
function checkSeen(wire: Wire): readonly Problem[] {
  return seenDifferences(wire).map(({ what, printed, seen }) => {
    const code = what !== "colour" ? "seen-place" : printed === "" ? "seen-uncoloured" : "seen-colour";
    return looseEnd(code, wire.id, { wire: wire.id, printed, seen });
  });
}

function checkPages(circuit: Circuit, { id, from, to }: Wire): readonly Problem[] {
  const [one, other] = [pageOf(circuit, from), pageOf(circuit, to)];
  if (one === undefined || other === undefined || one === other) return [];
  return [problem("wire-across-pages", id, { wire: id, from: one, to: other })];
}

/** Page on which the part of a point stands; undefined where it stands on none. */
function pageOf(circuit: Circuit, id: PointId): string | undefined {
  const point = pointAt(circuit, id);
  const terminal = point?.kind === "cavity" && point.carries !== undefined ? pointAt(circuit, point.carries) : point;
  return terminal?.kind === "terminal" ? circuit.placement.parts[terminal.part.id]?.page : undefined;
}

function bareTerminals(circuit: Circuit): readonly Problem[] {
  const wired = new Set(circuit.wires.flatMap((wire) => [wire.from, wire.to]));
  return pointsOf(circuit).flatMap((point) => {
    if (point.kind !== "terminal" || wired.has(point.id) || wired.has(wireSideOf(circuit, point.id))) return [];
    return isBareMetal(point.part, point.terminal)
      ? []
      : [looseEnd("terminal-without-wire", point.id, { point: point.id })];
  });
}

/** The body beside a ground point can be probed, and no wire goes to it. */
function isBareMetal(part: Part, terminal: string): boolean {
  return part.kind === "ground" && terminal === (part.terminals?.[1] ?? "body");
}
