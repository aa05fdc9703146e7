import type { WireId } from "../base/ids.ts";
import { type Outcome, type Refusal, refuse } from "../base/outcome.ts";
import { WIRE_AMOUNTS } from "../base/words/edit.ts";
import type { Bench } from "./bench.ts";
import type { Edit } from "./edit.ts";
import { alreadySo, editOf, goingOn } from "./editOf.ts";

/** Limits of a wire's amounts, as a circuit file takes them. */
const LIMITS = {
  mm2: { min: 0.01, max: 500, unit: "mm2" },
  metres: { min: 0, max: 1000, unit: "m" },
  ohms: { min: 0, max: 1e6, unit: "ohm" },
} as const;

/** Why a wire cannot have this amount, `amount-limits`; null where it can. */
export function wireLimitRefusal(field: keyof typeof LIMITS, value: number): Refusal | null {
  const { min, max, unit } = LIMITS[field];
  if (value >= min && value <= max) return null;
  return refuse("amount-limits", { what: WIRE_AMOUNTS[field], min, max, unit, value }).refusal;
}

/** How an amount of a wire is read, and how the edit is named. */
interface Amount {
  readonly field: keyof typeof LIMITS;
  readonly parse: (text: string) => Outcome<number>;
  readonly name: (wire: string, amount: string) => string;
  /** What is said where the amount is taken away. */
  readonly unsaid: string;
}

/**
 * An edit that gives a wire another size, length or resistance as typed; the empty text takes it away. Refuses
 * `wire-unknown`, `amount-limits`, `already-so`, and what `parse` refuses.
 */
export function wireAmountEdit(bench: Bench, id: WireId, typed: string, of: Amount): Outcome<Edit> {
  const wire = bench.circuit.wires.find((candidate) => candidate.id === id);
  if (!wire) return refuse("wire-unknown", { wire: id });
  const now = wire[of.field] ?? undefined;
  if (typed.trim() === "") {
    if (now === undefined) return alreadySo(id);
    return editOf(bench, of.name(id, of.unsaid), [
      goingOn(bench),
      { change: "item", list: "wires", id, field: of.field },
    ]);
  }
  const amount = of.parse(typed);
  if (!amount.ok) return amount;
  const wrong = wireLimitRefusal(of.field, amount.value);
  if (wrong) return { ok: false, refusal: wrong };
  const { unit } = LIMITS[of.field];
  if (now === amount.value) return alreadySo(id);
  return editOf(bench, of.name(id, `${amount.value} ${unit}`), [
    goingOn(bench),
    { change: "item", list: "wires", id, field: of.field, value: amount.value },
  ]);
}
