import type { PartId } from "../../base/ids.ts";
import { type Outcome, refuse } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import type { Circuit } from "../../circuit/circuit.ts";
import { partAt, terminalsOf } from "../../circuit/points.ts";
import { kindOf } from "../../parts/catalogue.ts";
import type { Part, PinRole } from "../../parts/kind.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf, nameOf } from "../editOf.ts";
import {
  renamedInPlace,
  terminalChanges,
  terminalNamesRefusal,
  terminalsRenamed,
  terminalsTrimmed,
} from "../partTerminals.ts";
import { terminalRefusal } from "../tableRules.ts";

const ROLES: readonly PinRole[] = ["supply", "ground", "input", "drives-high", "drives-low", "unknown"];

/** Pins of a module with what each is, in order. */
export type Pins = Readonly<Record<string, PinRole>>;

/**
 * Says what each pin of a module is. Without terminals of its own its pins are its terminals: one that another takes the
 * place of is renamed, one that goes takes its wires along. Refuses `part-unknown`, `part-pins-idle`, `pin-role`,
 * `terminals-count`, `cavity-spelling`, `point-terminal`, and `already-so`.
 */
export function changePins(bench: Bench, id: PartId, pins: Pins): Outcome<Edit> {
  const { circuit } = bench;
  const part = moduleOf(circuit, id);
  if (!part.ok) return part;
  const names = Object.keys(pins);
  const odd = names.find((pin) => !ROLES.includes(pins[pin]!));
  if (odd !== undefined) return refuse("pin-role", { pin: odd, role: pins[odd]!, roles: ROLES.join(", ") });
  const was = terminalsOf(circuit, part.value);
  const refusal =
    terminalNamesRefusal(names) ??
    (part.value.terminals ? names.map((pin) => terminalRefusal(part.value, pin, was)).find(Boolean) : null);
  if (refusal) return { ok: false, refusal };
  if (JSON.stringify(part.value.pins) === JSON.stringify(pins)) return alreadySo(nameOf(circuit, id));
  const terminals = part.value.terminals ?? names;
  const renamed = terminalsRenamed(part.value, renamedInPlace(was, terminals));
  const now: Part = { ...terminalsTrimmed(renamed, new Set(terminals)), pins };
  const changes = terminalChanges(bench, part.value, now, terminals);
  return changes.ok ? editOf(bench, WIRING_NAMES.changePins(nameOf(circuit, id)), changes.value) : changes;
}

/** A part that has pins and a table. Refuses `part-unknown` and `part-pins-idle`. */
export function moduleOf(circuit: Circuit, id: PartId): Outcome<Part> {
  const part = partAt(circuit, id);
  const kind = part && kindOf(part.kind);
  if (!kind) return refuse("part-unknown", { part: id });
  return kind.role === "electronics"
    ? { ok: true, value: part }
    : refuse("part-pins-idle", { part: id, kind: kind.name });
}
