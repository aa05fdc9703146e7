import type { ControlKey } from "../../core/base/ids.ts";
import type { Circuit, Condition } from "../../core/circuit/circuit.ts";
import { type CircuitControl, controlsOf } from "../../core/circuit/points.ts";

/** What decides which controls are in hand. */
export interface InHand {
  readonly circuit: Circuit;
  readonly condition: Condition;
  readonly page: string;
  /** Thrown lately: they stay in the strip when they are back at rest, so that nothing moves away under a hand. */
  readonly recent: readonly ControlKey[];
  /** Controls of the complaint and of the active step. */
  readonly wanted: readonly ControlKey[];
}

/**
 * All controls, those in hand first: key, thrown or wanted, those of the page shown, then the rest; within each the
 * order of the circuit.
 */
export function stripControls({ circuit, condition, page, recent, wanted }: InHand): readonly CircuitControl[] {
  const thrown = Object.keys(condition.set ?? {});
  const rank = ({ key, part }: CircuitControl): number => {
    if (part.kind === "ignition-switch") return 0;
    if (thrown.includes(key) || recent.includes(key) || wanted.includes(key)) return 1;
    return circuit.placement.parts[part.id]?.page === page ? 2 : 3;
  };
  return [...controlsOf(circuit)].sort((one, other) => rank(one) - rank(other));
}

/** The first few of them in the order of the circuit, key first: what the strip shows. */
export function inCircuitOrder(circuit: Circuit, shown: readonly CircuitControl[]): readonly CircuitControl[] {
  const order = controlsOf(circuit);
  const place = (control: CircuitControl): number =>
    control.part.kind === "ignition-switch" ? -1 : order.indexOf(control);
  return [...shown].sort((one, other) => place(one) - place(other));
}
