import type { Minutes } from "../base/units.ts";
import type { AccessGroup, Circuit, Page, Scene, Wire } from "../circuit/circuit.ts";
import type { Part } from "../parts/kind.ts";

/**
 * A circuit to be sent out in one file: printed pages and photos stay at home, and so do the spots that point into them, and
 * what the instructor noted to the scenes. Access groups take these minutes, or their own.
 */
export function travelling(circuit: Circuit, minutes: Readonly<Record<string, Minutes>> = {}): Circuit {
  return {
    ...circuit,
    pages: circuit.pages.map(({ underlays: _, ...page }): Page => page),
    parts: circuit.parts.map(({ printed: _, ...part }): Part => part),
    wires: circuit.wires.map(({ printed: _, ...wire }): Wire => wire),
    scenes: circuit.scenes.map(({ notes: _, ...scene }): Scene => scene),
    access: circuit.access.map(
      ({ photo: _, ...group }): AccessGroup => ({ ...group, minutes: minutes[group.id] ?? group.minutes }),
    ),
  };
}
