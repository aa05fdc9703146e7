import { assert } from "../../core/base/outcome.ts";
import { emptyCircuit } from "../../core/circuit/emptyCircuit.ts";
import { sheetOf } from "../../core/circuit/sheet.ts";
import type { Mark } from "../../core/drawing/mark.ts";
import { type AssemblyId, assembly } from "../../core/edit/assemblies.ts";
import type { Look } from "../../core/parts/kind.ts";

/** Below this zoom a sheet has neither words nor swatches: of an assembly only symbols and wires are wanted. */
const WITHOUT_WORDS = 0.2;

const known = new Map<string, readonly Mark[]>();

/** A ready assembly as the sheet would draw it, without words, its top left at the origin. Grid units. */
export function assemblyMarks(id: AssemblyId, nominalVolts: number, look: Look): readonly Mark[] {
  const key = `${id} ${nominalVolts} ${look}`;
  const before = known.get(key);
  if (before) return before;
  const { parts, wires, connectors, places } = assembly(id, nominalVolts);
  const page = "p1";
  const placed = Object.fromEntries(Object.entries(places).map(([part, place]) => [part, { ...place, page }]));
  const circuit = {
    ...emptyCircuit(""),
    nominalVolts,
    parts,
    wires,
    connectors,
    placement: { parts: placed, wires: {} },
  };
  const sheet = sheetOf({ circuit, page, look, framed: false, zoom: WITHOUT_WORDS });
  assert(sheet.ok, "a ready assembly can be drawn");
  const marks = sheet.value.marks.filter(({ mark }) => mark !== "text");
  known.set(key, marks);
  return marks;
}
