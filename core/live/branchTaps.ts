import type { PartId, WireId } from "../base/ids.ts";
import type { NodeIndex } from "../solve/element.ts";
import type { CircuitNetwork, Placed } from "./network.ts";
import type { Rig } from "./rig.ts";

/** What else hangs on a place of the line: the wire that leaves there, and the parts that it leads to. */
export interface Tap {
  /** Null where it leaves inside a part, by a contact that is closed now. */
  readonly wire: WireId | null;
  readonly to: readonly PartId[];
}

/** Elements at every node, by number; what a meter clips on is left out. */
export function elementsAt({ elements, nodeCount }: CircuitNetwork): readonly (readonly Placed[])[] {
  const at: Placed[][] = Array.from({ length: nodeCount }, () => []);
  for (const placed of elements) {
    if (placed.isMeter || placed.key === "clipped") continue;
    at[placed.element.a]!.push(placed);
    at[placed.element.b]!.push(placed);
  }
  return at;
}

/** What it takes to say what hangs on a place. */
export interface TapField {
  readonly rig: Rig;
  readonly at: readonly (readonly Placed[])[];
  readonly places: Int32Array;
  /** Nodes of every place. */
  readonly nodes: ReadonlyMap<number, readonly NodeIndex[]>;
  /** Names of nodes; hidden ones have a `~`, shared ones begin with `=`. */
  readonly names: readonly string[];
}

/** The field of a rig and its places. */
export function tapField(rig: Rig, places: Int32Array): TapField {
  const nodes = new Map<number, NodeIndex[]>();
  places.forEach((place, node) => {
    const list = nodes.get(place);
    if (list) list.push(node);
    else nodes.set(place, [node]);
  });
  const names: string[] = [];
  for (const [name, node] of rig.network.nodes) names[node] = name;
  return { rig, at: elementsAt(rig.network), places, nodes, names };
}

/**
 * What hangs on a place besides the elements of the line and the parts on either side of it. A body is no place to list:
 * everything hangs on it.
 */
export function tapsAt(
  field: TapField,
  place: number,
  line: ReadonlySet<Placed>,
  beside: readonly string[],
): readonly Tap[] {
  const nodes = field.nodes.get(place) ?? [];
  if (nodes.some((node) => isBody(field.names[node]!))) return [];
  // A source that the line comes back to, and the ground point whose stud this is, are the place itself.
  const isHere = (id: string): boolean => {
    const role = field.rig.network.parts.get(id)?.kind.role;
    return (role === "source" || role === "join") && nodes.some((node) => field.names[node]!.startsWith(`${id}.`));
  };
  const taps = nodes.flatMap((node) =>
    (field.at[node] ?? []).flatMap((placed): readonly Tap[] => {
      if (line.has(placed) || placed.element.law === "joint") return [];
      const isInside = beside.includes(placed.owner);
      if (isInside && !isSharing(field, placed)) return [];
      const wire = field.rig.network.wires.has(placed.owner) ? placed.owner : null;
      const found = isInside || isJoining(field, placed) ? targetsOf(field, placed, node, place) : [placed.owner];
      const to = found.filter((id) => !isHere(id) && !beside.includes(id));
      return to.length > 0 ? [{ wire, to }] : [];
    }),
  );
  return merged(taps);
}

function isBody(name: string): boolean {
  return name.startsWith("=body");
}

/** A contact of the part beside that is closed now: what comes through it shares the place. */
function isSharing({ rig }: TapField, { passes, owner, key }: Placed): boolean {
  return passes === "contact" && rig.network.parts.get(owner)?.kind.role === "control" && rig.closed(owner).has(key);
}

/** Wires, plugs, splices and page links: what only joins. */
function isJoining({ rig }: TapField, { owner, key }: Placed): boolean {
  const role = rig.network.parts.get(owner)?.kind.role;
  return role === undefined || role === "join" || key === "bridge";
}

/** Parts reached from an element that leaves a node, through wires, splices, plugs and page links alone. */
function targetsOf(field: TapField, first: Placed, from: NodeIndex, shut: number): readonly PartId[] {
  const { at, places } = field;
  const found = new Set<PartId>();
  const far = ({ element }: Placed, node: NodeIndex): NodeIndex => (element.a === node ? element.b : element.a);
  const seen = new Set<NodeIndex>();
  const walk = (node: NodeIndex): void => {
    if (seen.has(node) || places[node] === shut || isBody(field.names[node]!)) return;
    seen.add(node);
    for (const placed of at[node]!) {
      if (placed.key === "bridge") continue;
      if (isJoining(field, placed) && !isGroundStud(field, placed)) walk(far(placed, node));
      else found.add(placed.owner);
    }
  };
  if (isGroundStud(field, first)) return [first.owner];
  walk(far(first, from));
  return [...found];
}

/** The element from a ground point's stud to its body. */
function isGroundStud({ names }: TapField, { element }: Placed): boolean {
  return element.law !== "joint" && (isBody(names[element.a]!) || isBody(names[element.b]!));
}

/** Taps inside a part as one; the same wire once. */
function merged(taps: readonly Tap[]): readonly Tap[] {
  const inside = [...new Set(taps.filter(({ wire }) => wire === null).flatMap(({ to }) => to))];
  const wires = taps.filter(({ wire }, index) => {
    return wire !== null && taps.findIndex((other) => other.wire === wire) === index;
  });
  return inside.length > 0 ? [...wires, { wire: null, to: inside }] : wires;
}
