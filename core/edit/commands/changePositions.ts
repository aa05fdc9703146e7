import type { PartId } from "../../base/ids.ts";
import { type Outcome, ok, refuse } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import { controlKey, partAt, terminalsOf } from "../../circuit/points.ts";
import { kindOf } from "../../parts/catalogue.ts";
import type { Control, Kind, Part, Position } from "../../parts/kind.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf, nameOf } from "../editOf.ts";
import { followed, modesRenamed, type Renames } from "../following.ts";
import { partChanges, renamedInPlace } from "../partTerminals.ts";
import { controlNameRefusal, positionsRefusal } from "../tableRules.ts";

/**
 * Gives a switch, or one control of a panel, another continuity table; a panel takes a new control by a name that it does
 * not have. The empty name is the one control of a plain switch. Conditions, function checks, scenes and faults follow a
 * position that another one takes the place of, and lose one that goes. Refuses `part-unknown`, `part-positions-idle`,
 * `control-unknown`, `control-spelling`, what `positionsRefusal` finds, and `already-so`.
 */
export function changePositions(
  bench: Bench,
  id: PartId,
  control: string,
  positions: readonly Position[],
): Outcome<Edit> {
  const { circuit } = bench;
  const part = partAt(circuit, id);
  const kind = part && kindOf(part.kind);
  if (!kind) return refuse("part-unknown", { part: id });
  const terminals = terminalsOf(circuit, part);
  const table = positions.map(plain);
  const wrong = positionsRefusal(part, table, terminals);
  if (wrong) return { ok: false, refusal: wrong };
  const drawn = drawnWith(kind, part, control, table);
  if (!drawn.ok) return drawn;
  const was = kind.controls(part).find(({ name }) => name === control)?.positions ?? [];
  if (JSON.stringify(was) === JSON.stringify(table)) return alreadySo(nameOf(circuit, id));
  const now = withTerminals(kind, drawn.value, terminals);
  const called = was.length > 0 ? calledLike(kind, part, control, was, table) : { part: now, renames: new Map() };
  const isSame = JSON.stringify(called.part) === JSON.stringify(part);
  const renames: Renames = {
    controls: keysRenamed(kind, part, now),
    positions: new Map([[keyOf(kind, part, control), called.renames]]),
    ...(!isSame && was.length > 0 && { modes: new Map([[id, modesRenamed(circuit, part, called.part)]]) }),
  };
  const changes = followed(bench, partChanges(part, called.part), renames, partChanges(called.part, now));
  if (!changes.ok) return changes;
  return editOf(bench, WIRING_NAMES.changePositions(nameOf(circuit, id), control), changes.value);
}

/** Only what a circuit file writes of a position, in its order; a pair that stands twice is written once. */
function plain({ name, joins, springsBackTo }: Position): Position {
  const once = joins.filter(
    ([a, b], index) => joins.findIndex(([c, d]) => (a === c && b === d) || (a === d && b === c)) === index,
  );
  return { name: name.trim(), ...(springsBackTo !== undefined && { springsBackTo }), joins: once };
}

/** The part with this table for the control. */
function drawnWith(kind: Kind, part: Part, control: string, positions: readonly Position[]): Outcome<Part> {
  const controls = part.controls ?? [];
  const isKnown = controls.some(({ name }) => name === control);
  if (control === "" ? part.controls !== undefined : part.positions !== undefined) {
    return refuse("control-unknown", { control: `${part.id}.${control}` });
  }
  const refusal = control === "" || isKnown ? null : controlNameRefusal(control);
  if (refusal) return { ok: false, refusal };
  const table: Control = { name: control, positions };
  const next: Part =
    control === ""
      ? { ...part, positions }
      : {
          ...part,
          controls: isKnown
            ? controls.map((each) => (each.name === control ? { ...each, positions } : each))
            : [...controls, table],
        };
  const isTaken = kind.controls(next).some((each) => each.positions === positions);
  return isTaken ? ok(next) : refuse("part-positions-idle", { part: part.id, kind: kind.name });
}

/** A switch without terminals of its own has those that its table names: they are written where the table no longer does. */
function withTerminals(kind: Kind, part: Part, terminals: readonly string[]): Part {
  const isSame = part.terminals !== undefined || kind.terminals(part, {}).join() === terminals.join();
  return isSame ? part : { ...part, terminals };
}

/** The part as it was, with the names of positions that others take the place of. */
function calledLike(
  kind: Kind,
  part: Part,
  control: string,
  was: readonly Position[],
  now: readonly Position[],
): { readonly part: Part; readonly renames: ReadonlyMap<string, string> } {
  const names = (positions: readonly Position[]): readonly string[] => positions.map(({ name }) => name);
  const renames = was.length === now.length ? renamedInPlace(names(was), names(now)) : new Map<string, string>();
  if (renames.size === 0) return { part, renames };
  const called = was.map(({ name, springsBackTo: back, joins }): Position => {
    return {
      name: renames.get(name) ?? name,
      ...(back !== undefined && { springsBackTo: renames.get(back) ?? back }),
      joins,
    };
  });
  const next = drawnWith(kind, part, control, called);
  return { part: next.ok ? next.value : part, renames };
}

function keyOf(kind: Kind, part: Part, name: string): string {
  const control = kind.controls(part).find((each) => each.name === name);
  return control ? controlKey(part, control) : "";
}

/** Keys of controls that are called otherwise once a panel has a second one. */
function keysRenamed(kind: Kind, was: Part, now: Part): ReadonlyMap<string, string> {
  return new Map(kind.controls(was).map(({ name }) => [keyOf(kind, was, name), keyOf(kind, now, name)] as const));
}
