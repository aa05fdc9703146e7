import type { PartId } from "../base/ids.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import { partAt } from "../circuit/points.ts";
import { type Candidate, withoutMeter } from "./candidates.ts";
import { type Feeding, feedingOf } from "./feeding.ts";
import { type Column, columnWith } from "./outcomes.ts";
import { type Planted, shownInEach } from "./shown.ts";
import type { Act, Suspect } from "./step.ts";
import { MINUTES, placeOf, reachOf } from "./testPoint.ts";

/** Rows that need conditions of their own, numbered from a given one on. */
export interface ActRows {
  readonly conditions: readonly Condition[];
  readonly columns: readonly Column[];
}

/**
 * What can be done to the parts suspected: a load fed by itself from its parted plug, a motor also off its mechanism, and
 * a relay swapped for a like one. Conditions are numbered from `first` on.
 */
export function actRows(circuit: Circuit, complaint: Condition, suspects: readonly Suspect[], first: number): ActRows {
  const planted: readonly Planted[] = [{ id: "", faults: [] }, ...suspects];
  const named = [...new Set(suspects.flatMap(({ faults }) => faults.map(({ target }) => target)))];
  const acts = named.flatMap((id) => [...feedingsOf(circuit, id), ...swapsOf(circuit, id, complaint)]);
  return {
    conditions: acts.map(({ condition }) => condition),
    columns: acts.map(({ row, condition }, index) => {
      const candidate: Candidate = { ...row, conditions: [first + index] };
      const { at, black, instrument, lampTo } = candidate;
      const leads = { red: at.point, black, instrument, lampTo };
      const [shown] = shownInEach(circuit, complaint, planted, leads, [condition]);
      return columnWith(candidate, [shown!.map(({ word }) => ({ figure: 0, word: word ?? "" }))]);
    }),
  };
}

interface ActRow {
  readonly condition: Condition;
  readonly row: Omit<Candidate, "conditions">;
}

function feedingsOf(circuit: Circuit, id: PartId): readonly ActRow[] {
  const feeding = feedingOf(circuit)(id);
  if (!feeding) return [];
  const direct = feedingRow(circuit, feeding, "fed direct", MINUTES.plugApart + MINUTES.jumper);
  if (partAt(circuit, id)?.kind !== "motor") return [direct];
  const loose = MINUTES.plugApart + MINUTES.jumper + MINUTES.offMechanism;
  return [direct, feedingRow(circuit, feeding, "fed loose", loose)];
}

function feedingRow(circuit: Circuit, { load, plug }: Feeding, act: Act, minutes: number): ActRow {
  const place = placeOf(circuit, plug);
  const own = reachOf(circuit, load).access ?? null;
  const alsoOpen = act === "fed loose" && own !== place.access ? own : null;
  return { condition: { apart: [plug] }, row: rowFor({ ...place, point: load }, act, alsoOpen, minutes) };
}

function swapsOf(circuit: Circuit, id: PartId, complaint: Condition): readonly ActRow[] {
  if (partAt(circuit, id)?.kind !== "relay" || reachOf(circuit, id).doNotProbe !== undefined) return [];
  const row = rowFor(placeOf(circuit, id), "like relay", null, MINUTES.swapRelay + MINUTES.throwControl);
  return [{ condition: complaint, row }];
}

function rowFor(at: Candidate["at"], instrument: Act, alsoOpen: string | null, minutes: number): ActRow["row"] {
  return { ...withoutMeter({ at, instrument, conditions: [], positions: [""], minutes }), alsoOpen };
}
