import { type Outcome, ok, refuse } from "../../base/outcome.ts";
import type { Circuit, Wire } from "../../circuit/circuit.ts";
import {
  connectorAt,
  isInLine,
  parsePoint,
  partAt,
  terminalPoint,
  terminalsOf,
  wireSideOf,
} from "../../circuit/points.ts";
import { type Fault, faultModes, targetOf } from "../../live/fault.ts";
import { kindOf } from "../../parts/catalogue.ts";
import type { Part } from "../../parts/kind.ts";
import { cavitiesOf } from "../possible.ts";
import { wiresAt } from "../testPoint.ts";

/** A place that is open: a ground off its stud, a blown fuse, a leg of a splice, a broken wire, a plug come apart. */
export interface Opening {
  /** What was asked for: `GP2`, `F7`, `SP1`, `X5-6`, `W13`. */
  readonly target: string;
  /** In words: "GP2 off its stud". */
  readonly title: string;
  readonly faults: readonly Fault[];
}

/** The mode by which a fuse, breaker or ground opens as a whole; null for other kinds. */
function openMode(part: Part): string | null {
  if (part.kind === "ground") return "off";
  if (kindOf(part.kind)?.role !== "protection") return null;
  return part.kind === "fuse" ? "blown" : "stays-out";
}

function single(circuit: Circuit, target: string, mode: string): Opening {
  const named = targetOf(circuit, target);
  const title = named && faultModes(circuit, named).find((each) => each.mode === mode)?.title;
  return { target, title: `${target} ${title ?? mode}`, faults: [{ target, mode }] };
}

/**
 * Every single opening that can send current another way: grounds, fuses and breakers, legs of splices that carry a wire,
 * and wires that end where another one does.
 */
export function openingsOf(circuit: Circuit): readonly Opening[] {
  const parts = circuit.parts.flatMap((part): readonly Opening[] => {
    const mode = openMode(part);
    if (mode !== null) return [single(circuit, part.id, mode)];
    return part.kind === "splice" ? legsOf(circuit, part).map((leg) => legOpening(circuit, part, leg)) : [];
  });
  const shared = circuit.wires.filter((wire) => isShared(circuit, wire));
  return [...parts, ...shared.map(({ id }) => single(circuit, id, "open"))];
}

function legsOf(circuit: Circuit, splice: Part): readonly string[] {
  return terminalsOf(circuit, splice).filter((leg) => wiresAt(circuit, terminalPoint(splice, leg)).length > 0);
}

function legOpening(circuit: Circuit, splice: Part, leg: string): Opening {
  return { ...single(circuit, splice.id, `leg-${leg}-open`), target: terminalPoint(splice, leg) };
}

/** A wire that shares a terminal with another: daisy-chained, the terminal is a splice. A ground's stud is no such place. */
function isShared(circuit: Circuit, { from, to }: Wire): boolean {
  return [from, to].some((point) => {
    const known = parsePoint(circuit, point);
    const isStud = known.ok && known.value.kind === "terminal" && known.value.part.kind === "ground";
    return !isStud && wiresAt(circuit, point).length > 1;
  });
}

/**
 * What is open when a fuse, breaker, splice, ground, connector, pin or wire is. A terminal stands for its pin, a splice's for
 * its leg. Refuses `shares-target` for any other part, and points as `parsePoint` does.
 */
export function openingOf(circuit: Circuit, text: string): Outcome<Opening> {
  const asked = text.trim();
  if (circuit.wires.some(({ id }) => id === asked)) return ok(single(circuit, asked, "open"));
  const part = partAt(circuit, asked);
  if (part && !isInLine(part)) return partOpening(circuit, part);
  const connector = connectorAt(circuit, asked);
  if (connector || part) return ok(plugOpening(circuit, asked));
  if (targetOf(circuit, asked)?.is === "cavity") return ok(single(circuit, asked, "backed-out"));
  const point = parsePoint(circuit, asked);
  if (!point.ok) return asked.match(/[.-]/) ? point : refuse("shares-unknown", { target: asked });
  const owner = point.value.kind === "terminal" ? point.value.part : null;
  if (owner?.kind === "splice" && point.value.kind === "terminal")
    return ok(legOpening(circuit, owner, point.value.terminal));
  if (owner && openMode(owner) !== null) return partOpening(circuit, owner);
  const side = wireSideOf(circuit, point.value.id);
  const cavity = owner && isInLine(owner) ? side.replace(/[ab]$/, "") : side;
  if (targetOf(circuit, cavity)?.is === "cavity") return ok(single(circuit, cavity, "backed-out"));
  const wires = wiresAt(circuit, side);
  if (wires.length === 0) return refuse("shares-no-wire", { target: asked });
  const title = `${side} with no wire on it`;
  return ok({ target: side, title, faults: wires.map(({ id }) => ({ target: id, mode: "open" })) });
}

function partOpening(circuit: Circuit, part: Part): Outcome<Opening> {
  const mode = openMode(part);
  if (mode !== null) return ok(single(circuit, part.id, mode));
  if (part.kind !== "splice") return refuse("shares-target", { target: part.id });
  const faults = legsOf(circuit, part).map((leg) => ({ target: part.id, mode: `leg-${leg}-open` }));
  return ok({ target: part.id, title: `${part.id} come apart`, faults });
}

function plugOpening(circuit: Circuit, id: string): Opening {
  const plug = connectorAt(circuit, id);
  const faults = (plug ? cavitiesOf(plug) : []).map((place) => ({ target: place.id, mode: "backed-out" }));
  return { target: id, title: `${id} apart`, faults };
}
