import type { WireId } from "../../base/ids.ts";
import type { Amps } from "../../base/units.ts";
import type { Way } from "../../live/branchWays.ts";
import type { CircuitNetwork } from "../../live/network.ts";

/** A part that current passes, and by which of its terminals; empty where it has only one way through. */
export interface PathStep {
  readonly part: string;
  readonly entry: string;
  readonly exit: string;
  /** The current passes it against the way it is meant to. */
  readonly isReversed: boolean;
}

/** A wire whose current runs the other way than meant, or that should carry none. */
export interface TurnedWire {
  readonly wire: WireId;
  readonly amps: Amps;
}

/** The parts on a path in order: fuses, contacts, loads and grounds; what only joins, and body to body, is left out. */
export function stepsAlong(
  network: CircuitNetwork,
  path: readonly Way[],
  isTurned: (way: Way) => boolean,
): readonly PathStep[] {
  const names: string[] = [];
  for (const [name, node] of network.nodes) names[node] = name;
  const steps: PathStep[] = [];
  for (const way of path) {
    const { owner } = way.placed;
    const part = network.parts.get(owner);
    if (!part || (part.kind.role === "join" && part.part.kind !== "ground")) continue;
    const terminal = (node: number): string => {
      const name = names[node]!;
      return name.startsWith(`${owner}.`) ? name.slice(owner.length + 1) : "";
    };
    const [entry, exit] = [terminal(way.from), terminal(way.to)];
    const last = steps.at(-1);
    if (last?.part === owner) steps[steps.length - 1] = { ...last, exit, isReversed: last.isReversed || isTurned(way) };
    else steps.push({ part: owner, entry, exit, isReversed: isTurned(way) });
  }
  // Home again: of batteries in series the first one passed twice ends the loop.
  const home = steps.findIndex(({ part }, index) => index > 0 && part === steps[0]?.part);
  const loop = home < 0 ? steps : steps.slice(0, home);
  return loop.map((step) => (isForked(network, step.part) ? step : { ...step, entry: "", exit: "" }));
}

/** Whether a part has more than one way through, so that its terminals are worth saying. */
function isForked(network: CircuitNetwork, id: string): boolean {
  const part = network.parts.get(id)!;
  return part.view.terminals.length > 2 && part.kind.role !== "source";
}
