import { expect, it } from "vitest";
import { code, value } from "../../electron/library.ts";
import { sample } from "../../electron/sample.ts";
import { ALL, begun, edit, type Kind, later } from "./given.ts";

/** What every library promises where two work at once: nothing is written over, and nothing is there twice that was done once. */
export function besideContract({ open, hasOwnBenches }: Kind): void {
  it("keeps edits of two circuits that are made at once, each in its own", async () => {
    const shared = await open();
    const [one, other] = [await begun(shared, "One"), await begun(shared, "Other")];
    const benchVersion = hasOwnBenches ? 0 : 1;
    const saved = await Promise.all([
      shared.ann.circuits.save(one, edit(1, "One more"), later(1)),
      shared.ben.circuits.save(other, edit(1, "Another", { benchVersion }), later(1)),
    ]);
    expect(saved.map((each) => value(each))).toMatchObject([
      { id: one, version: 2, beside: null },
      { id: other, version: 2, beside: null },
    ]);
  });

  it("keeps the later of two edits of one circuit beside the first, both listed in both, with who and when", async () => {
    const { ann, ben } = await open().then(async (shared) => ({ ...shared, id: await begun(shared) }));
    const id = value(await ann.circuits.list(ALL)).rows[0]!.id;
    value(await ben.circuits.open(id, later(1)));
    value(await ann.circuits.save(id, edit(1, "Ann's", { page: "a" }), later(2)));
    const jobs = [] as const;
    const late = edit(1, "Ben's", { page: "b", jobs, benchVersion: hasOwnBenches ? 0 : 1 });
    const saved = value(await ben.circuits.save(id, late, later(3)));
    // Who shares nothing is told of another window of their own.
    const other = hasOwnBenches ? "ann" : "";
    expect(saved).toMatchObject({
      version: 1,
      benchVersion: 1,
      beside: { by: other, saved: later(2).toISOString(), isRemoved: false },
    });
    expect(saved.id).not.toBe(id);
    expect(value(await ann.circuits.read(id)).circuit.title).toBe("Ann's");
    expect(value(await ben.circuits.open(saved.id, later(4)))).toMatchObject({
      circuit: { title: "Ben's" },
      bench: "bench of Ben's",
    });
    const by = hasOwnBenches ? "ben" : "ann";
    const [first, second] = [value(await ann.versions.list(id)), value(await ann.versions.list(saved.id))];
    expect(first.besides).toEqual([
      { id: saved.id, title: "Ben's", by, edited: later(3).toISOString(), isFirst: false },
    ]);
    expect(second.besides).toEqual([{ id, title: "Ann's", by: "ann", edited: later(2).toISOString(), isFirst: true }]);
    const rows = value(await ann.circuits.list(ALL)).rows.map((row) => [row.title, row.beside]);
    expect(rows).toEqual([
      ["Ben's", by],
      ["Ann's", null],
    ]);
    expect(value(await ben.recent.onBench()).circuit).toBe(saved.id);
    expect(value(await ben.circuits.standing(id))).toEqual({
      version: 2,
      by: other,
      saved: later(2).toISOString(),
      isRemoved: false,
    });
  });

  it("goes on beside, edit after edit, and stays apart from the first", async () => {
    const shared = await open();
    const id = await begun(shared);
    value(await shared.ann.circuits.save(id, edit(1, "First"), later(1)));
    const beside = value(
      await shared.ben.circuits.save(id, edit(1, "Second", { page: "b", benchVersion: 0 }), later(2)),
    );
    const next = value(await shared.ben.circuits.save(beside.id, edit(1, "Second, more", { page: "b" }), later(3)));
    expect(next).toEqual({ id: beside.id, version: 2, benchVersion: 2, beside: null });
    expect(value(await shared.ann.circuits.list(ALL)).rows.map(({ title }) => title)).toEqual([
      "Second, more",
      "First",
    ]);
  });

  it("loses none of twenty edits that come at the same moment on the same version", async () => {
    const shared = await open();
    const id = await begun(shared);
    const who = [shared.ann, shared.ben];
    const saved = await Promise.all(
      Array.from({ length: 20 }, (_, index) => {
        const benchVersion = hasOwnBenches && index % 2 === 1 ? 0 : 1;
        return who[index % 2]!.circuits.save(
          id,
          edit(1, `Edit ${index}`, { page: `p${index}`, benchVersion }),
          later(1),
        );
      }),
    );
    const kept = saved.map((each) => value(each));
    expect(kept.filter(({ beside }) => beside === null)).toHaveLength(1);
    expect(new Set(kept.map((each) => each.id)).size).toBe(20);
    const titles = value(await shared.ann.circuits.list(ALL)).rows.map(({ title }) => title);
    expect(titles.toSorted()).toEqual(Array.from({ length: 20 }, (_, index) => `Edit ${index}`).toSorted());
    expect(value(await shared.ann.versions.list(id)).besides).toHaveLength(19);
  });

  it("knows a save of the same page again whose answer was lost, in its place, beside, and as a new circuit", async () => {
    const shared = await open();
    const { ann, ben } = shared;
    const id = await begun(shared);
    value(await ann.circuits.save(id, edit(1, "Once", { page: "a" }), later(1)));
    const again = edit(1, "Once, and more", { page: "a" });
    expect(value(await ann.circuits.save(id, again, later(2)))).toMatchObject({ id, version: 3, beside: null });
    const beside = value(await ben.circuits.save(id, edit(1, "Late", { page: "b", benchVersion: 0 }), later(3)));
    const late = edit(1, "Late, and more", { page: "b", benchVersion: 0 });
    expect(value(await ben.circuits.save(id, late, later(4)))).toMatchObject({
      id: beside.id,
      version: 2,
      beside: { by: hasOwnBenches ? "ann" : "" },
    });
    const coming = { name: "Begun", bench: "new", page: "c" };
    const made = value(await ann.circuits.create(sample("New"), coming, later(5)));
    const twice = value(await ann.circuits.create(sample("New, and more"), { ...coming, bench: "newer" }, later(6)));
    expect(twice).toMatchObject({ id: made.id, version: 2, bench: "newer", circuit: { title: "New, and more" } });
    expect(value(await ann.circuits.list(ALL)).count).toBe(3);
  });

  it("takes the same edit made twice for one", async () => {
    const shared = await open();
    const id = await begun(shared);
    value(await shared.ann.circuits.save(id, edit(1, "Same"), later(1)));
    const same = { version: 1, circuit: sample("Same"), name: "title" };
    expect(value(await shared.ben.circuits.save(id, same, later(2)))).toMatchObject({ id, version: 2, beside: null });
  });

  it("keeps beside what was still edited of a circuit that another deleted", async () => {
    const shared = await open();
    const id = await begun(shared);
    value(await shared.ann.circuits.remove(id, false, later(1)));
    const saved = value(await shared.ben.circuits.save(id, edit(1, "On it", { benchVersion: 0 }), later(2)));
    expect(saved).toMatchObject({ version: 1, beside: { isRemoved: true } });
    expect(value(await shared.ann.circuits.standing(id)).isRemoved).toBe(true);
    expect(value(await shared.ann.circuits.list(ALL)).rows.map(({ title }) => title)).toEqual(["On it"]);
  });

  it("refuses only a look at what was changed elsewhere, so that it is shown as it is", async () => {
    const shared = await open();
    const { benches, circuits } = shared.ann;
    const id = await begun(shared);
    const look = { version: 1, bench: "look", benchVersion: 1, isSight: true, jobs: [] };
    expect(value(await benches.save(id, look, later(1)))).toEqual({ id, version: 1, benchVersion: 1, beside: null });
    value(await benches.save(id, { ...look, isSight: false }, later(2)));
    expect(code(await benches.save(id, { ...look, bench: "other look" }, later(3)))).toBe("bench-changed-elsewhere");
    value(await circuits.rename(id, "Other", later(4)));
    expect(code(await benches.save(id, { ...look, benchVersion: 2 }, later(5)))).toBe("circuit-changed-elsewhere");
    value(await circuits.remove(id, false, later(6)));
    expect(code(await benches.save(id, look, later(7)))).toBe("circuit-unknown");
  });

  it("leaves a bench to its person where somebody else drew on the circuit, and says that it is older", async () => {
    const shared = await open();
    const id = await begun(shared);
    value(await shared.ben.circuits.rename(id, "Drawn on", later(1)));
    const thrown = { version: 1, bench: "thrown", benchVersion: 1, jobs: [] };
    const saved = value(await shared.ann.benches.save(id, thrown, later(2)));
    expect(saved).toEqual({ id, version: 1, benchVersion: 2, beside: null });
    expect(value(await shared.ann.circuits.open(id, later(3)))).toMatchObject({
      version: 2,
      bench: "thrown",
      isBenchOlder: true,
    });
    expect(value(await shared.ann.circuits.list(ALL)).count).toBe(1);
  });

  it("keeps a bench beside that another page of the same person changed", async () => {
    const shared = await open();
    const { ann } = shared;
    const id = await begun(shared);
    const thrown = { version: 1, benchVersion: 1, jobs: [] };
    value(await ann.benches.save(id, { ...thrown, bench: "here" }, later(1)));
    const saved = value(await ann.benches.save(id, { ...thrown, bench: "there" }, later(2)));
    expect(saved).toMatchObject({ version: 1, beside: { by: "", saved: later(1).toISOString() } });
    expect(value(await ann.circuits.open(saved.id, later(3)))).toMatchObject({
      bench: "there",
      circuit: { title: "Horn" },
    });
    expect(value(await ann.circuits.open(id, later(3))).bench).toBe("here");
    expect(value(await ann.recent.onBench()).circuit).toBe(id);
  });
}
