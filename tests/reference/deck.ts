import type { Rig } from "../../core/live/rig.ts";
import type { Element } from "../../core/solve/element.ts";
import { presentElements } from "./present.ts";
import { Sets } from "./sets.ts";

/** kT/q of the reference at its 27 C, of the constants it was built with (CODATA 2014). */
const REFERENCE_THERMAL_VOLTS = (1.38064852e-23 * 300.15) / 1.6021766208e-19;
/** Smoothing of the lamp's law at 0 V, after core/solve/element.ts: a cold filament has a tenth of its hot ohms. */
const COLD = 10 ** (-1 / 0.225);

/** A deck for the reference, without its end, and what its nodes are called. */
export interface Deck {
  readonly text: string;
  /** Name of every network node in the deck, "0" for the reference's ground; null where nothing that is fixed leads to it. */
  readonly names: readonly (string | null)[];
  /** Per network node: joined to node 0 through anything that is not open. */
  readonly isJoined: readonly boolean[];
  /**
   * Per network node: nothing but junctions in reverse leads to it. Between two of them its volts hang on the
   * hundredth digit of their leak, and neither side can say them.
   */
  readonly isFaint: readonly boolean[];
  /** What must hold of the volts found: a regulated source is on the piece of its law that was frozen. */
  readonly pieces: readonly Piece[];
}

/** A straight piece of a law between two nodes of the deck, and the volts over it where it ends. */
export interface Piece {
  readonly a: string;
  readonly b: string;
  readonly least: number;
  readonly most: number;
}

/**
 * A settled rig as a deck, with its contacts frozen. What is open is left out, and so is every island that nothing
 * joins to the battery's negative post: the reference would make up volts for it.
 */
export function deckOf(rig: Rig, ambientC = 20, elements = presentElements(rig, ambientC)): Deck {
  const same = new Sets(rig.network.nodeCount);
  const joined = new Sets(rig.network.nodeCount);
  const held = new Sets(rig.network.nodeCount);
  const firm = new Sets(rig.network.nodeCount);
  for (const [index, element] of elements.entries()) {
    if (!element) continue;
    if (element.law === "joint") same.merge(element.a, element.b);
    joined.merge(element.a, element.b);
    // A regulated source at its limit or blocked holds nothing.
    if (element.law !== "regulated") held.merge(element.a, element.b);
    if (slopeOf(element, rig.solver.voltsAcross(index)) > LEAST_SLOPE) firm.merge(element.a, element.b);
  }
  const nodes = Array.from({ length: rig.network.nodeCount }, (_, node) => node);
  const names = nodes.map((node) => {
    if (held.of(node) !== held.of(0)) return null;
    return same.of(node) === same.of(0) ? "0" : `n${same.of(node)}`;
  });
  const pieces: Piece[] = [];
  const lines = elements.flatMap((element, index) => {
    const [a, b] = [element && names[element.a], element && names[element.b]];
    if (!element || element.law === "joint" || !a || !b || a === b) return [];
    if (element.law !== "regulated") return linesOf(element, index, a, b);
    const [piece, line] = regulatedPiece(element, rig.solver.voltsAcross(index), index, a, b);
    pieces.push(piece);
    return line;
  });
  const isJoined = nodes.map((node) => joined.of(node) === joined.of(0));
  const isFaint = nodes.map((node) => firm.of(node) !== firm.of(0));
  // Where junctions in reverse alone hold a node, the reference's matrix would be singular to its last digit.
  const ties = nodes.filter((node) => isFaint[node] && names[node] !== null && firm.of(node) === node);
  const tied = ties.map((node) => `Rtie${node} ${names[node]} 0 1e12`);
  return {
    text: ["* frozen circuit", "Rlone lone 0 1", ...lines, ...tied, ""].join("\n"),
    names,
    isJoined,
    isFaint,
    pieces,
  };
}

/** Siemens below which an element does not fix a node's volts. */
const LEAST_SLOPE = 1e-8;

/** Siemens of a diode at these volts; anything else that is not regulated conducts far better than the least. */
function slopeOf(element: Element, volts: number): number {
  if (element.law === "regulated") return 0;
  if (element.law !== "diode") return 1;
  return (element.saturationAmps / element.emissionVolts) * Math.exp(volts / element.emissionVolts);
}

/**
 * A regulated source on the piece it is on by our volts: blocked, regulating, or at its limit. Newton's method without
 * guards goes back and forth between such pieces for ever; frozen, its volts tell whether the piece was right.
 */
function regulatedPiece(
  { volts, ohms, maxAmps }: Extract<Element, { law: "regulated" }>,
  now: number,
  index: number,
  a: string,
  b: string,
): readonly [Piece, readonly string[]] {
  const low = volts - maxAmps * ohms;
  if (now >= volts) return [{ a, b, least: volts, most: Number.POSITIVE_INFINITY }, []];
  if (now <= low) return [{ a, b, least: Number.NEGATIVE_INFINITY, most: low }, [`I${index} ${b} ${a} ${maxAmps}`]];
  return [{ a, b, least: low, most: volts }, [`V${index} m${index} ${b} ${volts}`, `R${index} ${a} m${index} ${ohms}`]];
}

/** One element in the reference's own devices: resistors, sources, and current sources with an expression. */
function linesOf(
  element: Exclude<Element, { law: "regulated" }>,
  index: number,
  a: string,
  b: string,
): readonly string[] {
  const v = a === "0" ? `(-v(${b}))` : b === "0" ? `v(${a})` : `(v(${a})-v(${b}))`;
  const amps = (expression: string): string => `B${index} ${a} ${b} I=${expression}`;
  switch (element.law) {
    case "resistor":
      return [`R${index} ${a} ${b} ${element.ohms}`];
    case "source":
      return [`V${index} m${index} ${b} ${element.volts}`, `R${index} ${a} m${index} ${element.ohms}`];
    case "lamp": {
      const u = `(${v}/${element.ratedVolts})`;
      return [amps(`${element.ratedAmps}*${u}*pow(${u}*${u}+${COLD},-0.225)`)];
    }
    case "motor": {
      const turning = element.frictionAmps * element.ohms;
      const [stalled, running] = [1 / element.ohms, 1 / (element.ohms + element.speedOhms)];
      return [amps(`${running}*${v}+${stalled - running}*min(max(${v},${-turning}),${turning})`)];
    }
    case "diode":
      return [`D${index} ${a} ${b} d${index}`, ...diodeModel(element, index, v, amps)];
    case "joint":
      return [];
  }
}

/**
 * A junction of the reference. Below -3 n kT/q it takes a cubic for the exponential; a second source makes up the
 * difference, so that both sides have Shockley's law all the way.
 */
function diodeModel(
  { saturationAmps, emissionVolts }: Extract<Element, { law: "diode" }>,
  index: number,
  v: string,
  amps: (expression: string) => string,
): readonly string[] {
  const below = `min(${v},${-3 * emissionVolts})`;
  const cubic = `(${(3 * emissionVolts) / Math.E}/${below})`;
  return [
    `.model d${index} d is=${saturationAmps} n=${emissionVolts / REFERENCE_THERMAL_VOLTS}`,
    amps(`${saturationAmps}*(exp(${below}/${emissionVolts})+${cubic}*${cubic}*${cubic})`),
  ];
}
