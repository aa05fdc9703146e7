import type { Circuit } from "../circuit/circuit.ts";
import { possibleFaults } from "../diagnose/possible.ts";
import { faultModes, faultText, targetOf } from "../live/fault.ts";

/** What may be filed as a verdict about one thing. */
export interface Verdictable {
  /** Text of the fault, as a verdict names it. */
  readonly suspect: string;
  /** How it fails, in words: "broken", "corroded, ohms added". */
  readonly title: string;
}

/**
 * What can be wrong with a part, a wire, a place of a plug or a whole plug. Of a fault that has a value the first usual one stands
 * for all: a verdict is on the repair. Nothing for what the circuit does not have.
 */
export function verdictsFor(circuit: Circuit, id: string): readonly Verdictable[] {
  const target = targetOf(circuit, id);
  const single = (target ? faultModes(circuit, target) : []).flatMap(
    ({ mode, title, value }): readonly Verdictable[] => {
      if (mode === "crossed") return [];
      const usual = value?.usual[0];
      return [{ suspect: faultText({ target: id, mode, ...(usual !== undefined && { value: usual }) }), title }];
    },
  );
  const whole = possibleFaults(circuit)
    .filter(({ faults, repair }) => faults.length > 1 && repair.startsWith(`${id}|`))
    .map((possible): Verdictable => ({ suspect: possible.id, title: possible.title.slice(id.length + 1) }));
  return [...single, ...whole];
}
