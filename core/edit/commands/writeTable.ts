import type { PartId } from "../../base/ids.ts";
import { type Outcome, ok, refuse } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import { partAt, pointAt, terminalPoint, terminalsOf, wireSideOf } from "../../circuit/points.ts";
import { kindOf } from "../../parts/catalogue.ts";
import type { Control, Part } from "../../parts/kind.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf, nameOf } from "../editOf.ts";
import { terminalChanges, terminalNamesRefusal } from "../partTerminals.ts";
import { controlNameRefusal, positionsRefusal } from "../tableRules.ts";
import { tableText } from "../tableText.ts";

/**
 * Gives a switch the continuity tables that are written as text (`tableText` says how), with the terminals that these name.
 * Its own keep their order, and one that no table names stays while a wire or a plug holds it. Refuses `part-unknown`,
 * `part-positions-idle`, `table-none`, a line that cannot be read, what `positionsRefusal` finds, and `already-so`.
 */
export function writeTable(bench: Bench, id: PartId, text: string): Outcome<Edit> {
  const { circuit } = bench;
  const part = partAt(circuit, id);
  if (!part) return refuse("part-unknown", { part: id });
  const controls = controlsIn(text, part.controls ?? []);
  if (!controls.ok) return controls;
  const named = new Set(controls.value.flatMap(({ positions }) => positions.flatMap(({ joins }) => joins.flat())));
  const was = terminalsOf(circuit, part);
  const kept = was.filter((name) => named.has(name) || isHeld(bench, part, name));
  const names = [...kept, ...[...named].filter((name) => !was.includes(name))];
  const odd = terminalNamesRefusal(names);
  if (odd) return { ok: false, refusal: odd };
  for (const { name, positions } of controls.value) {
    const wrong = (name === "" ? null : controlNameRefusal(name)) ?? positionsRefusal(part, positions, names);
    if (wrong) return { ok: false, refusal: wrong };
  }
  const now = withControls(part, controls.value, names);
  const isTaken = kindOf(part.kind)?.controls(now).length === controls.value.length;
  if (!isTaken) return refuse("part-positions-idle", { part: id, kind: part.kind });
  if (JSON.stringify(now) === JSON.stringify({ ...part, terminals: was })) return alreadySo(nameOf(circuit, id));
  const changes = terminalChanges(bench, part, now, names);
  return changes.ok ? editOf(bench, WIRING_NAMES.writeTable(nameOf(circuit, id)), changes.value) : changes;
}

/** The controls that are written; one that is called as before keeps its name, by which conditions know it. */
function controlsIn(text: string, was: readonly Control[]): Outcome<readonly Control[]> {
  const controls: Control[] = [];
  for (const { control, wrong } of tableText(text)) {
    if (wrong) return { ok: false, refusal: wrong };
    const same = control && was.find(({ name, label }) => (label ?? name) === (control.label ?? control.name));
    if (control) controls.push(same ? { ...control, name: same.name } : control);
  }
  return controls.length > 0 ? ok(controls) : refuse("table-none");
}

function isHeld({ circuit }: Bench, part: Part, terminal: string): boolean {
  const point = wireSideOf(circuit, terminalPoint(part, terminal));
  if (pointAt(circuit, point)?.kind === "cavity") return true;
  return circuit.wires.some(({ from, to }) => from === point || to === point);
}

/** The part with these controls: one without a name is the table of a plain switch. */
function withControls(part: Part, controls: readonly Control[], terminals: readonly string[]): Part {
  const { positions: _positions, controls: _controls, terminals: _terminals, ...others } = part;
  const [first] = controls;
  const isPlain = controls.length === 1 && first?.name === "";
  return { ...others, terminals, ...(isPlain ? { positions: first.positions } : { controls }) };
}
