import type { Element, Network } from "../../core/solve/element.ts";
import type { Solver } from "../../core/solve/solver.ts";

/** Volts of both ends of an element together: no random network has more than 25.2 V twice. */
const MOST_VOLTS = 51;

/**
 * Amps into every node by the true laws, worked out apart from the solver: the worst, and what the last digits of the
 * volts at the stiffest element make unavoidable.
 */
export function kirchhoff(
  network: Network,
  elements: readonly Element[],
  solver: Solver,
): { worst: number; digits: number } {
  const sums = new Float64Array(network.nodeCount);
  let stiffest = 0;
  for (const [index, element] of elements.entries()) {
    if (element.law === "joint") continue;
    const amps = ampsOf(element, solver.voltsAcross(index));
    sums[element.a]! += amps;
    sums[element.b]! -= amps;
    const siemens =
      element.law === "diode" ? Math.abs(amps) / element.emissionVolts : "ohms" in element ? 1 / element.ohms : 0;
    stiffest = Math.max(stiffest, siemens);
  }
  const joined = joinedNodes(network);
  const groups = new Float64Array(network.nodeCount);
  for (let node = 0; node < sums.length; node++) groups[joined[node]!]! += sums[node]!;
  groups[joined[0]!] = 0;
  return { worst: Math.max(...groups.map(Math.abs)), digits: 16 * 2 ** -52 * stiffest * MOST_VOLTS };
}

function ampsOf(element: Exclude<Element, { law: "joint" }>, volts: number): number {
  switch (element.law) {
    case "resistor":
      return element.ohms === Number.POSITIVE_INFINITY ? 0 : volts / element.ohms;
    case "source":
      return (volts - element.volts) / element.ohms;
    case "lamp": {
      const u = volts / element.ratedVolts;
      return element.ratedAmps * u * (u * u + 10 ** (-1 / 0.225)) ** -0.225;
    }
    case "motor": {
      const kink = element.frictionAmps * element.ohms;
      if (Math.abs(volts) <= kink) return volts / element.ohms;
      return Math.sign(volts) * (element.frictionAmps + (Math.abs(volts) - kink) / (element.ohms + element.speedOhms));
    }
    case "diode":
      return element.saturationAmps * Math.expm1(volts / element.emissionVolts);
    case "regulated":
      return -Math.min(Math.max((element.volts - volts) / element.ohms, 0), element.maxAmps);
  }
}

function joinedNodes({ nodeCount, elements }: Network): Int32Array {
  const root = Int32Array.from({ length: nodeCount }, (_, node) => node);
  const find = (node: number): number => (root[node] === node ? node : find(root[node]!));
  for (const { law, a, b } of elements) if (law === "joint") root[find(a)] = find(b);
  return root.map((_, node) => find(node));
}
