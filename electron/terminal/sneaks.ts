import { groupedSneaks } from "../../core/diagnose/flow/sneakGroups.ts";
import { sneaksOf } from "../../core/diagnose/flow/sneaks.ts";
import { pathSaid, SNEAK_GROUPS, sneakSaid } from "../../core/diagnose/flow/words.ts";
import { readCircuitFile } from "../files.ts";
import { type Console, EXIT, need } from "./console.ts";
import { count, wrapped } from "./rows.ts";

/** `sneaks FILE`: every way current can run against the drawn direction, what matters most first. */
export async function sneaks(console: Console, file: string, typed: { json?: boolean }): Promise<number> {
  const circuit = need(await readCircuitFile(file));
  const search = sneaksOf(circuit);
  if (typed.json) {
    console.write(`${JSON.stringify(search, null, 2)}\n`);
    return EXIT.fine;
  }
  const { sneaks: found, all, positions } = search;
  console.write(
    `${circuit.title}: ${count(found.length, "sneak path")}; ${count(all - 1, "opening")} tried in ${count(positions, "position")}\n`,
  );
  const width = Math.min(console.width, 110);
  let number = 0;
  for (const { group, stories } of groupedSneaks(found)) {
    console.write(`\n${SNEAK_GROUPS[group]}\n`);
    for (const sneak of stories.flat()) {
      number += 1;
      const head = `${String(number).padStart(3)}  `;
      console.write(`\n${wrapped(sneakSaid(circuit, sneak), width, head, "     ")}\n`);
      console.write(`${wrapped(`Path: ${pathSaid(sneak.path)}`, width, "     ")}\n`);
      if (sneak.wires.length > 0)
        console.write(`${wrapped(`Turned: ${sneak.wires.map(({ wire }) => wire).join(", ")}`, width, "     ")}\n`);
    }
  }
  return EXIT.fine;
}
