import { availableParallelism } from "node:os";
import { parseArgs } from "node:util";
import { allDoors } from "./doors.ts";
import { keepFault } from "./kept.ts";
import { type Told, tryAt } from "./task.ts";

// Run by `npm run fuzz`, `-- --seed N --runs N --door NAME` as wished: lets spoilt inputs in at every door, and keeps those that
// did not end in a value or a refusal beside the tests, which try them again from then on.
const { values } = parseArgs({
  options: { seed: { type: "string" }, runs: { type: "string", default: "200000" }, door: { type: "string" } },
});
const seed = Number(values.seed ?? Math.floor(Date.now() / 1_000) % 1_000_000);
const all = await allDoors();
const doors = values.door === undefined ? all : all.filter(({ name }) => name === values.door);
const shares = doors.reduce((sum, { share }) => sum + share, 0);
console.log(`seed ${seed}, ${values.runs} inputs at ${doors.length} doors`);

/** Doors whose inputs are chosen by where they lead in the program. */
const GUIDED = ["circuit file", "packed circuit", "pasted parts", "exercise file"];
const GUIDED_SHARE = 0.15;
const waiting = doors.toSorted((one, other) => other.share - one.share);
const results: Told[] = [];

async function work(): Promise<void> {
  for (let door = waiting.shift(); door; door = waiting.shift()) {
    const runs = Math.ceil((Number(values.runs) * door.share) / shares);
    // Most of them freely; counting the blocks of the program that run makes it ten times slower.
    const guided = GUIDED.includes(door.name) ? Math.ceil(runs * GUIDED_SHARE) : 0;
    for (const isGuided of guided > 0 ? [false, true] : [false]) {
      const tries = [[door.name, isGuided ? guided : runs - guided]] as const;
      const [result] = await tryAt({ seed, tries, isGuided });
      results.push(result!);
      tell(isGuided ? `${door.name}, guided` : door.name, result!);
      for (const fault of result!.faults) {
        console.log(`  kept as ${keepFault(door, fault)}: ${fault.why.split("\n").slice(0, 4).join(" | ")}`);
      }
    }
  }
}

function tell(name: string, { value, refused, faults, slowestMs, slowestBytes, kept }: Told): void {
  const counts = `${value + refused + faults.length} in: ${value} a value, ${refused} refused, ${faults.length} FAULTS`;
  const slow = `slowest ${Math.round(slowestMs)} ms for ${slowestBytes} bytes`;
  console.log(`${name.padEnd(34)} ${counts}; ${slow}${kept > 0 ? `; ${kept} to go on from` : ""}`);
}

await Promise.all(Array.from({ length: Math.min(availableParallelism(), doors.length) }, work));
const faults = results.reduce((sum, each) => sum + each.faults.length, 0);
const count = results.reduce((sum, each) => sum + each.value + each.refused + each.faults.length, 0);
console.log(`${count} inputs, ${faults} faults, seed ${seed}`);
process.exit(faults === 0 ? 0 : 1);
