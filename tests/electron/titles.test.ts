import fc from "fast-check";
import { expect, it } from "vitest";
import { LIMITS } from "../../schemas/limits.ts";
import { ask, got, hostOn, ownFolder, value } from "./library.ts";
import { sample } from "./sample.ts";

const odd = fc.constantFrom(
  "",
  "  ",
  "\u0000a",
  "\u202e",
  "a\ud800",
  '"*',
  "W".repeat(LIMITS.labelLength),
  "NEAR(a b)",
);
const title = fc.oneof(odd, fc.string({ unit: "binary", maxLength: LIMITS.labelLength }));

it("a title of whatever signs is listed, searched, opened, doubled, deleted and given out as a file", async () => {
  const host = hostOn(ownFolder());
  await fc.assert(
    fc.asyncProperty(title, async (given) => {
      const { id, circuit } = await got(host, "circuits.create", { circuit: sample(given) });
      expect(circuit.title).toBe(given);
      value(await ask(host, "circuits.list", { search: given.slice(0, 200) }));
      const copy = await got(host, "circuits.duplicate", { id });
      const { name } = await got(host, "circuits.exportText", { id: copy.id });
      expect(name.isWellFormed()).toBe(true);
      for (const each of [id, copy.id]) await got(host, "circuits.remove", { id: each, isForGood: true });
      expect((await got(host, "circuits.list", {})).count).toBe(0);
    }),
    { numRuns: 60 },
  );
});
