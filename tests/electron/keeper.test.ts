import { mkdirSync, readdirSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { basename, join } from "node:path";
import { describe, expect, it, onTestFinished } from "vitest";
import { copiesIn } from "../../electron/store/sqlite/backup.ts";
import { keepStore, type StoreKeeper } from "../../electron/store/sqlite/keeper.ts";
import { STORE_FILE } from "../../electron/store/sqlite/open.ts";
import { codesOf, titlesIn } from "./damage.ts";
import { ask, code, got, hostOn, MORNING, ownFolder, value } from "./library.ts";
import { sample } from "./sample.ts";

const NEXT_DAY = new Date("2026-03-03T00:00:05Z");

/** Resolves once what is done beside the answers is over. */
async function rested(keeper: StoreKeeper, isSo: () => Promise<boolean>): Promise<void> {
  for (let tries = 0; tries < 400 && !(await isSo()); tries++) {
    value(await keeper.store());
    await new Promise((resolve) => setTimeout(resolve, 25));
  }
}

describe("the first day of a library", () => {
  it("is in a copy once it is closed, for the one of its first start knew of nothing", async () => {
    const folder = ownFolder();
    const host = hostOn(folder);
    value(await host.keeper.store());
    await rested(host.keeper, async () => (await copiesIn(folder)).length === 1);
    await got(host, "circuits.create", { circuit: sample("Horn") });
    host.setNow(new Date(MORNING.getTime() + 3_600_000));
    await host.keeper.close();
    expect(await copiesIn(folder)).toHaveLength(2);
    writeFileSync(join(folder, STORE_FILE), "no library at all".repeat(400));
    const again = hostOn(folder);
    expect(titlesIn(value(await again.keeper.store()))).toEqual(["Horn"]);
    await again.keeper.close();
  });
});

describe("a clock that was ahead once", () => {
  it("does not have what was copied then brought back for what was copied since", async () => {
    const folder = ownFolder();
    const host = hostOn(folder);
    host.setNow(new Date("2031-01-01T08:00:00Z"));
    const { id } = await got(host, "circuits.create", { circuit: sample("Horn of then") });
    await host.keeper.close();
    const again = hostOn(folder);
    await got(again, "circuits.rename", { id, title: "Horn" });
    await again.keeper.close();
    const later = hostOn(folder);
    later.setNow(NEXT_DAY);
    value(await later.keeper.store());
    await rested(later.keeper, async () => (await copiesIn(folder)).some(({ day }) => day === "2026-03-03"));
    await later.keeper.close();
    writeFileSync(join(folder, STORE_FILE), "no library at all".repeat(400));
    const last = hostOn(folder);
    last.setNow(NEXT_DAY);
    expect(titlesIn(value(await last.keeper.store()))).toEqual(["Horn"]);
    await last.keeper.close();
  });
});

describe("a library that is left open over midnight", () => {
  it("is copied once on the day that begins, at the first thing that is done on it", async () => {
    const folder = ownFolder();
    const host = hostOn(folder);
    await got(host, "circuits.create", { circuit: sample("Horn") });
    const names = async () => (await copiesIn(folder)).map(({ path }) => basename(path));
    await rested(host.keeper, async () => (await names()).length === 1);
    host.setNow(NEXT_DAY);
    for (let times = 0; times < 3; times++) await got(host, "circuits.list", {});
    await rested(host.keeper, async () => (await names()).length === 2);
    await host.keeper.close();
    expect(await names()).toEqual(["2026-03-03T000005Z-day.db", "2026-03-02T080000Z-day.db"]);
  });
});

describe.skipIf(process.platform === "win32")("a library whose folder is taken away while it is open", () => {
  it.each([
    ["its folder removed", (folder: string) => rmSync(folder, { recursive: true })],
    ["its folder moved elsewhere", (folder: string) => renameSync(folder, `${folder}-moved`)],
    ["its file alone removed", (folder: string) => rmSync(join(folder, STORE_FILE))],
    [
      "another file put in its place",
      (folder: string) => {
        rmSync(join(folder, STORE_FILE));
        writeFileSync(join(folder, STORE_FILE), "something else");
      },
    ],
  ])("is written anew with all that was done, and the person told: %s", async (_, take) => {
    const folder = join(ownFolder(), "library");
    const host = hostOn(folder);
    const { id } = await got(host, "circuits.create", { circuit: sample("Horn") });
    take(folder);
    const save = { id, version: 1, circuit: sample("Horn later"), bench: "2", benchVersion: 0, name: "Rename" };
    await got(host, "circuits.save", save);
    expect(codesOf(host.keeper.takeNotices())).toEqual(["store-put-back"]);
    await host.keeper.close();
    const again = keepStore(folder, () => MORNING);
    onTestFinished(() => again.close());
    expect(titlesIn(value(await again.store()))).toEqual(["Horn later"]);
    expect(again.takeNotices()).toEqual([]);
  });

  it("says so where it cannot be written anew, keeps nothing by halves, and goes on once it can be", async () => {
    const room = ownFolder();
    const folder = join(room, "library");
    const host = hostOn(folder);
    await got(host, "circuits.create", { circuit: sample("Horn") });
    rmSync(folder, { recursive: true });
    // Where the folder was there is a file now.
    writeFileSync(folder, "");
    expect(code(await ask(host, "circuits.create", { circuit: sample("Blower") }))).toBe("store-no-folder");
    rmSync(folder);
    await got(host, "circuits.create", { circuit: sample("Wiper") });
    expect(titlesIn(value(await host.keeper.store()))).toEqual(["Horn", "Wiper"]);
    mkdirSync(folder, { recursive: true });
    expect(readdirSync(folder)).toContain(STORE_FILE);
  });

  it("is told to the page that runs, once", async () => {
    const folder = join(ownFolder(), "library");
    const host = hostOn(folder);
    await got(host, "circuits.create", { circuit: sample("Horn") });
    rmSync(folder, { recursive: true });
    await got(host, "circuits.list", {});
    expect(await got(host, "nextRequest", {})).toMatchObject({
      request: { ask: "tell", refusal: { code: "store-put-back", about: { folder } } },
    });
  });
});
