import type { PartId } from "../base/ids.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import { type Candidate, withoutMeter } from "./candidates.ts";
import { type Column, columnWith } from "./outcomes.ts";
import { notAsked } from "./scanTool.ts";
import { shownInEach } from "./shown.ts";
import type { Suspect } from "./step.ts";
import { MINUTES, placeOf } from "./testPoint.ts";

/**
 * A row to ask the scan tool for every module that may not be asking for an output: no probe goes inside it, and what it
 * sees is held against what its pins measure. `number` is that of the complaint's own condition among those tried.
 */
export function scanRows(
  circuit: Circuit,
  complaint: Condition,
  suspects: readonly Suspect[],
  number: number,
): readonly Column[] {
  const modules = new Set(suspects.flatMap(({ faults }) => faults.flatMap((fault) => notAsked(fault)?.module ?? [])));
  return [...modules].map((module) => {
    const planted = [{ id: "", faults: [] }, ...suspects];
    const leads = { red: module, black: "battery -", instrument: "scan tool", lampTo: null } as const;
    const shows = shownInEach(circuit, complaint, planted, leads, [complaint])[0]!;
    return columnWith(rowFor(circuit, module, number), [shows.map(({ word }) => ({ figure: 0, word: word ?? "" }))]);
  });
}

function rowFor(circuit: Circuit, module: PartId, number: number): Candidate {
  return withoutMeter({
    // The tool's socket lies free, wherever the module sits.
    at: { ...placeOf(circuit, module), access: null },
    instrument: "scan tool",
    conditions: [number],
    positions: [""],
    minutes: MINUTES.scanTool,
  });
}
