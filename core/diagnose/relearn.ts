import type { PartId } from "../base/ids.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { partAt } from "../circuit/points.ts";
import { kindOf } from "../parts/catalogue.ts";
import { RELEARNT, type Relearnt, type Touched } from "../trade/relearn.ts";

/** What must be learnt anew, and of which parts of the circuit that is said. */
export interface Relearn extends Relearnt {
  readonly parts: readonly PartId[];
}

/**
 * What must be learnt anew after work on some parts: those touched, and modules and moving loads that lost their feed.
 * What hangs on the battery is always said, for it may have been off.
 */
export function relearnOf(circuit: Circuit, touched: ReadonlySet<PartId>): readonly Relearn[] {
  const parts = [...touched].sort().flatMap((id) => partAt(circuit, id) ?? []);
  const byWhat = new Map<Touched, PartId[]>([["battery", []]]);
  for (const { id, kind } of parts) {
    for (const what of touchedAs(circuit, id, kind)) byWhat.set(what, [...(byWhat.get(what) ?? []), id]);
  }
  return RELEARNT.flatMap((each) => {
    const own = byWhat.get(each.after);
    return own ? [{ ...each, parts: own }] : [];
  });
}

function touchedAs(circuit: Circuit, id: PartId, kind: string): readonly Touched[] {
  if (kind === "wiper-motor") return ["wiper"];
  if (kind === "module") return ["module"];
  if (kindOf(kind)?.role === "source") return ["charging"];
  return movesBothWays(circuit, id) ? ["moving"] : [];
}

/** Whether a load is checked both ways: what it moves then has two end stops. */
function movesBothWays(circuit: Circuit, load: PartId): boolean {
  const ways = circuit.checks.filter((check) => check.load === load).map(({ expect }) => expect);
  return ways.includes("forward") && ways.includes("reverse");
}

/** "M3: teach the end stops", or the sentence alone where it is said of no part. */
export function relearnText({ parts, what }: Pick<Relearn, "parts" | "what">): string {
  if (parts.length === 0) return what;
  return `${parts.join(", ")}: ${what.charAt(0).toLowerCase()}${what.slice(1)}`;
}
