import { describe, expect, it } from "vitest";
import { ask, code, got, hostOn, ownFolder } from "./library.ts";
import { sample } from "./sample.ts";

describe("what stands on a bench", () => {
  it("is refused where another page changed it since, with the circuit or without", async () => {
    const host = hostOn(ownFolder());
    const made = await got(host, "circuits.create", { circuit: sample("Horn"), bench: "as it came" });
    const { id, version, benchVersion } = made;
    expect(benchVersion).toBe(1);
    const first = { id, version, bench: "ticked here", benchVersion };
    expect(await got(host, "benches.save", first)).toMatchObject({ version, benchVersion: 2 });
    // The answer was lost on the way, and the same is sent once more.
    expect(await got(host, "benches.save", first)).toMatchObject({ benchVersion: 2 });
    const late = { id, version, bench: "ticked there", benchVersion };
    expect(code(await ask(host, "benches.save", late))).toBe("bench-changed-elsewhere");
    expect(code(await ask(host, "benches.save", { ...late, isSight: true }))).toBe("bench-changed-elsewhere");
    const drawn = { ...late, circuit: sample("Drawn there"), name: "Draw" };
    expect(code(await ask(host, "circuits.save", drawn))).toBe("bench-changed-elsewhere");
    expect(await got(host, "circuits.open", { id })).toMatchObject({
      ...first,
      benchVersion: 2,
      circuit: { title: "Horn" },
    });
  });

  it("is looked at by two pages each in its own way, and the last look is kept", async () => {
    const host = hostOn(ownFolder());
    const { id, version, benchVersion } = await got(host, "circuits.create", { circuit: sample(), bench: "page 1" });
    for (const bench of ["page 2", "page 3"]) {
      const look = { id, version, bench, benchVersion, isSight: true };
      expect(await got(host, "benches.save", look)).toMatchObject({ benchVersion });
    }
    expect(await got(host, "circuits.open", { id })).toMatchObject({ bench: "page 3", benchVersion });
  });
});
