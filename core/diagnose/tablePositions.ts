import type { ConnectorId } from "../base/ids.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import { controlAt, controlsOf, springsBack } from "../circuit/points.ts";

/** A column before it is read: what stands where, in words and as a condition. */
export interface Stand {
  readonly title: string;
  readonly under: string;
  readonly condition: Condition;
  readonly plugged: boolean;
}

/**
 * What more than half of the function checks set alike and stays where it is put: the key on, and whatever else must be so
 * before most things work. Empty where the circuit has no checks or they share nothing.
 */
export function keyOn(circuit: Circuit): Readonly<Record<string, string>> {
  const counts = new Map<string, number>();
  for (const { condition } of circuit.checks) {
    for (const [key, position] of Object.entries(condition.set ?? {})) {
      if (springsBack(circuit, key, position)) continue;
      counts.set(`${key}=${position}`, (counts.get(`${key}=${position}`) ?? 0) + 1);
    }
  }
  const shared = [...counts].filter(([, count]) => count > circuit.checks.length / 2);
  return Object.fromEntries(shared.map(([entry]) => entry.split("=") as [string, string]));
}

/**
 * Rest with the key off and on, then each other control alone in each position, then what the function checks throw
 * together; all of it with the plug on and then off.
 */
export function standsFor(circuit: Circuit, connector: ConnectorId): readonly Stand[] {
  const on = keyOn(circuit);
  const hasKey = Object.keys(on).length > 0;
  const rest = { title: "At rest", under: hasKey ? keyWords(offOf(circuit, on)) : "", condition: {} };
  const keyed = hasKey ? [{ title: "At rest", under: keyWords(on), condition: { set: on } }] : [];
  const stands = [rest, ...keyed, ...aloneStands(circuit, on), ...togetherStands(circuit, on)];
  const plugged = stands.map((stand) => ({ ...stand, plugged: true }));
  const apart = stands.map((stand) => ({
    ...stand,
    plugged: false,
    condition: { ...stand.condition, apart: [connector] },
  }));
  return [...plugged, ...apart];
}

/** The same controls at their rest positions. */
function offOf(circuit: Circuit, on: Thrown): Thrown {
  return Object.fromEntries(Object.keys(on).map((key) => [key, controlAt(circuit, key)?.rest ?? ""]));
}

type Thrown = Readonly<Record<string, string>>;

function aloneStands(circuit: Circuit, on: Thrown): readonly Omit<Stand, "plugged">[] {
  return controlsOf(circuit)
    .filter(({ key }) => !(key in on))
    .flatMap(({ key, control, rest }) =>
      control.positions
        .filter(({ name }) => name !== rest)
        .map(({ name }) => thrownStand(circuit, on, { [key]: name })),
    );
}

/** Throws of several controls at once, beside the key, that some check makes a load work with; each once. */
function togetherStands(circuit: Circuit, on: Thrown): readonly Omit<Stand, "plugged">[] {
  const found = new Map<string, Thrown>();
  for (const { condition, expect } of circuit.checks) {
    if (expect === "off") continue;
    const thrown = Object.entries(condition.set ?? {}).filter(([key, position]) => on[key] !== position);
    const isMore = thrown.length > 1 || thrown.some(([key]) => key in on);
    if (isMore) found.set(JSON.stringify(thrown), Object.fromEntries(thrown));
  }
  return [...found.values()].map((thrown) => thrownStand(circuit, on, thrown));
}

function thrownStand(circuit: Circuit, on: Thrown, thrown: Thrown): Omit<Stand, "plugged"> {
  const isHeld = Object.entries(thrown).some(([key, position]) => springsBack(circuit, key, position));
  return { title: keyWords(thrown), under: isHeld ? "held" : "", condition: { set: { ...on, ...thrown } } };
}

function keyWords(on: Readonly<Record<string, string>>): string {
  return Object.entries(on)
    .map(([key, position]) => `${key} ${position}`)
    .join(" and ");
}
