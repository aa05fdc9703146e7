import { describe, expect, it } from "vitest";
import { trials } from "../long.ts";
import { ending } from "./door.ts";
import { allDoors } from "./doors.ts";
import { keptFor } from "./kept.ts";
import { tryAt } from "./task.ts";

/** Inputs at all doors together; `npm run fuzz` lets in forty times as many. */
const INPUTS = trials(5_200, 20_000);
const SEED = 20_260_302;
const doors = await allDoors();
const shares = doors.reduce((sum, { share }) => sum + share, 0);

const told = tryAt({
  seed: SEED,
  tries: doors.map(({ name, share }) => [name, Math.ceil((INPUTS * share) / shares)]),
  isGuided: false,
});

describe.each(doors)("what comes in as $name", (door) => {
  it("ends in a value or a refusal with a sentence, however it was spoilt, in bounded time and memory", async () => {
    const own = (await told).find((one) => one.door === door.name);
    expect(own?.faults).toEqual([]);
    expect(own?.value, "some of it is taken").toBeGreaterThan(0);
  });

  it("and was once not taken rightly is taken rightly now", async () => {
    for (const [file, input] of keptFor(door)) expect(["value", "refused"], file).toContain(await ending(door, input));
  });
});

describe("all of it", () => {
  it("is at least 5,000 inputs, some of which are taken and most refused", async () => {
    const all = await told;
    const sum = (of: "value" | "refused"): number => all.reduce((total, one) => total + one[of], 0);
    expect(sum("value") + sum("refused")).toBeGreaterThanOrEqual(5_000);
    expect(sum("refused")).toBeGreaterThan(sum("value"));
  });
});
