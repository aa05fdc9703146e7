import { describe, expect, it } from "vitest";
import { ask, code, got, hostOn, ownFolder } from "./library.ts";
import { sample } from "./sample.ts";

describe("what stands on a bench", () => {
  it("is kept beside where another page changed it since, with the circuit or without", async () => {
    const host = hostOn(ownFolder());
    const made = await got(host, "circuits.create", { circuit: sample("Horn"), bench: "as it came" });
    const { id, version, benchVersion } = made;
    expect(benchVersion).toBe(1);
    const first = { id, version, bench: "ticked here", benchVersion };
    expect(await got(host, "benches.save", first)).toMatchObject({ id, version, benchVersion: 2, beside: null });
    // The answer was lost on the way, and the same is sent once more.
    expect(await got(host, "benches.save", first)).toMatchObject({ id, benchVersion: 2, beside: null });
    const late = { id, version, bench: "ticked there", benchVersion };
    expect(code(await ask(host, "benches.save", { ...late, isSight: true }))).toBe("bench-changed-elsewhere");
    const ticked = await got(host, "benches.save", late);
    expect(await got(host, "circuits.open", { id: ticked.id })).toMatchObject({
      bench: "ticked there",
      circuit: { title: "Horn" },
    });
    const drawn = await got(host, "circuits.save", { ...late, circuit: sample("Drawn there"), name: "Draw" });
    expect(await got(host, "circuits.open", { id: drawn.id })).toMatchObject({
      bench: "ticked there",
      circuit: { title: "Drawn there" },
    });
    expect(new Set([id, ticked.id, drawn.id]).size).toBe(3);
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

describe("an edit of a circuit", () => {
  it("keeps an edit made on a version that is not the newest beside it, and writes over nothing", async () => {
    const host = hostOn(ownFolder());
    const { id } = await got(host, "circuits.create", { circuit: sample("Horn") });
    await got(host, "circuits.save", { id, version: 1, circuit: sample("One"), bench: "1", benchVersion: 0, name: "" });
    const late = { id, version: 1, circuit: sample("Other"), bench: "2", benchVersion: 1, name: "" };
    const beside = await got(host, "circuits.save", late);
    expect(beside).toMatchObject({ version: 1, benchVersion: 1, beside: { isRemoved: false } });
    expect(beside.id).not.toBe(id);
    expect(await got(host, "start", {})).toMatchObject({ open: beside.id, count: 2 });
    expect(await got(host, "circuits.open", { id: beside.id })).toMatchObject({
      bench: "2",
      circuit: { title: "Other" },
    });
    const stale = { id, version: 1, bench: "2", benchVersion: 1, isSight: true };
    expect(code(await ask(host, "benches.save", stale))).toBe("circuit-changed-elsewhere");
    expect(await got(host, "circuits.open", { id })).toMatchObject({ bench: "1", circuit: { title: "One" } });
  });
});
