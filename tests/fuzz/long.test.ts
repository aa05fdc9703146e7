import { describe, expect, it } from "vitest";
import { TYPED_DOORS } from "./doors/typed.ts";

const SIGNS = 12_000;
/** Most that one line may take of a processor, in milliseconds. A pattern that goes back over a line like these takes minutes. */
const MOST_MS = 1_000;
const RUNS = [
  "9",
  " ",
  "a",
  "9 ",
  "9=",
  "=",
  ",",
  "-",
  ".",
  "S1=on,",
  "1-",
  "X5-",
  "\n",
  ";",
  "/",
  "@",
  "\t ",
  "1.",
  "(",
  "pin 1 ",
  "1 = 2 ",
  "dim ",
];
const HEADS = ["", "1", "dim ", "1=", "1 RD "];
const ENDS = ["", "x", "=", "!"];

describe.each(TYPED_DOORS)("a very long line in $name", (door) => {
  it("is read or refused about as quickly as a short one, whatever it repeats", async () => {
    const seeds = (await door.seeds()).map(String);
    const fields = door.name === "typed" ? new Set(seeds.map((seed) => `${seed.split("\n")[0]}\n`)) : [""];
    // What is remembered of the circuit is worked out once.
    await door.open(seeds[0]!);
    const slow: string[] = [];
    for (const field of fields) {
      for (const run of RUNS) {
        for (const head of field === "" ? HEADS : HEADS.slice(0, 2)) {
          for (const end of field === "" ? ENDS : ENDS.slice(0, 2)) {
            const before = process.threadCpuUsage();
            await door.open(field + head + run.repeat(Math.ceil(SIGNS / run.length)) + end);
            const { user, system } = process.threadCpuUsage(before);
            if ((user + system) / 1_000 > MOST_MS) slow.push(`${field}${head}, many ${JSON.stringify(run)}, ${end}`);
          }
        }
      }
    }
    expect(slow).toEqual([]);
  });
});
