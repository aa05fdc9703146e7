import type { Ohms } from "../base/units.ts";
import type { Wire } from "../circuit/circuit.ts";
import type { Law } from "../solve/element.ts";
import { wireOhms } from "../trade/wire.ts";

/** A wire of which nothing is known: 1.5 mm2, one metre. */
export const UNKNOWN_WIRE = { mm2: 1.5, metres: 1 } as const;
const LEAST_WIRE_OHMS: Ohms = 1e-5;

/** The law with ohms put in series, or null where that takes an element of its own. */
export function withOhms(law: Law, ohms: Ohms): Law | null {
  if (law.law === "resistor" || law.law === "source" || law.law === "motor") return { ...law, ohms: law.ohms + ohms };
  return null;
}

/** Ohms of a wire at the ambient of the tables: those that are said, else those of its size and length. */
export function ohmsOf(wire: Wire): Ohms {
  if (typeof wire.ohms === "number") return Math.max(wire.ohms, LEAST_WIRE_OHMS);
  const { mm2 = UNKNOWN_WIRE.mm2, metres = UNKNOWN_WIRE.metres } = wire;
  return Math.max(wireOhms({ mm2, metres, celsius: 20 }), LEAST_WIRE_OHMS);
}
