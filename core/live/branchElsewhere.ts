import type { PartId, WireId } from "../base/ids.ts";
import { remember } from "../base/memo.ts";
import type { Circuit, FunctionCheck } from "../circuit/circuit.ts";
import { type Branch, branchOf, checksOf } from "./branch.ts";
import { partsOf, wiresOf } from "./branchRow.ts";

/** A function check in which the load's current takes other ways, and what carries it there and not in the branch at hand. */
export interface OtherPosition {
  readonly check: FunctionCheck;
  readonly parts: readonly PartId[];
  readonly wires: readonly WireId[];
}

/** The positions in which other wires carry the load's current, each set of wires once, in the order of the checks. */
export function otherPositions(circuit: Circuit, { load, lines }: Branch): readonly OtherPosition[] {
  const here = new Set([...lines.flatMap(partsOf), ...lines.flatMap(wiresOf)]);
  const told = new Set<string>([""]);
  return carriersIn(circuit, load).flatMap(({ check, parts, wires }): readonly OtherPosition[] => {
    const elsewhere = (ids: readonly string[]) => [...new Set(ids)].filter((id) => !here.has(id));
    const other = { check, parts: elsewhere(parts), wires: elsewhere(wires) };
    const name = other.wires.join(" ");
    if (told.has(name)) return [];
    told.add(name);
    return [other];
  });
}

const known = remember((_: Circuit) => new Map<PartId, readonly OtherPosition[]>());

/** What carries a load's current in each of its checks; solved once for a circuit. */
function carriersIn(circuit: Circuit, load: PartId): readonly OtherPosition[] {
  const before = known(circuit).get(load);
  if (before) return before;
  const all = checksOf(circuit, load).flatMap((check): readonly OtherPosition[] => {
    const branch = branchOf(circuit, { load, condition: check.condition });
    if (!branch.ok) return [];
    const { lines } = branch.value;
    return [{ check, parts: lines.flatMap(partsOf), wires: lines.flatMap(wiresOf) }];
  });
  known(circuit).set(load, all);
  return all;
}
