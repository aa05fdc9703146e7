import { spawnSync } from "node:child_process";
import { closeSync, openSync, readdirSync, rmSync, writeSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it, onTestFinished } from "vitest";
import { keepStore } from "../../electron/store/sqlite/keeper.ts";
import { STORE_FILE } from "../../electron/store/sqlite/open.ts";
import { codesOf, flip, titlesIn } from "./damage.ts";
import { ask, code, got, hostOn, MORNING, ownFolder, value } from "./library.ts";
import { sample } from "./sample.ts";

/** Size of the file system that a test fills. */
const SIZE = "6m";
const PIECE = Buffer.alloc(4096);

/** Why no small file system can be made here; null where it can. */
function whyNot(): string | null {
  if (process.platform !== "linux") return "only Linux makes a file system in memory";
  if (process.getuid?.() !== 0) return "only root may make a file system";
  const place = spawnSync("unshare", ["--mount", "mount", "-t", "tmpfs", "none", "/mnt"], { encoding: "utf8" });
  return place.status === 0 ? null : `no file system can be made here: ${place.stderr || place.error}`;
}

const reason = whyNot();
if (reason !== null) console.log(`A full disk is not tested: ${reason}.`);

/** A small file system of the test's own. */
function smallDisk(): string {
  const place = ownFolder();
  const made = spawnSync("mount", ["-t", "tmpfs", "-o", `size=${SIZE}`, "none", place], { encoding: "utf8" });
  if (made.status !== 0) throw new Error(made.stderr);
  onTestFinished(() => void spawnSync("umount", ["--lazy", place]));
  return place;
}

/** Fills what is left of it; gives the way to make room again. */
function fill(disk: string): () => void {
  const file = join(disk, "full");
  const handle = openSync(file, "w");
  try {
    for (;;) writeSync(handle, PIECE);
  } catch (error) {
    if ((error as { code?: string }).code !== "ENOSPC") throw error;
  } finally {
    closeSync(handle);
  }
  return () => rmSync(file);
}

describe.skipIf(reason !== null)("a full disk", () => {
  it("refuses an edit with a sentence, loses nothing, and goes on once there is room", async () => {
    const disk = smallDisk();
    const folder = join(disk, "library");
    const host = hostOn(folder);
    const { id } = await got(host, "circuits.create", { circuit: sample("Edit 1"), bench: "1" });
    let benchVersion = 1;
    const edit = (version: number) =>
      ask(host, "circuits.save", {
        id,
        version,
        circuit: sample(`Edit ${version + 1}`),
        bench: `${version + 1}`,
        benchVersion: benchVersion++,
        name: "Rename",
      });
    value(await edit(1));
    const makeRoom = fill(disk);
    let version = 2;
    let refused = await edit(version);
    // What the log has room for is still taken.
    while (refused.ok && version < 400) refused = await edit(++version);
    expect(code(refused)).toBe("store-full");
    // What there is can be read meanwhile.
    const kept = { version, bench: String(version), circuit: { title: `Edit ${version}` } };
    expect(await got(host, "circuits.open", { id })).toMatchObject(kept);
    makeRoom();
    benchVersion = version;
    value(await edit(version));
    await host.keeper.close();
    const keeper = keepStore(folder, () => MORNING);
    onTestFinished(() => keeper.close());
    const store = value(await keeper.store());
    expect(codesOf(store.notices)).toEqual([]);
    expect(store.connection.pragma("integrity_check", { simple: true })).toBe("ok");
    expect(titlesIn(store)).toEqual([`Edit ${version + 1}`]);
  });

  it("at a start is told of, and the library opens all the same", async () => {
    const disk = smallDisk();
    const folder = join(disk, "library");
    const first = hostOn(folder);
    await got(first, "circuits.create", { circuit: sample("Horn") });
    await first.keeper.close();
    rmSync(join(folder, "copies"), { recursive: true });
    fill(disk);
    const host = hostOn(folder);
    expect(await got(host, "circuits.list", {})).toMatchObject({ rows: [{ title: "Horn" }] });
    await host.keeper.close();
    expect(codesOf(host.keeper.takeNotices())).toEqual(["store-no-copy"]);
  });

  it("leaves a damaged library as it lies until there is room to put it right", async () => {
    const disk = smallDisk();
    const folder = join(disk, "library");
    const first = hostOn(folder);
    await got(first, "circuits.create", { circuit: sample("Horn") });
    await first.keeper.close();
    flip(join(folder, STORE_FILE), 0, 4096);
    const makeRoom = fill(disk);
    const before = readdirSync(folder).toSorted();
    const host = hostOn(folder);
    expect(code(await ask(host, "circuits.list", {}))).toBe("store-full");
    makeRoom();
    expect(before).toContain(STORE_FILE);
    expect(readdirSync(folder).filter((name) => name.includes("damaged"))).toEqual([]);
    expect(await got(host, "circuits.list", {})).toMatchObject({ rows: [{ title: "Horn" }] });
    expect(codesOf(host.keeper.takeNotices())).toEqual(["store-mended"]);
  });
});
