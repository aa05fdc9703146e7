import { remember } from "../base/memo.ts";
import type { Circuit, Wire } from "../circuit/circuit.ts";
import { UNKNOWN_WIRE } from "../live/ohmsOf.ts";
import { kindOf } from "../parts/catalogue.ts";
import type { Part } from "../parts/kind.ts";
import { viewOf } from "../parts/view.ts";

/** How far a vehicle may be from the drawing: its battery at rest, and what wires and contacts have of their ohms. */
interface Spread {
  readonly battery: number;
  readonly ohms: number;
}

/**
 * The ends of what is met (our own numbers), where 12.6 V is 1: a weak battery on long, old wiring, a full one on short, thick
 * wiring, and a weak one on that, where a fuse may hold that else melts.
 */
const SPREADS: readonly Spread[] = [
  { battery: 12.2 / 12.6, ohms: 1.6 },
  { battery: 12.2 / 12.6, ohms: 0.6 },
  { battery: 12.9 / 12.6, ohms: 0.6 },
];

/** The circuit as other vehicles of the same drawing may have it, one for each end of what they differ by. */
export const otherVehicles = remember((circuit: Circuit): readonly Circuit[] =>
  SPREADS.map((spread) => vehicleWith(circuit, spread)),
);

/** The circuit with another battery, and other ohms of wires and contacts; loads and added faults stay as they are. */
export function vehicleWith(circuit: Circuit, { battery, ohms }: Spread): Circuit {
  return {
    ...circuit,
    wires: circuit.wires.map((wire) => withOhms(wire, ohms)),
    parts: circuit.parts.map((part) =>
      withSetting(circuit, withSetting(circuit, part, "contactOhms", ohms), "volts", battery),
    ),
  };
}

function withOhms(wire: Wire, times: number): Wire {
  if (wire.ohms !== undefined && wire.ohms !== null) return { ...wire, ohms: wire.ohms * times };
  return { ...wire, metres: (wire.metres ?? UNKNOWN_WIRE.metres) * times };
}

/** A part with one of its settings so many times as large, within its limits; "volts" only of what gives them. */
function withSetting({ nominalVolts }: Circuit, part: Part, name: string, times: number): Part {
  const kind = kindOf(part.kind);
  const spec = kind?.settings.find((each) => each.name === name);
  if (!kind || spec?.value.type !== "number" || (name === "volts" && kind.name !== "battery")) return part;
  const { min, max } = spec.value;
  const value = Math.min(max, Math.max(min, viewOf(kind, part, nominalVolts).number(name) * times));
  return { ...part, settings: { ...part.settings, [name]: value } };
}
