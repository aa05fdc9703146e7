import { refuse } from "../../core/base/outcome.ts";
import { type JumperCaution, jumperCheck } from "../../core/diagnose/flow/jumper.ts";
import {
  conditionSaid,
  jumperCautionSaid,
  jumperEffectSaid,
  jumperSaid,
  limitSaid,
} from "../../core/diagnose/flow/words.ts";
import { mayBeProbed } from "../../core/diagnose/scope.ts";
import { readCircuitFile } from "../files.ts";
import { type Console, EXIT, need } from "./console.ts";
import { conditionOf, faultsOf, type Typed } from "./given.ts";

/** Cautions that go with a jumper as such, and are no finding. */
const USUAL: readonly JumperCaution["caution"][] = ["bare-lead", "may-move"];

/** Wires and fuses that are listed at most. */
const MOST_LIMITS = 6;

/** `jumper FILE A B`: what would flow through a lead between two points; a finding where a fuse melts or a caution stands. */
export async function jumper(
  console: Console,
  file: string,
  [from, to]: readonly [string, string],
  typed: Typed & { fuse?: string },
): Promise<number> {
  const circuit = need(mayBeProbed(need(await readCircuitFile(file))));
  const condition = conditionOf(circuit, typed);
  const fuseAmps = typed.fuse === undefined ? undefined : ratingOf(typed.fuse);
  const faults = faultsOf(circuit, typed);
  const check = need(
    jumperCheck(circuit, { from, to, condition, faults, ...(fuseAmps !== undefined && { fuseAmps }) }),
  );
  if (typed.json) console.write(`${JSON.stringify({ condition, sentence: jumperSaid(check), ...check }, null, 2)}\n`);
  else {
    console.write(
      `Jumper from ${check.from} to ${check.to} with ${conditionSaid(circuit, condition)}\n${jumperSaid(check)}\n`,
    );
    for (const caution of check.cautions) console.write(`! ${jumperCautionSaid(caution)}\n`);
    for (const limit of check.limits.slice(0, MOST_LIMITS)) console.write(`  ${limitSaid(limit)}\n`);
    for (const effect of check.effects) console.write(`  ${jumperEffectSaid(effect)}\n`);
  }
  return check.melts || check.cautions.some(({ caution }) => !USUAL.includes(caution)) ? EXIT.finding : EXIT.fine;
}

function ratingOf(text: string): number {
  const shape = /^(\d+(?:\.\d+)?)\s*A?$/i.exec(text.trim());
  return shape ? Number(shape[1]) : need(refuse("jumper-fuse-spelling", { text }));
}
