import { sharesOf } from "../../core/diagnose/flow/shares.ts";
import { ampsSaid, conditionSaid, effectSaid, limitSaid, mostSaid } from "../../core/diagnose/flow/words.ts";
import { readCircuitFile } from "../files.ts";
import type { Console } from "./console.ts";
import { EXIT, need } from "./console.ts";
import { aligned, count } from "./rows.ts";

/** `shares FILE TARGET`: every load whose current runs through a place, and what goes dead, weak or odd when it opens. */
export async function shares(
  console: Console,
  file: string,
  target: string,
  typed: { json?: boolean },
): Promise<number> {
  const circuit = need(await readCircuitFile(file));
  const result = need(sharesOf(circuit, target));
  const { opening, sharers, limits, effects } = result;
  if (typed.json) {
    console.write(`${JSON.stringify(result, null, 2)}\n`);
    return EXIT.fine;
  }
  console.write(`${circuit.title}: what hangs on ${opening.target}\n${mostSaid(circuit, result)}\n`);
  for (const limit of limits) console.write(`  ${limitSaid(limit)}\n`);
  if (sharers.length > 0) console.write(`\n${count(sharers.length, "load")}\n`);
  const rows = sharers.map(({ part, amps, condition }) => [part, ampsSaid(amps), conditionSaid(circuit, condition)]);
  for (const line of aligned(rows, [1])) console.write(`  ${line}\n`);
  console.write(`\n${opening.title}: ${effects.length === 0 ? "nothing changes" : "what changes"}\n`);
  for (const effect of effects)
    console.write(`  ${effectSaid(effect)}, with ${conditionSaid(circuit, effect.condition)}\n`);
  return EXIT.fine;
}
