import { parseAmount } from "../../core/base/amount.ts";
import type { Circuit, Reach } from "../../core/circuit/circuit.ts";
import { addAccess } from "../../core/edit/commands/addAccess.ts";
import { setReach } from "../../core/edit/commands/setReach.ts";
import type { Part } from "../../core/parts/kind.ts";
import type { Command } from "../state/action.ts";
import { plugsOf } from "../state/places.ts";
import { inTurn } from "./inTurn.ts";

/**
 * What the reach of a part is written under: itself, or its plug where only that is written, since what is written of a
 * plug goes before what is written of its part.
 */
export function reachKey(circuit: Circuit, part: Part): string {
  if (Object.hasOwn(circuit.reach, part.id)) return part.id;
  const written = plugsOf(circuit, part).filter(({ id }) => Object.hasOwn(circuit.reach, id));
  return written[0]?.id ?? part.id;
}

/** Says one thing of a reach and leaves the rest; undefined takes it away. */
export function reachChanged<F extends keyof Reach>(key: string, field: F, value: Reach[F] | undefined): Command {
  return (bench) => {
    const { [field]: _, ...others } = bench.circuit.reach[key] ?? {};
    return setReach(bench, key, value === undefined ? others : { ...others, [field]: value });
  };
}

/** Minutes as typed; the empty text says nothing of them. */
export function minutesChanged(key: string, typed: string): Command {
  return (bench) => {
    if (typed.trim() === "") return reachChanged(key, "minutes", undefined)(bench);
    const minutes = parseAmount(typed, "min");
    return minutes.ok ? reachChanged(key, "minutes", minutes.value)(bench) : minutes;
  };
}

/** A new access group with its minutes as typed; the empty text is no time. Refuses a wrong amount, and as `addAccess` does. */
export function newAccess(label: string, minutes: string): Command {
  return (bench) => {
    const amount = minutes.trim() === "" ? { ok: true as const, value: 0 } : parseAmount(minutes, "min");
    return amount.ok ? addAccess(bench, { label, minutes: amount.value }) : amount;
  };
}

/** A new access group, and the thing behind it. */
export function behindNew(key: string, label: string, minutes: string): Command {
  return inTurn(newAccess(label, minutes), (then) => reachChanged(key, "access", then.circuit.access.at(-1)?.id)(then));
}
