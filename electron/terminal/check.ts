import { sentence } from "../../core/base/words.ts";
import { problemsOf } from "../../core/circuit/check.ts";
import { readCircuitFile } from "../files.ts";
import { type Console, EXIT, need } from "./console.ts";
import { count } from "./rows.ts";

/** `check FILE`: problems first, then loose ends; a finding where there is a problem. */
export async function check(console: Console, file: string, typed: { json?: boolean }): Promise<number> {
  const circuit = need(await readCircuitFile(file));
  const found = problemsOf(circuit);
  const problems = found.filter((problem) => problem.severity === "problem");
  const loose = found.filter((problem) => problem.severity !== "problem");
  if (typed.json) console.write(`${JSON.stringify({ title: circuit.title, problems, looseEnds: loose }, null, 2)}\n`);
  else {
    console.write(
      `${circuit.title}: ${count(circuit.parts.length, "part")}, ${count(circuit.wires.length, "wire")}, ${count(circuit.pages.length, "page")}\n`,
    );
    for (const problem of problems) console.write(`  problem    ${sentence(problem)}\n`);
    for (const problem of loose) console.write(`  loose end  ${sentence(problem)}\n`);
    if (found.length === 0) console.write("  No problems, no loose ends.\n");
  }
  return problems.length > 0 ? EXIT.finding : EXIT.fine;
}
