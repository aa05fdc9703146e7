import { expect, it } from "vitest";
import type { Library } from "../../../electron/store/library.ts";
import { pictureOf } from "../../../electron/store/pictureFile.ts";
import { code, MORNING, value } from "../../electron/library.ts";
import { png } from "../../electron/pictureFiles.ts";
import { sample } from "../../electron/sample.ts";
import { showing } from "../../electron/showing.ts";
import { ALL, begun, daysLater, edit, type Kind, later } from "./given.ts";

const titles = async ({ circuits }: Library, search: string, more = {}): Promise<readonly string[]> =>
  value(await circuits.list({ ...ALL, search, ...more })).rows.map(({ title }) => title);

/** What every library promises of its circuits, their versions and pictures. */
export function circuitsContract({ open }: Kind): void {
  it("keeps a circuit with its bench, and brings both back after an end", async () => {
    const shared = await open();
    const id = await begun(shared);
    expect(value(await shared.ann.circuits.open(id, MORNING))).toEqual({
      id,
      version: 1,
      circuit: sample("Horn"),
      bench: "as it came",
      benchVersion: 1,
      isBenchOlder: false,
      known: false,
    });
    const again = await shared.again(later(1));
    expect(value(await again.recent.onBench())).toEqual({ circuit: id, attempt: null });
    expect(value(await again.circuits.open(id, later(2)))).toMatchObject({ bench: "as it came", version: 1 });
    expect(value(await again.recent.list(5))).toMatchObject([{ id, opened: later(2).toISOString() }]);
    expect(code(await again.circuits.open("nowhere", MORNING))).toBe("circuit-unknown");
    expect(code(await again.circuits.read("nowhere"))).toBe("circuit-unknown");
    expect(code(await again.circuits.save("nowhere", edit(1, "x"), MORNING))).toBe("circuit-unknown");
  });

  it("makes a version of an edit that changed the circuit, and none of one that did not", async () => {
    const shared = await open();
    const { circuits, versions } = shared.ann;
    const id = await begun(shared);
    const saved = value(await circuits.save(id, edit(1, "Horns"), later(1)));
    expect(saved).toEqual({ id, version: 2, benchVersion: 2, beside: null });
    const same = { ...edit(2, "Horns"), bench: { bench: "thrown", benchVersion: 2 } };
    expect(value(await circuits.save(id, same, later(2)))).toMatchObject({ version: 2, benchVersion: 3 });
    const listed = value(await versions.list(id));
    expect(listed).toEqual({
      versions: [
        { version: 2, saved: later(1).toISOString(), name: "title", by: "ann" },
        { version: 1, saved: MORNING.toISOString(), name: "Begun", by: "ann" },
      ],
      besides: [],
    });
    expect(value(await versions.read(id, 1)).title).toBe("Horn");
    expect(code(await versions.read(id, 3))).toBe("version-unknown");
    expect(code(await versions.list("nowhere"))).toBe("circuit-unknown");
    expect(value(await circuits.read(id))).toEqual({ circuit: sample("Horns"), version: 2 });
    expect(value(await circuits.open(id, later(3)))).toMatchObject({ bench: "thrown", isBenchOlder: false });
  });

  it("tells who made a version by the name that they set, from then on and after a restart; without one as before", async () => {
    const shared = await open();
    const { circuits, settings } = shared.ann;
    const id = await begun(shared);
    value(await settings.keep({ person: "Ann Lee" }));
    value(await circuits.save(id, edit(1, "Horn, second"), later(1)));
    const again = await shared.again(later(2));
    value(await again.circuits.save(id, edit(2, "Horn, third"), later(3)));
    value(await again.settings.keep({ person: "" }));
    value(await again.circuits.save(id, edit(3, "Horn, fourth"), later(4)));
    const { versions } = value(await again.versions.list(id));
    expect(versions.map(({ by }) => by)).toEqual(["ann", "Ann Lee", "Ann Lee", "ann"]);
  });

  it("lists the newest edit first, so many after so many, and counts all", async () => {
    const shared = await open();
    for (const [index, title] of ["One", "Two", "Three"].entries())
      value(await shared.ann.circuits.create(sample(title), { name: "Begun" }, later(index)));
    expect(await titles(shared.ann, "")).toEqual(["Three", "Two", "One"]);
    const page = value(await shared.ben.circuits.list({ ...ALL, from: 1, limit: 1 }));
    expect([page.rows.map(({ title }) => title), page.count]).toEqual([["Two"], 3]);
    expect(value(await shared.ann.circuits.list({ ...ALL, limit: 0 }))).toEqual({ rows: [], count: 3 });
  });

  it("finds by the beginnings of words in any order, without accents, and the title before the vehicle before the rest", async () => {
    const { ann } = await open();
    const { wires } = sample();
    const add = async (title: string, vehicle: string, label = "") => {
      const labelled = label === "" ? {} : { pages: sample().pages.map((page) => ({ ...page, title: label })) };
      value(await ann.circuits.create({ ...sample(title), vehicle, ...labelled }, { name: "Begun" }, MORNING));
    };
    await add("Lamps", "Thrift van", "Blower of the rear");
    await add("Seats", "Blower van");
    await add("Blower", "Coach");
    await add("Rücklicht (groß)", "Trolley");
    expect(await titles(ann, "blow")).toEqual(["Blower", "Seats", "Lamps"]);
    expect(await titles(ann, "BLOW van")).toEqual(["Seats", "Lamps"]);
    expect(await titles(ann, "van blow")).toEqual(["Seats", "Lamps"]);
    expect(await titles(ann, "lower")).toEqual([]);
    expect(await titles(ann, "rucklicht")).toEqual(["Rücklicht (groß)"]);
    expect(await titles(ann, "ru\u0308ck troll")).toEqual(["Rücklicht (groß)"]);
    expect(await titles(ann, `${wires[0]!.id} seats`)).toEqual(["Seats"]);
    expect(await titles(ann, "...")).toEqual([]);
    for (const sign of [
      `"`,
      `'`,
      "blow*",
      "blow & van",
      "a:b",
      "\\",
      "(blow",
      "blow)",
      "NEAR(",
      "!blow",
      "<->",
      "\u0000",
    ])
      expect((await ann.circuits.list({ ...ALL, search: sign })).ok).toBe(true);
    const page = value(await ann.circuits.list({ ...ALL, search: "blow", from: 1, limit: 1 }));
    expect([page.rows.map(({ title }) => title), page.count]).toEqual([["Seats"], 3]);
  });

  it("finds words of several parts as they stand, and what was changed by its new words alone", async () => {
    const shared = await open();
    const id = await begun(shared, "Horn M-XY 77");
    await begun(shared, "Horn XY 77 M");
    expect(await titles(shared.ann, "m-xy")).toEqual(["Horn M-XY 77"]);
    value(await shared.ann.circuits.save(id, edit(1, "Blower"), later(1)));
    expect(await titles(shared.ann, "m-xy")).toEqual([]);
    expect(await titles(shared.ann, "blower")).toEqual(["Blower"]);
  });

  it("takes titles of any signs", async () => {
    const { ann } = await open();
    for (const title of ["צופר", "Horn \u202Egpj", "'; DROP TABLE circuits; --", "$1 :now ?", "😀 lamp", "\\', "]) {
      const { id } = value(await ann.circuits.create(sample(title), { name: title }, MORNING));
      expect(value(await ann.circuits.read(id)).circuit.title).toBe(title);
      expect(value(await ann.circuits.list({ ...ALL, limit: 1 })).rows[0]?.title).toBe(title);
    }
    expect(await titles(ann, "צופ")).toEqual(["צופר"]);
  });

  it("renames, doubles, deletes and brings back", async () => {
    const shared = await open();
    const { circuits } = shared.ann;
    const id = await begun(shared);
    expect(value(await circuits.rename(id, "Horns", later(1)))).toMatchObject({ title: "Horns", version: 2 });
    const copy = value(await circuits.duplicate(id, later(2)));
    expect(copy).toMatchObject({ title: "Horns (copy)", version: 1, beside: null });
    expect(value(await circuits.duplicate(copy.id, later(3))).title).toBe("Horns (copy 2)");
    expect(value(await circuits.open(copy.id, later(3)))).toMatchObject({ bench: "as it came" });
    expect(value(await circuits.remove(id, false, later(4)))).toMatchObject({ removed: later(4).toISOString() });
    expect(code(await circuits.remove(id, false, later(4)))).toBe("circuit-unknown");
    expect(code(await circuits.open(id, later(4)))).toBe("circuit-unknown");
    expect(await titles(shared.ben, "horns", { where: "bin" })).toEqual(["Horns"]);
    expect(value(await circuits.restore(id))).toMatchObject({ removed: null });
    expect(code(await circuits.restore(id))).toBe("circuit-unknown");
    expect(value(await circuits.remove(id, true, later(5)))).toMatchObject({ title: "Horns" });
    expect(await titles(shared.ann, "", { where: "bin" })).toEqual([]);
    expect(code(await circuits.restore(id))).toBe("circuit-unknown");
  });

  it("lets go of what has been in the bin for 30 days, not before, and of nothing else", async () => {
    const shared = await open();
    const id = await begun(shared);
    await begun(shared, "Kept");
    value(await shared.ann.circuits.remove(id, false, MORNING));
    const soon = await shared.again(daysLater(29));
    expect(value(await soon.circuits.list({ ...ALL, where: "bin" })).count).toBe(1);
    const late = await shared.again(daysLater(31));
    expect(value(await late.circuits.list({ ...ALL, where: "bin" })).count).toBe(0);
    expect(await titles(late, "")).toEqual(["Kept"]);
  });

  it("thins versions older than the newest 200 to the last of each day", async () => {
    const { ann } = await open();
    const first = new Date("2026-01-01T08:00:00Z");
    const { id } = value(await ann.circuits.create(sample("0"), { name: "Begun" }, first));
    for (let version = 1; version < 209; version++) {
      const day = version < 9 ? 1 + Math.floor(version / 3) : 20;
      const now = new Date(Date.UTC(2026, 0, day, 8, 0, version));
      value(await ann.circuits.save(id, { version, circuit: sample(String(version)), name: "" }, now));
    }
    const kept = value(await ann.versions.list(id)).versions.map(({ version }) => version);
    expect(kept.slice(0, 200)).toEqual(Array.from({ length: 200 }, (_, back) => 209 - back));
    expect(kept.slice(200)).toEqual([9, 6, 3]);
  });

  it("opens a file that was brought in before as what it became, with the pictures that came along", async () => {
    const { ann, ben } = await open();
    const file = value(pictureOf(png(30, 20)));
    const brought = { circuit: showing(sample("Horn"), file.picture), pictures: [file] };
    const first = value(await ann.circuits.bringIn(brought, MORNING));
    expect(first.known).toBe(false);
    value(await ann.circuits.save(first.id, { ...edit(1, "Horns"), bench: { bench: "b", benchVersion: 0 } }, later(1)));
    expect(value(await ben.circuits.bringIn(brought, later(2)))).toMatchObject({
      id: first.id,
      version: 2,
      known: true,
    });
    const kept = value(await ben.pictures.read(file.picture.sha256));
    expect({ ...kept.picture, bytes: Buffer.from(kept.bytes).equals(file.bytes) }).toEqual({
      ...file.picture,
      bytes: true,
    });
    expect(code(await ann.pictures.read("ab".repeat(32)))).toBe("picture-unknown");
  });

  it("lets go of a picture that no version names once 30 days have gone by", async () => {
    const shared = await open();
    const [shown, never] = [value(pictureOf(png(30, 20))), value(pictureOf(png(31, 20)))];
    for (const file of [shown, never, never]) value(await shared.ann.pictures.keep(file, MORNING));
    await begun(shared, "Horn", showing(sample(), shown.picture));
    const late = await shared.again(daysLater(31));
    expect((await late.pictures.read(shown.picture.sha256)).ok).toBe(true);
    expect(code(await late.pictures.read(never.picture.sha256))).toBe("picture-unknown");
  });
}
