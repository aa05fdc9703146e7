import type { PartId } from "../base/ids.ts";
import { SCAN_WORDS as WORDS } from "../base/words/scan.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { partAt } from "../circuit/points.ts";
import type { Fault } from "../live/fault.ts";
import type { PlacedPart } from "../live/network.ts";
import type { Rig } from "../live/rig.ts";
import { kindOf } from "../parts/catalogue.ts";
import { inputLevel, pinRoles } from "../parts/module.ts";

/** Mode of an output that the module does not ask for, by its pin. */
const NOT_ASKED = /^not-asked-(.+)$/;

/** The module and pin that a fault leaves unasked, or null. */
export function notAsked({ target, mode }: Fault): { readonly module: PartId; readonly pin: string } | null {
  const pin = NOT_ASKED.exec(mode)?.[1];
  return pin === undefined ? null : { module: target, pin };
}

/**
 * What a scan tool shows of a module: each input as the module itself sees it and each output it asks for, or that it does
 * not answer, as without feed or ground.
 */
export function scanSays(rig: Rig, module: PartId, faults: readonly Fault[]): string {
  const placed = rig.network.parts.get(module);
  if (!placed) return WORDS.noAnswer;
  const state = rig.states.get(module) ?? "";
  if (state === "asleep") return WORDS.noAnswer;
  return [...inputsOf(rig, placed), ...outputsOf(rig, placed, state, faults)].join(", ");
}

function inputsOf(rig: Rig, { view, part }: PlacedPart): readonly string[] {
  const sees = rig.sees(rig.network.parts.get(part.id)!);
  return [...pinRoles(view)].flatMap(([pin, role]) =>
    role === "input" ? [WORDS.input(pin, inputLevel(view, sees, pin) ?? WORDS.between)] : [],
  );
}

/** Outputs that the module asks for: their contact is closed, and nothing it waits for is missing. */
function outputsOf(rig: Rig, placed: PlacedPart, state: string, faults: readonly Fault[]): readonly string[] {
  const { kind, view, part } = placed;
  const closed = kind.closed(view, state, rig.around(placed)).flatMap((key) => key.split("-"));
  const missing = faults.flatMap((fault) => notAsked(fault) ?? []);
  return [...pinRoles(view)].flatMap(([pin, role]) => {
    if (role !== "drives-high" && role !== "drives-low") return [];
    const isMissing = missing.some((each) => each.module === part.id && each.pin === pin);
    return [WORDS.output(pin, closed.includes(pin) && !isMissing)];
  });
}

/** Whether a part is a module, which a scan tool can be asked about. */
export function isModule(circuit: Circuit, id: string): boolean {
  return kindOf(partAt(circuit, id)?.kind ?? "")?.name === "module";
}
