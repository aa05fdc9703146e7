import { refuse } from "../../core/base/outcome.ts";
import type { Circuit, Wire } from "../../core/circuit/circuit.ts";
import { parsePoint, partAt, terminalPoint, terminalsOf, wireSideOf } from "../../core/circuit/points.ts";
import { conditionText } from "../../core/live/condition.ts";
import { liveOf } from "../../core/live/live.ts";
import { whyOf } from "../../core/live/why.ts";
import { flowAlong, whyLines } from "../../core/live/whyWords.ts";
import { readCircuitFile } from "../files.ts";
import { type Console, EXIT, need } from "./console.ts";
import { conditionOf, faultsOf, type Typed } from "./given.ts";
import { GLYPHS, stateWords, voltsText, wrapped } from "./rows.ts";

/** `why FILE POINT`: the path in words, and what would change it. */
export async function why(console: Console, file: string, asked: string, typed: Typed): Promise<number> {
  const circuit = need(await readCircuitFile(file));
  const condition = conditionOf(circuit, typed);
  const faults = faultsOf(circuit, typed);
  const wire = circuit.wires.find(({ id }) => id === asked);
  const reasons = pointsAsked(circuit, asked, wire).map((point) => whyOf(circuit, point, condition, faults));
  if (typed.json) {
    console.write(`${JSON.stringify({ condition, points: reasons }, null, 2)}\n`);
    return EXIT.fine;
  }
  const live = liveOf(circuit, condition, faults);
  const part = live.parts.get(asked);
  const flow = wire && flowAlong(wire, live.wires.get(wire.id)?.amps ?? 0);
  console.write(`${asked} in ${conditionText(condition) || "rest"}\n`);
  if (part?.doing) console.write(`${asked} is ${part.doing}, ${part.amps.toFixed(2)} A.\n`);
  for (const reason of reasons) {
    console.write(
      `\n${GLYPHS[reason.state]} ${reason.point} is ${stateWords(reason.state)}${reason.volts === null ? "" : `, ${voltsText(reason.volts)}`}\n`,
    );
    for (const line of whyLines(circuit, reason, flow))
      console.write(`${wrapped(line, Math.min(console.width, 110), "  ")}\n`);
  }
  return EXIT.fine;
}

/** A wire stands for both its ends, a part for all its terminals. */
function pointsAsked(circuit: Circuit, asked: string, wire: Wire | undefined): readonly string[] {
  if (wire) return [wire.from, wire.to];
  const part = partAt(circuit, asked);
  if (part) return terminalsOf(circuit, part).map((terminal) => wireSideOf(circuit, terminalPoint(part, terminal)));
  const point = parsePoint(circuit, asked);
  if (!point.ok && point.refusal.code === "point-spelling") return need(refuse("why-unknown", { text: asked }));
  return [need(point).id];
}
