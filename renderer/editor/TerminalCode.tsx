import type { Circuit } from "../../core/circuit/circuit.ts";
import { terminalPoint, wireSideOf } from "../../core/circuit/points.ts";
import { wiresAt } from "../../core/diagnose/testPoint.ts";
import type { Part } from "../../core/parts/kind.ts";
import { Swatch } from "../panels/Swatch.tsx";

interface Shown {
  readonly circuit: Circuit;
  readonly part: Part;
  readonly terminal: string;
}

/** The insulation of the wire that ends on a terminal, sample over code; of several the first. */
export function TerminalCode({ circuit, part, terminal }: Shown) {
  const wires = wiresAt(circuit, wireSideOf(circuit, terminalPoint(part, terminal)));
  const [first] = wires;
  if (!first) return <span className="terminal-code caption">no wire</span>;
  const { id, colour } = first;
  return (
    <span className="terminal-code caption">
      {colour !== undefined && <Swatch code={colour} set={circuit.colourCodes} width={28} height={12} />}
      <span className="terminal-words" title={wires.map(({ id, colour = "" }) => `${id} ${colour}`).join(", ")}>
        {colour ?? id}
      </span>
    </span>
  );
}
