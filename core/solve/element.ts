import type { Amps, Ohms, Volts } from "../base/units.ts";

/** A node of the network, counted from 0. Node 0 is the reference: volts are measured to it. */
export type NodeIndex = number;

/** The law of a two-ended element: how many amps flow from end a to end b for the volts from a to b. */
export type Law =
  /** An ideal joint: both ends are one node. It carries no numbers and cannot change. */
  | { readonly law: "joint" }
  /** i = v / ohms. `Infinity` is open: the place in the matrix stays, the conductance is exactly 0. Never 0 ohms. */
  | { readonly law: "resistor"; readonly ohms: Ohms }
  /** A battery: end a is plus. i = (v - volts) / ohms, ohms above 0. */
  | { readonly law: "source"; readonly volts: Volts; readonly ohms: Ohms }
  /**
   * A tungsten filament: i = I0 (v / V0)^0.55 (Wikipedia, "Lamp rerating"), made smooth through zero so that the cold
   * filament has a tenth of its hot ohms: i = I0 u (u^2 + e)^-0.225 with u = v / V0 and e = 10^(-1 / 0.225).
   */
  | { readonly law: "lamp"; readonly ratedVolts: Volts; readonly ratedAmps: Amps }
  /**
   * A permanent-magnet motor with back-EMF: v / ohms while stalled, that is below frictionAmps * ohms; above it the
   * slope is 1 / (ohms + speedOhms). Odd in v.
   */
  | { readonly law: "motor"; readonly ohms: Ohms; readonly frictionAmps: Amps; readonly speedOhms: Ohms }
  /** Shockley's law, anode at a: i = saturationAmps (exp(v / emissionVolts) - 1); emissionVolts is n k T / q. */
  | { readonly law: "diode"; readonly saturationAmps: Amps; readonly emissionVolts: Volts }
  /** A regulated source with its plus at a: gives (volts - v) / ohms amps out of a, never below 0, never above maxAmps. */
  | { readonly law: "regulated"; readonly volts: Volts; readonly ohms: Ohms; readonly maxAmps: Amps };

/** An element: its law between two nodes. */
export type Element = Law & { readonly a: NodeIndex; readonly b: NodeIndex };

/** What the solver knows of a circuit: how many nodes, and what lies between them. Node 0 is the reference. */
export interface Network {
  readonly nodeCount: number;
  readonly elements: readonly Element[];
}
