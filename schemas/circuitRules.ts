import { type Refusal, refuse } from "../core/base/outcome.ts";
import { accessLoops, isReachable } from "../core/circuit/checkReach.ts";
import type { Asked, Circuit, Condition } from "../core/circuit/circuit.ts";
import { connectorAt, controlAt, parsePoint, partAt } from "../core/circuit/points.ts";
import { isLead } from "../core/live/instruments/clipped.ts";
import { partRefusal, twice } from "./partRules.ts";
import { underlayRefusal } from "./underlayRules.ts";

/**
 * The first thing in a circuit of the right shape that does not hold together: an id used twice, a name that names
 * nothing, a part that its kind refuses. Null where all is well.
 */
export function circuitRefusal(circuit: Circuit): Refusal | null {
  return (
    idsRefusal(circuit) ??
    underlayRefusal(circuit) ??
    first(circuit.parts, (part, index) => partRefusal(circuit, part, `parts[${index}]`)) ??
    first(circuit.connectors, (_, index) => connectorRefusal(circuit, index)) ??
    carriedTwice(circuit) ??
    first(circuit.wires, (_, index) => wireRefusal(circuit, index)) ??
    placementRefusal(circuit) ??
    accessRefusal(circuit) ??
    first(Object.keys(circuit.reach), (key) => reachRefusal(circuit, key)) ??
    first(circuit.checks, (_, index) => checkRefusal(circuit, index)) ??
    first(circuit.scenes, (_, index) => sceneRefusal(circuit, index))
  );
}

function first<T>(list: readonly T[], look: (item: T, index: number) => Refusal | null): Refusal | null {
  for (const [index, item] of list.entries()) {
    const refusal = look(item, index);
    if (refusal) return refusal;
  }
  return null;
}

function idsRefusal(circuit: Circuit): Refusal | null {
  const ids = (list: readonly { readonly id: string }[]) => list.map((item) => item.id);
  const plugs = circuit.connectors.map((connector) => (connector.cavities ? connector.id : ""));
  const parts = new Set(ids(circuit.parts));
  const taken = new Set([...parts, ...plugs]);
  return (
    twice(ids(circuit.pages), "pages", "page") ??
    twice(ids(circuit.parts), "parts", "part") ??
    twice(ids(circuit.wires), "wires", "wire") ??
    twice(ids(circuit.connectors), "connectors", "connector") ??
    twice(ids(circuit.access), "access", "access group") ??
    twice(ids(circuit.checks), "checks", "function check") ??
    first(plugs, (id, index) =>
      parts.has(id) ? refuse("twice", { path: `connectors[${index}]`, what: "part or connector", id }).refusal : null,
    ) ??
    first(circuit.wires, ({ id }, index) =>
      taken.has(id) ? refuse("twice", { path: `wires[${index}]`, what: "part, connector or wire", id }).refusal : null,
    )
  );
}

function connectorRefusal(circuit: Circuit, index: number): Refusal | null {
  const connector = circuit.connectors[index]!;
  const path = `connectors[${index}]`;
  const places = connector.rows.flat().filter((cavity) => cavity !== "");
  const again = twice(places, `${path}.rows`, "cavity");
  if (again) return again;
  if (!connector.cavities) return inLineRefusal(circuit, connector.id, places, path);
  for (const [cavity, carries] of Object.entries(connector.cavities)) {
    const at = `${path}.cavities.${cavity}`;
    if (!places.includes(cavity)) {
      const cavities = places.join(", ");
      return refuse("point-cavity", { path: at, connector: connector.id, cavity, cavities }).refusal;
    }
    const point = parsePoint(circuit, carries);
    if (!point.ok) return located(point.refusal, at);
    if (point.value.kind !== "terminal" || point.value.id !== carries) {
      return refuse("cavity-carries", { path: at, point: carries }).refusal;
    }
  }
  return null;
}

/** A connector that carries nothing is the face of an in-line joint of the same id, whose every place has two sides. */
function inLineRefusal(circuit: Circuit, id: string, places: readonly string[], path: string): Refusal | null {
  if (partAt(circuit, id)?.kind !== "connector") return refuse("connector-alone", { path, connector: id }).refusal;
  for (const place of places) {
    for (const face of ["a", "b"]) {
      const point = parsePoint(circuit, `${id}-${place}${face}`);
      if (!point.ok) return located(point.refusal, `${path}.rows`);
    }
  }
  return null;
}

function carriedTwice(circuit: Circuit): Refusal | null {
  const by = new Map<string, string>();
  for (const [index, connector] of circuit.connectors.entries()) {
    for (const [cavity, point] of Object.entries(connector.cavities ?? {})) {
      const here = `${connector.id}-${cavity}`;
      const there = by.get(point);
      const path = `connectors[${index}].cavities.${cavity}`;
      if (there) return refuse("carried-twice", { path, point, here, there }).refusal;
      by.set(point, here);
    }
  }
  return null;
}

function wireRefusal(circuit: Circuit, index: number): Refusal | null {
  const wire = circuit.wires[index]!;
  for (const end of ["from", "to"] as const) {
    const point = parsePoint(circuit, wire[end]);
    if (!point.ok) return located(point.refusal, `wires[${index}].${end}`);
  }
  return null;
}

function placementRefusal(circuit: Circuit): Refusal | null {
  const pages = new Set(circuit.pages.map((page) => page.id));
  const wires = new Set(circuit.wires.map((wire) => wire.id));
  return (
    first(Object.entries(circuit.placement.parts), ([id, place]) => {
      const path = `placement.parts.${id}`;
      if (!partAt(circuit, id)) return refuse("part-unknown", { path, part: id }).refusal;
      return pages.has(place.page) ? null : refuse("page-unknown", { path: `${path}.page`, page: place.page }).refusal;
    }) ??
    first(Object.keys(circuit.placement.wires), (id) =>
      wires.has(id) ? null : refuse("wire-unknown", { path: `placement.wires.${id}`, wire: id }).refusal,
    )
  );
}

function accessRefusal(circuit: Circuit): Refusal | null {
  const groups = new Set(circuit.access.map(({ id }) => id));
  const unknown = first(circuit.access, ({ after = [] }, index) => {
    const access = after.find((id) => !groups.has(id));
    return access === undefined ? null : refuse("access-unknown", { path: `access[${index}].after`, access }).refusal;
  });
  if (unknown) return unknown;
  const loops = new Set(accessLoops(circuit));
  return first(circuit.access, ({ id }, index) =>
    loops.has(id) ? refuse("access-loop", { path: `access[${index}].after`, access: id }).refusal : null,
  );
}

function reachRefusal(circuit: Circuit, key: string): Refusal | null {
  const path = `reach.${key}`;
  if (!isReachable(circuit, key)) return refuse("reach-unknown", { path, key }).refusal;
  const access = circuit.reach[key]?.access;
  if (access === undefined || circuit.access.some((group) => group.id === access)) return null;
  return refuse("access-unknown", { path: `${path}.access`, access }).refusal;
}

function checkRefusal(circuit: Circuit, index: number): Refusal | null {
  const check = circuit.checks[index]!;
  const path = `checks[${index}]`;
  if (!partAt(circuit, check.load)) return refuse("part-unknown", { path: `${path}.load`, part: check.load }).refusal;
  return conditionRefusal(circuit, check.condition, `${path}.condition`);
}

function sceneRefusal(circuit: Circuit, index: number): Refusal | null {
  const { condition, focus = [], questions = [] } = circuit.scenes[index]!;
  const path = `scenes[${index}]`;
  return (
    conditionRefusal(circuit, condition, `${path}.condition`) ??
    first(focus, (part, at) =>
      partAt(circuit, part) ? null : refuse("part-unknown", { path: `${path}.focus[${at}]`, part }).refusal,
    ) ??
    twice(focus, `${path}.focus`, "part") ??
    first(questions, (asked, at) => askedRefusal(circuit, asked, `${path}.questions[${at}]`))
  );
}

function askedRefusal(circuit: Circuit, asked: Asked, path: string): Refusal | null {
  const places = asked.asks === "volts" ? { point: asked.point, black: asked.black } : { point: asked.point };
  return first(Object.entries(places), ([field, place]) => {
    if (isLead(circuit, place)) return null;
    const point = parsePoint(circuit, place);
    return point.ok ? null : located(point.refusal, `${path}.${field}`);
  });
}

/** What in a condition names no control, position, plug, part or pin of the circuit; null where all is well. */
export function conditionRefusal(circuit: Circuit, condition: Condition, path: string): Refusal | null {
  return (
    first(Object.entries(condition.set ?? {}), ([key, position]) => {
      const at = `${path}.set.${key}`;
      const found = controlAt(circuit, key);
      if (!found) return refuse("control-unknown", { path: at, control: key }).refusal;
      const names = found.control.positions.map((candidate) => candidate.name);
      if (names.includes(position)) return null;
      return refuse("position-unknown", { path: at, part: key, position, positions: names.join(", ") }).refusal;
    }) ??
    first(condition.apart ?? [], (id, index) =>
      connectorAt(circuit, id) || partAt(circuit, id)?.kind === "connector"
        ? null
        : refuse("point-connector", { path: `${path}.apart[${index}]`, connector: id }).refusal,
    ) ??
    first(condition.out ?? [], (id, index) =>
      partAt(circuit, id) ? null : refuse("part-unknown", { path: `${path}.out[${index}]`, part: id }).refusal,
    ) ??
    first(Object.keys(condition.drive ?? {}), (pin) => {
      const point = parsePoint(circuit, pin);
      return point.ok ? null : located(point.refusal, `${path}.drive.${pin}`);
    })
  );
}

function located(refusal: Refusal, path: string): Refusal {
  return { code: refusal.code, about: { path, ...refusal.about } };
}
