import type { PointId } from "../../../core/base/ids.ts";
import type { Circuit, Condition } from "../../../core/circuit/circuit.ts";
import { netsOf } from "../../../core/circuit/nets.ts";
import { controlKey, controlsOf, isInLine, partAt, pointAt } from "../../../core/circuit/points.ts";
import { liveOf } from "../../../core/live/live.ts";
import type { Control, Part } from "../../../core/parts/kind.ts";

/** A position of a control by where it stands among the others: names may differ from one drawing to the other. */
interface Setting {
  readonly part: string;
  readonly control: number;
  readonly position: number;
}

/** What differs in the nets of two circuits: terminals of parts, by what each is joined to. None: the same nets. */
export function netsThatDiffer(one: Circuit, other: Circuit): readonly string[] {
  const [mine, theirs] = [netWords(one), netWords(other)];
  const points = new Set([...mine.keys(), ...theirs.keys()]);
  return [...points].flatMap((point) => {
    const [a, b] = [mine.get(point), theirs.get(point)];
    return a === b ? [] : [`${point}: ${a ?? "not there"} | ${b ?? "not there"}`];
  });
}

/** What differs in the live states of two circuits in any of these settings. */
export function statesThatDiffer(one: Circuit, other: Circuit, settings: readonly (readonly Setting[])[]): string[] {
  return settings.flatMap((setting) => {
    const [mine, theirs] = [stateWords(one, setting), stateWords(other, setting)];
    const set = setting.map(({ part, control, position }) => `${part}.${control}=${position}`).join(" ");
    return [...mine].flatMap(([what, is]) =>
      theirs.get(what) === is ? [] : [`${set}: ${what} ${is} | ${theirs.get(what) ?? "not there"}`],
    );
  });
}

/**
 * Every way in which controls that stay may stand, and with each the springs one at a time and two of them at once in every
 * pair of positions.
 */
export function settingsOf(circuit: Circuit): readonly (readonly Setting[])[] {
  const all = circuit.parts.flatMap((part) =>
    controlsIn(circuit, part).map((control, index) => ({
      part: part.id,
      control: index,
      positions: control.positions,
    })),
  );
  const isSpring = ({ positions }: (typeof all)[number]): boolean =>
    positions.some(({ springsBackTo }) => springsBackTo !== undefined);
  const ways = ({ part, control, positions }: (typeof all)[number], from: number): readonly Setting[] =>
    positions.slice(from).map((_, index) => ({ part, control, position: from + index }));
  const held = all.filter(isSpring).flatMap((each) => ways(each, 1));
  const springs: readonly (readonly Setting[])[] = [
    [],
    ...held.map((each) => [each]),
    ...held.flatMap((a, index) =>
      held.slice(index + 1).flatMap((b) => (a.part === b.part && a.control === b.control ? [] : [[a, b]])),
    ),
  ];
  const stays = all
    .filter((each) => !isSpring(each))
    .reduce<readonly (readonly Setting[])[]>(
      (rows, each) => rows.flatMap((row) => ways(each, 0).map((way) => [...row, way])),
      [[]],
    );
  return stays.flatMap((row) => springs.map((more) => [...row, ...more]));
}

/** By terminal: the terminals it is joined to, itself too, in a fixed order. What only passes current on is left out. */
function netWords(circuit: Circuit): ReadonlyMap<PointId, string> {
  const words = new Map<PointId, string>();
  for (const net of netsOf(circuit)) {
    const terminals = net.points.filter((point) => isTerminal(circuit, point)).sort();
    for (const terminal of terminals) words.set(terminal, terminals.join(" "));
  }
  return words;
}

function stateWords(circuit: Circuit, settings: readonly Setting[]): ReadonlyMap<string, string> {
  const set: Record<string, string> = {};
  for (const { part, control, position } of settings) {
    const found = partAt(circuit, part);
    const handle = found && controlsIn(circuit, found)[control];
    const name = handle?.positions[position]?.name;
    if (found && handle && name !== undefined) set[controlKey(found, handle)] = name;
  }
  const condition: Condition = { set };
  const live = liveOf(circuit, condition);
  return new Map([
    ...[...live.points].flatMap(([point, { state }]) => (isTerminal(circuit, point) ? [[point, state] as const] : [])),
    ...[...live.parts].flatMap(([part, { doing }]) => (passesOn(circuit, part) ? [] : [[part, doing ?? "-"] as const])),
  ]);
}

function controlsIn(circuit: Circuit, { id }: Part): readonly Control[] {
  return controlsOf(circuit).flatMap(({ part, control }) => (part.id === id ? [control] : []));
}

/** Whether a point is a terminal of a part that does something with current beside passing it on. */
function isTerminal(circuit: Circuit, id: PointId): boolean {
  const point = pointAt(circuit, id);
  return point?.kind === "terminal" && !passesOn(circuit, point.part.id);
}

function passesOn(circuit: Circuit, id: string): boolean {
  const part = partAt(circuit, id);
  return part === undefined || isInLine(part) || part.kind === "splice" || part.kind === "page-link";
}
