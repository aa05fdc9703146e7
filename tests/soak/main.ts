import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { ROOT } from "../window/machine.ts";
import { MOST_GROWTH } from "./flat.ts";
import { soak } from "./soak.ts";

/*
 * Two hours of somebody's work in ten minutes: does what page and host hold stay flat?
 *
 *     npm run soak                 ten minutes
 *     npm run soak -- 2            so many minutes
 *
 * Ends with 1 where something grew by more than a tenth after the warm-up. Every look is written to `out/soak.json`.
 */

const minutes = Number(process.argv[2] ?? 10);
if (!(minutes > 0)) throw new Error(`minutes must be a number above 0, not ${process.argv[2]}`);
const soaked = await soak(minutes, (line) => console.log(line));
writeFileSync(join(ROOT, "out", "soak.json"), `${JSON.stringify(soaked, null, 2)}\n`);
console.log(`${soaked.rounds} rounds in ${minutes} minutes: ${JSON.stringify(soaked.done)}`);
for (const { name, first, last, growth, isFlat } of soaked.grown)
  console.log(
    `${isFlat ? "flat " : "GROWS"}  ${name.padEnd(18)} ${first.toFixed(1).padStart(9)} -> ${last.toFixed(1).padStart(9)}  ${(100 * growth).toFixed(1)} %`,
  );
const isFlat = soaked.grown.every((each) => each.isFlat);
if (!isFlat) console.error(`Something grew by more than ${100 * MOST_GROWTH} % after the warm-up.`);
process.exitCode = isFlat ? 0 : 1;
