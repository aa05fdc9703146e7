import type { ConnectorId } from "../base/ids.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import { controlsOf } from "../circuit/points.ts";

/** A column before it is read: what stands where, in words and as a condition. */
export interface Stand {
  readonly title: string;
  readonly under: string;
  readonly condition: Condition;
  readonly plugged: boolean;
}

/**
 * What more than half of the function checks set alike: the key on, and whatever else must be so before most things
 * work. Empty where the circuit has no checks or they share nothing.
 */
export function keyOn(circuit: Circuit): Readonly<Record<string, string>> {
  const counts = new Map<string, number>();
  for (const { condition } of circuit.checks) {
    for (const entry of Object.entries(condition.set ?? {}))
      counts.set(entry.join("="), (counts.get(entry.join("=")) ?? 0) + 1);
  }
  const shared = [...counts].filter(([, count]) => count > circuit.checks.length / 2);
  return Object.fromEntries(shared.map(([entry]) => entry.split("=") as [string, string]));
}

/** Rest with the key off and on, then each other control alone in each position, plug on and then off. */
export function standsFor(circuit: Circuit, connector: ConnectorId): readonly Stand[] {
  const on = keyOn(circuit);
  const hasKey = Object.keys(on).length > 0;
  const rest = { title: "At rest", under: hasKey ? "key off" : "", condition: {} };
  const keyed = hasKey ? [{ title: "At rest", under: keyWords(on), condition: { set: on } }] : [];
  const thrown = controlsOf(circuit)
    .filter(({ key }) => !(key in on))
    .flatMap(({ key, control, rest: restPosition }) =>
      control.positions
        .filter(({ name }) => name !== restPosition)
        .map(({ name, springsBackTo }) => ({
          title: `${key} ${name}`,
          under: springsBackTo === undefined ? "" : "held",
          condition: { set: { ...on, [key]: name } },
        })),
    );
  const plugged = [rest, ...keyed, ...thrown].map((stand) => ({ ...stand, plugged: true }));
  const apart = plugged.map((stand) => ({
    ...stand,
    plugged: false,
    condition: { ...stand.condition, apart: [connector] },
  }));
  return [...plugged, ...apart];
}

function keyWords(on: Readonly<Record<string, string>>): string {
  return Object.entries(on)
    .map(([key, position]) => `${key} ${position}`)
    .join(", ");
}
