import { type Outcome, type Refusal, refuse } from "../base/outcome.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { terminalPoint, terminalsOf, wireSideOf } from "../circuit/points.ts";
import type { Part, Position, WhenThen } from "../parts/kind.ts";
import type { Bench } from "./bench.ts";
import type { Change } from "./change.ts";
import { placeNamesRefusal } from "./faceRows.ts";
import { followed, modesRenamed } from "./following.ts";

/** Most terminals of a part, as a circuit file takes them. */
const MOST_TERMINALS = 400;

/** Why these cannot be the terminals of a part: `terminals-count`, `cavity-spelling` or `twice`; null where they can. */
export function terminalNamesRefusal(names: readonly string[]): Refusal | null {
  if (names.length === 0 || names.length > MOST_TERMINALS)
    return refuse("terminals-count", { most: MOST_TERMINALS }).refusal;
  const odd = placeNamesRefusal(names);
  if (odd) return odd;
  const again = names.find((name, index) => names.indexOf(name) !== index);
  return again === undefined ? null : refuse("twice", { what: "terminal", id: again }).refusal;
}

/** Names that another stands in the place of, where the old one is nowhere any more and the new one is new. */
export function renamedInPlace(was: readonly string[], now: readonly string[]): ReadonlyMap<string, string> {
  return new Map(
    was.flatMap((name, index) => {
      const next = now[index];
      return next !== undefined && !now.includes(name) && !was.includes(next) ? [[name, next] as const] : [];
    }),
  );
}

/** The fields of a part that say what its terminals do. */
const FIELDS = ["terminals", "positions", "controls", "pins", "table"] as const;

/** The changes that make a part another one, by the fields that say what its terminals do. */
export function partChanges(was: Part, now: Part): readonly Change[] {
  return FIELDS.filter((field) => JSON.stringify(was[field]) !== JSON.stringify(now[field])).map(
    (field) =>
      ({ change: "item", list: "parts", id: was.id, field, ...(now[field] && { value: now[field] }) }) as Change,
  );
}

/** The part with some of its terminals called otherwise in all that it says of them. */
export function terminalsRenamed(part: Part, names: ReadonlyMap<string, string>): Part {
  const called = (terminal: string): string => names.get(terminal) ?? terminal;
  return mapped(part, {
    terminals: (list) => list.map(called),
    joins: (joins) => joins.map(([a, b]) => [called(a), called(b)]),
    keyed: (record) => Object.fromEntries(Object.entries(record).map(([pin, value]) => [called(pin), value])),
  });
}

/** The part without what it says of terminals that it does not have. */
export function terminalsTrimmed(part: Part, kept: ReadonlySet<string>): Part {
  return mapped(part, {
    terminals: (list) => list.filter((terminal) => kept.has(terminal)),
    joins: (joins) => joins.filter(([a, b]) => kept.has(a) && kept.has(b)),
    keyed: (record) => Object.fromEntries(Object.entries(record).filter(([pin]) => kept.has(pin))),
  });
}

type Joins = Position["joins"];

interface Mapping {
  readonly terminals: (list: readonly string[]) => readonly string[];
  readonly joins: (joins: Joins) => Joins;
  readonly keyed: <V>(record: Readonly<Record<string, V>>) => Readonly<Record<string, V>>;
}

function mapped(part: Part, { terminals, joins, keyed }: Mapping): Part {
  const position = (each: Position): Position => ({ ...each, joins: joins(each.joins) });
  const row = (each: WhenThen): WhenThen => ({ when: keyed(each.when), joins: joins(each.joins) });
  return {
    ...part,
    ...(part.terminals && { terminals: terminals(part.terminals) }),
    ...(part.positions && { positions: part.positions.map(position) }),
    ...(part.controls && {
      controls: part.controls.map((control) => ({ ...control, positions: control.positions.map(position) })),
    }),
    ...(part.pins && { pins: keyed(part.pins) }),
    ...(part.table && { table: part.table.map(row) }),
  };
}

/**
 * All changes that make a part another one with these terminals, in order. Wires, cavities, reach and faults of a terminal
 * that another takes the place of follow; a terminal that goes takes its wires along.
 */
export function terminalChanges(
  bench: Bench,
  part: Part,
  now: Part,
  names: readonly string[],
): Outcome<readonly Change[]> {
  const { circuit } = bench;
  const was = terminalsOf(circuit, part);
  const renames = renamedInPlace(was, names);
  const called = terminalsRenamed(part.pins ? part : { ...part, terminals: was }, renames);
  const points = new Map(
    [...renames].map(([one, other]) => [terminalPoint(part, one), terminalPoint(part, other)] as const),
  );
  const modes = new Map([[part.id, modesRenamed(circuit, part, called)]]);
  const gone = was
    .filter((name) => !renames.has(name) && !names.includes(name))
    .map((name) => terminalPoint(part, name));
  const changing = [...partChanges(called, now), ...goneWith(circuit, new Set(gone), points)];
  return followed(bench, partChanges(part, called), { points, modes }, changing);
}

/** Wires of terminals that go, and the cavities that carried them, once the others have their new names. */
function goneWith(
  circuit: Circuit,
  gone: ReadonlySet<string>,
  renamed: ReadonlyMap<string, string>,
): readonly Change[] {
  const ends = new Set([...gone].flatMap((point) => [point, wireSideOf(circuit, point)]));
  const wires = circuit.wires.filter(({ from, to }) => ends.has(from) || ends.has(to));
  const connectors = circuit.connectors.filter(({ cavities }) =>
    Object.values(cavities ?? {}).some((each) => gone.has(each)),
  );
  return [
    ...wires.flatMap(({ id }): readonly Change[] => [
      { change: "remove", list: "wires", id },
      ...(Object.hasOwn(circuit.placement.wires, id) ? [{ change: "entry", record: "bends", key: id } as const] : []),
    ]),
    ...connectors.map(({ id, cavities }): Change => {
      const left = Object.entries(cavities ?? {}).filter(([, each]) => !gone.has(each));
      const value = Object.fromEntries(left.map(([cavity, each]) => [cavity, renamed.get(each) ?? each]));
      return { change: "item", list: "connectors", id, field: "cavities", value };
    }),
  ];
}
