import type { Circuit } from "./circuit.ts";
import { connectorAt, partAt, pointAt } from "./points.ts";
import { looseEnd, type Problem, problem } from "./problem.ts";

/** What is wrong with the trim: groups that nobody needs or that come after themselves, and reach of what is not there. */
export function checkReach(circuit: Circuit): readonly Problem[] {
  const groups = new Set(circuit.access.map(({ id }) => id));
  const used = new Set([
    ...circuit.access.flatMap(({ after }) => after ?? []),
    ...Object.values(circuit.reach).map(({ access }) => access),
  ]);
  return [
    ...Object.entries(circuit.reach).flatMap(([key, { access }]) => [
      ...(isReachable(circuit, key) ? [] : [problem("reach-unknown", key, { key })]),
      ...(access === undefined || groups.has(access) ? [] : [problem("access-unknown", key, { access })]),
    ]),
    ...circuit.access.flatMap(({ id, after = [] }) => [
      ...after.filter((earlier) => !groups.has(earlier)).map((access) => problem("access-unknown", id, { access })),
      ...(used.has(id) ? [] : [looseEnd("access-unused", id, { access: id })]),
    ]),
    ...accessLoops(circuit).map((access) => problem("access-loop", access, { access })),
  ];
}

/** True for what reach may be told of: a part, a connector, a point, or a place of an in-line joint with both sides. */
export function isReachable(circuit: Circuit, key: string): boolean {
  if (partAt(circuit, key) || connectorAt(circuit, key) || pointAt(circuit, key)) return true;
  return pointAt(circuit, `${key}a`) !== undefined && pointAt(circuit, `${key}b`) !== undefined;
}

/** Access groups that come after themselves, straight or through others. */
export function accessLoops(circuit: Circuit): readonly string[] {
  const after = new Map(circuit.access.map((group) => [group.id, group.after ?? []]));
  const isAfterItself = (id: string): boolean => {
    const seen = new Set<string>();
    const waiting = [...(after.get(id) ?? [])];
    for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
      if (next === id) return true;
      if (seen.has(next)) continue;
      seen.add(next);
      waiting.push(...(after.get(next) ?? []));
    }
    return false;
  };
  return circuit.access.map(({ id }) => id).filter(isAfterItself);
}
