import { spawnSync } from "node:child_process";
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { judged } from "./goal.ts";
import { mediansMs } from "./measure.ts";
import { inRoom } from "./room.ts";

const ROOT = fileURLToPath(new URL("../..", import.meta.url));
const LIVE = ["live", join(ROOT, "samples", "1-roof-vents.circuit.json"), "--in", "S1=on,S5=open"];

/** Times a whole process of the command line, its bundle made and compiled before, against one of Node that does nothing. */
export function benchTerminal(): readonly string[] {
  return inRoom((room) => {
    const nothing = join(room, "nothing.mjs");
    writeFileSync(nothing, "");
    const ended = (...words: readonly string[]): void => {
      const { status, stderr } = spawnSync(process.execPath, words, { encoding: "utf8" });
      if (status !== 0) throw new Error(`${words.join(" ")}: ${stderr}`);
    };
    const { emptyMs, liveMs } = mediansMs(
      { emptyMs: () => ended(nothing), liveMs: () => ended(join(ROOT, "electron", "run.cjs"), ...LIVE) },
      { times: 40, mostMs: 20_000 },
    );
    console.table([{ "empty process, ms": emptyMs.toFixed(0), "live of sample 1, ms": liveMs.toFixed(0) }]);
    return judged([
      {
        name: "live of sample 1 / an empty process of Node",
        figure: liveMs / emptyMs,
        best: "most",
        goal: 4,
        limit: 8,
      },
    ]);
  });
}
