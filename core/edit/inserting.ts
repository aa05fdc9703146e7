import type { PartId } from "../base/ids.ts";
import { type Outcome, ok, refuse } from "../base/outcome.ts";
import type { Circuit, Wire } from "../circuit/circuit.ts";
import { kindOf } from "../parts/catalogue.ts";
import type { Part } from "../parts/kind.ts";
import { colourText, parseColour } from "../trade/colours.ts";
import type { Change } from "./change.ts";
import { without } from "./editOf.ts";
import type { Fragment } from "./fragment.ts";
import { freshId, takenIds } from "./ids.ts";
import { arrivingOf, clearShift, type Landing } from "./landing.ts";
import { type Names, renamed } from "./renaming.ts";
import { placing } from "./standOnPage.ts";

/** What comes of putting a fragment into a circuit. */
export interface Inserted {
  readonly changes: readonly Change[];
  /** Ids that the parts have in the circuit, in the order of the fragment. */
  readonly parts: readonly PartId[];
  /** How many wires lost a colour for which the circuit's codes have no word. */
  readonly coloursLost: number;
}

/**
 * The changes that put a fragment into a circuit. An id that is taken gives way to the next free one; colours are written
 * in the circuit's codes. Refuses `nothing-chosen`, `part-kind`, `page-unknown` and `off-the-page`.
 */
export function inserting(circuit: Circuit, fragment: Fragment, landing: Landing): Outcome<Inserted> {
  const unknown = fragment.parts.find(({ kind }) => !kindOf(kind));
  if (unknown) return refuse("part-kind", { part: unknown.id, kind: unknown.kind });
  if (fragment.parts.length === 0) return refuse("nothing-chosen");
  const names = freshNames(circuit, fragment);
  const hasBattery = circuit.parts.some(isBattery);
  const changes: Change[] = [];
  const parts = fragment.parts.map((part) => ({
    ...(hasBattery ? notReference(part) : part),
    id: renamed(names, part.id),
  }));
  const add = <L extends "parts" | "wires" | "connectors">(list: L, items: Circuit[L]): void => {
    for (const [index, item] of items.entries()) {
      changes.push({ change: "add", list, at: circuit[list].length + index, item } as Change);
    }
  };
  add("parts", parts);
  const connectors = fragment.connectors.map(({ id, cavities, ...rest }) => ({
    ...rest,
    id: renamed(names, id),
    ...(cavities && {
      cavities: Object.fromEntries(Object.entries(cavities).map(([cavity, point]) => [cavity, renamed(names, point)])),
    }),
  }));
  add("connectors", connectors);
  const wires = fragment.wires.map((wire) => coloured(circuit, fragment, wire));
  const ends = ({ id, from, to }: Wire) => ({
    id: renamed(names, id),
    from: renamed(names, from),
    to: renamed(names, to),
  });
  add(
    "wires",
    wires.map((wire) => ({ ...wire, ...ends(wire) })),
  );
  const arriving = arrivingOf(fragment, landing);
  const [dx, dy] = clearShift(circuit, arriving);
  for (const { part, place } of arriving) {
    const placed = placing(
      circuit,
      { ...part, id: renamed(names, part.id) },
      { ...place, x: place.x + dx, y: place.y + dy },
    );
    if (!placed.ok) return placed;
    changes.push(placed.value);
  }
  for (const [id, bends] of Object.entries(fragment.bends)) {
    const value = bends.map(([x, y]) => [x + landing.x + dx, y + landing.y + dy] as const);
    changes.push({ change: "entry", record: "bends", key: renamed(names, id), value });
  }
  const coloursLost = wires.filter(({ colour }, index) => colour === undefined && fragment.wires[index]!.colour).length;
  return ok({ changes, parts: parts.map(({ id }) => id), coloursLost });
}

/** New ids for those of a fragment that the circuit has already. */
function freshNames(circuit: Circuit, { parts, wires, connectors }: Fragment): Names {
  const inCircuit = takenIds(circuit);
  const taken = new Set([...inCircuit, ...[...parts, ...wires, ...connectors].map(({ id }) => id)]);
  const names = new Map<string, string>();
  const fresh = (id: string, letter: string): void => {
    if (!inCircuit.has(id) || names.has(id)) return;
    const next = freshId(id, letter, taken);
    taken.add(next);
    names.set(id, next);
  };
  for (const { id, kind } of parts) fresh(id, kindOf(kind)!.letter);
  for (const { id } of connectors) fresh(id, "X");
  for (const { id } of wires) fresh(id, "W");
  return names;
}

function isBattery({ kind }: Part): boolean {
  return kind === "battery";
}

/** Volts are measured to one battery: another that comes in does not claim it. */
function notReference(part: Part): Part {
  if (!isBattery(part) || part.settings?.reference !== true) return part;
  const { settings, ...rest } = part;
  const others = without(settings, "reference");
  return Object.keys(others).length === 0 ? rest : { ...rest, settings: others };
}

/** A wire whose colour is written in the circuit's codes, or left out where they have no word for it. */
function coloured({ colourCodes: to }: Circuit, { colourCodes: from }: Fragment, wire: Wire): Wire {
  if (wire.colour === undefined || from === to || to === "free") return wire;
  const read = parseColour(wire.colour, from === "free" ? to : from);
  const written = read.ok ? colourText(read.value, to) : read;
  if (written.ok) return { ...wire, colour: written.value };
  const { colour: _, ...rest } = wire;
  return rest;
}
