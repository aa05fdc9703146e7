import { refuse } from "../../../core/base/outcome.ts";
import { mayBeProbed } from "../../../core/diagnose/scope.ts";
import { gradedFaults } from "../../../core/lesson/difficulty.ts";
import { readCircuitFile } from "../../files.ts";
import { type Console, EXIT, need } from "../console.ts";
import { aligned, count } from "../rows.ts";
import { checkNamed, instrumentsOf } from "./given.ts";

/** `exercise faults FILE --complaint CHECK`: every fault that makes the check fail, easiest first. */
export async function faults(
  console: Console,
  file: string,
  typed: { readonly complaint?: string; readonly instruments?: string; readonly json?: boolean },
): Promise<number> {
  const circuit = need(mayBeProbed(need(await readCircuitFile(file))));
  const ids = circuit.checks.map(({ id }) => id).join(", ");
  const check = checkNamed(circuit, typed.complaint ?? need(refuse("order-complaint", { checks: ids })));
  const graded = gradedFaults(circuit, check, instrumentsOf(typed.instruments));
  if (typed.json) {
    const list = graded.map(({ possible: { id, title }, ...graded }) => ({
      id,
      title,
      ...graded,
    }));
    console.write(`${JSON.stringify({ check: check.id, faults: list }, null, 2)}\n`);
    return EXIT.fine;
  }
  const rows = graded.map(({ possible, word, minutes, misleads, difficulty, canBeProven }) => [
    difficulty,
    possible.id,
    word,
    minutes.toFixed(1),
    `${Math.round(misleads * 100)} %`,
    canBeProven ? possible.title : `${possible.title}; something else reads like it`,
  ]);
  console.write(`${check.label}: ${count(graded.length, "fault")} make it fail\n\n`);
  console.write(
    `${aligned([["", "fault", "then", "minutes", "misleads", ""], ...rows], [3, 4]).join("\n")}\n\n` +
      "Minutes: what the probe order needs to it. Misleads: points at which a meter, the load unplugged, reads as on a good circuit.\n",
  );
  return EXIT.fine;
}
