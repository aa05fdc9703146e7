import type { PointId } from "../base/ids.ts";
import type { Volts } from "../base/units.ts";
import { terminalPoint } from "../circuit/points.ts";
import type { Kind, Part, Settings } from "../parts/kind.ts";
import { viewOf } from "../parts/view.ts";
import { firstPart, settingsRefusal } from "./newPart.ts";

/**
 * A part as another kind would have it: id and label stay, settings that mean the same in both, and the table of a switch
 * where the new kind follows one. All else is as the kind is first drawn.
 */
export function asKind(part: Part, was: Kind, kind: Kind): Part {
  const first = firstPart(kind, part.id, settingsKept(part, was, kind));
  const { id, kind: name, settings, ...drawn } = first;
  const { label, terminals, positions, controls } = part;
  const table = {
    ...(terminals && { terminals }),
    ...(positions && { positions }),
    ...(controls && { controls }),
  };
  const words = { id, kind: name, ...(label !== undefined && { label }), ...(settings && { settings }) };
  const hasTable = positions !== undefined || controls !== undefined;
  return hasTable && follows(kind, { ...words, ...table }) ? { ...words, ...table } : { ...words, ...drawn };
}

/** Settings of one name, label and unit, with a value that the new kind takes. */
function settingsKept(part: Part, was: Kind, kind: Kind): Settings {
  const kept = Object.entries(part.settings ?? {}).filter(([name, value]) => {
    const [old, next] = [was, kind].map(({ settings }) => settings.find((spec) => spec.name === name));
    const isSame = old !== undefined && next !== undefined && old.label === next.label && old.unit === next.unit;
    return isSame && settingsRefusal(kind, part.id, { [name]: value }) === null;
  });
  return Object.fromEntries(kept);
}

/** Whether a kind takes the table that the part writes for its own, and does not pass it over. */
function follows(kind: Kind, part: Part): boolean {
  const { positions, controls, ...plain } = part;
  const written = controls ?? [{ name: "", positions: positions ?? [] }];
  const taken = kind.controls(part);
  return (
    JSON.stringify(taken) === JSON.stringify(written) && JSON.stringify(taken) !== JSON.stringify(kind.controls(plain))
  );
}

/** How the points of a part go over to another kind, or the terminals that would lose their wires. */
export type Crossing = { readonly points: ReadonlyMap<PointId, PointId> } | { readonly lost: readonly string[] };

/**
 * The new points of a part's terminals: by name where the other kind has every terminal that is used, else by order where
 * it has as many. `isUsed` tells whether a wire or cavity hangs on a terminal.
 */
export function crossing(
  was: { readonly kind: Kind; readonly part: Part },
  now: { readonly kind: Kind; readonly part: Part },
  nominalVolts: Volts,
  isUsed: (point: PointId) => boolean,
): Crossing {
  const old = viewOf(was.kind, was.part, nominalVolts).terminals;
  const next = viewOf(now.kind, now.part, nominalVolts).terminals;
  const lost = old.filter((terminal) => !next.includes(terminal) && isUsed(terminalPoint(was.part, terminal)));
  if (lost.length > 0 && old.length !== next.length) return { lost };
  const pairs = old.flatMap((terminal, index): readonly (readonly [PointId, PointId])[] => {
    const name = lost.length > 0 ? next[index]! : terminal;
    return next.includes(name) ? [[terminalPoint(was.part, terminal), terminalPoint(now.part, name)]] : [];
  });
  return { points: new Map(pairs) };
}
