import { spawnSync } from "node:child_process";
import { chmodSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import Database from "better-sqlite3";
import { describe, expect, it, onTestFinished } from "vitest";
import { storeRefusal } from "../../electron/store/failure.ts";
import { ALL_KEPT } from "../../electron/store/newVersion.ts";
import { addCircuit } from "../../electron/store/sqlite/circuits.ts";
import { isSound } from "../../electron/store/sqlite/connect.ts";
import { keepStore } from "../../electron/store/sqlite/keeper.ts";
import { listCircuits } from "../../electron/store/sqlite/list.ts";
import { closeStore, copyOfTheDay, openStore, STORE_FILE, type Store } from "../../electron/store/sqlite/open.ts";
import { saveCircuit } from "../../electron/store/sqlite/save.ts";
import { UPGRADES } from "../../electron/store/sqlite/upgrades.ts";
import { circuitInVersion, versionsOf } from "../../electron/store/sqlite/versions.ts";
import type { Upgrade } from "../../electron/store/upgradeStep.ts";
import { code, MORNING, ownFolder, value } from "./library.ts";
import { ROOT, sample } from "./sample.ts";

const ALL = { search: "", where: "library", from: 0, limit: 100 } as const;

async function opened(folder: string, now = MORNING, upgrades?: readonly Upgrade[]): Promise<Store> {
  const store = value(await openStore(folder, now, upgrades));
  onTestFinished(() => closeStore(store));
  return store;
}

/** A library with one circuit of this title and a copy of the day, closed. */
async function libraryWith(title: string): Promise<{ readonly folder: string; readonly file: string }> {
  const folder = ownFolder();
  const store = await opened(folder);
  addCircuit(store, sample(title), { name: "Begun" }, MORNING);
  expect(await copyOfTheDay(store, MORNING)).toBeNull();
  closeStore(store);
  return { folder, file: join(folder, STORE_FILE) };
}

function titles(store: Store): readonly string[] {
  return listCircuits(store, ALL).rows.map((row) => row.title);
}

describe("every opening", () => {
  it("commits to the disk, keeps references and holds the file for itself, the second time too", async () => {
    const folder = ownFolder();
    for (let time = 0; time < 2; time++) {
      const store = await opened(folder);
      const pragma = (name: string) => store.connection.pragma(name, { simple: true });
      expect([pragma("journal_mode"), pragma("synchronous"), pragma("foreign_keys")]).toEqual(["wal", 2, 1]);
      expect(code(await openStore(folder, MORNING))).toBe("store-locked");
      closeStore(store);
    }
  });

  it("leaves one file when it is closed", async () => {
    const { folder } = await libraryWith("Horn");
    expect(readdirSync(folder).toSorted()).toEqual(["copies", STORE_FILE]);
  });

  it("refuses a place where no folder can be", async () => {
    const file = join(ownFolder(), "file");
    writeFileSync(file, "");
    expect(code(await openStore(join(file, "library"), MORNING))).toBe("store-no-folder");
  });

  it.skipIf(process.platform === "win32")(
    "refuses a library that may only be read, and leaves it as it is",
    async () => {
      const { folder, file } = await libraryWith("Horn");
      chmodSync(file, 0o444);
      chmodSync(folder, 0o555);
      const before = readFileSync(file);
      const child = spawnSync(process.execPath, [join(ROOT, "tests/electron/readOnly.ts"), folder], {
        encoding: "utf8",
      });
      chmodSync(folder, 0o755);
      expect({ out: child.stdout, error: child.stderr }).toEqual({ out: "store-read-only", error: "" });
      expect(readFileSync(file).equals(before)).toBe(true);
    },
  );
});

describe("what the disk says", () => {
  it.each([
    ["SQLITE_CORRUPT_VTAB", "damage"],
    ["SQLITE_NOTADB", "damage"],
    ["SQLITE_ERROR", "damage"],
    ["SQLITE_IOERR_READ", "thrown"],
    ["SQLITE_BUSY", "thrown"],
    ["SQLITE_CANTOPEN", "thrown"],
  ])("%s while a library is checked is %s", (said, expected) => {
    const pragma = (): never => {
      throw new Database.SqliteError("as said", said);
    };
    const sound = (): boolean => isSound({ pragma }, "quick_check");
    if (expected === "damage") expect(sound()).toBe(false);
    else expect(sound).toThrow("as said");
  });

  it.each([
    ["EMFILE", "store-unwritable"],
    ["EBUSY", "store-locked"],
    ["SQLITE_PROTOCOL", "store-locked"],
    ["ERR_INVALID_ARG_TYPE", undefined],
    ["SQLITE_CONSTRAINT", undefined],
  ])("%s is %s to a person", (said, expected) => {
    expect(storeRefusal(Object.assign(new Error(), { code: said }), "")?.code).toBe(expected);
  });

  it("in a way nobody foresaw is a fault once, and the next asking opens the library", async () => {
    const folder = ownFolder();
    let isBroken = true;
    const keeper = keepStore(folder, () => {
      if (isBroken) throw new Error("no clock");
      return MORNING;
    });
    onTestFinished(() => keeper.close());
    await expect(keeper.store()).rejects.toThrow("no clock");
    isBroken = false;
    expect((await keeper.store()).ok).toBe(true);
  });
});

describe("versions", () => {
  it("of which a byte changed on the disk are refused, and the others still open", async () => {
    const store = await opened(ownFolder());
    const { key, id } = addCircuit(store, sample("One"), { name: "Begun" }, MORNING);
    saveCircuit(store, id, { version: 1, circuit: sample("Two"), name: "Rename" }, MORNING);
    const text = store.connection.prepare("SELECT text FROM versions WHERE version = 2").pluck().get() as Buffer;
    text[text.length >> 1]! ^= 1;
    store.connection.prepare("UPDATE versions SET text = ? WHERE version = 2").run(text);
    expect(code(circuitInVersion(store, key, 2))).toBe("version-damaged");
    expect(value(circuitInVersion(store, key, 1)).title).toBe("One");
    expect(code(circuitInVersion(store, key, 3))).toBe("version-unknown");
  });

  it("older than the newest 200 are thinned to the last of each day", async () => {
    const store = await opened(ownFolder());
    const { key, id } = addCircuit(store, sample("0"), { name: "Begun" }, new Date("2026-01-01T08:00:00Z"));
    // Three days of three versions, then as many as are all kept.
    for (let version = 1; version < 9 + ALL_KEPT; version++) {
      const day = version < 9 ? 1 + Math.floor(version / 3) : 20;
      const now = new Date(Date.UTC(2026, 0, day, 8, 0, version));
      value(saveCircuit(store, id, { version, circuit: sample(String(version)), name: "" }, now));
    }
    const kept = versionsOf(store, key).map((row) => row.version);
    expect(kept.slice(0, ALL_KEPT)).toEqual(Array.from({ length: ALL_KEPT }, (_, back) => 9 + ALL_KEPT - back));
    expect(kept.slice(ALL_KEPT)).toEqual([9, 6, 3]);
  });
});

describe("copies", () => {
  it("are made once a day, checked, and ten are kept", async () => {
    const folder = ownFolder();
    const store = await opened(folder);
    for (let day = 1; day <= 14; day++) {
      for (const hour of [8, 16]) await copyOfTheDay(store, new Date(Date.UTC(2026, 2, day, hour)));
    }
    const names = readdirSync(join(folder, "copies")).toSorted();
    expect(names).toHaveLength(10);
    expect([names[0], names.at(-1)]).toEqual(["2026-03-05T080000Z-day.db", "2026-03-14T080000Z-day.db"]);
  });

  it("cut off by an end in the middle do not gather", async () => {
    const folder = ownFolder();
    const store = await opened(folder);
    mkdirSync(join(folder, "copies"));
    for (let day = 1; day <= 3; day++) {
      // What a copy that was cut off leaves behind is named as this one's first part is.
      writeFileSync(join(folder, "copies", "under-way.part"), "half a copy");
      expect(await copyOfTheDay(store, new Date(Date.UTC(2026, 2, day)))).toBeNull();
    }
    expect(readdirSync(join(folder, "copies")).filter((name) => !name.endsWith("-day.db"))).toEqual([]);
  });

  it("that cannot be made are told of, and the library works on", async () => {
    const folder = ownFolder();
    const store = await opened(folder);
    writeFileSync(join(folder, "copies"), "a file where the folder should be");
    expect((await copyOfTheDay(store, MORNING))?.code).toBe("store-no-copy");
    addCircuit(store, sample("Horn"), { name: "Begun" }, MORNING);
    expect(titles(store)).toEqual(["Horn"]);
  });
});

describe("upgrades", () => {
  const next: Upgrade = { name: "900-next", sql: "ALTER TABLE circuits ADD COLUMN next TEXT NOT NULL DEFAULT 'new'" };
  const bad: Upgrade = { name: "901-bad", sql: "CREATE TABLE half (a); INSERT INTO nowhere VALUES (1)" };

  it("have names that rise", () => {
    const names = UPGRADES.map(({ name }) => name);
    expect(names).toEqual([...new Set(names)].toSorted());
  });

  it("are applied once, after a copy was made, and keep what was there", async () => {
    const folder = ownFolder();
    const first = await opened(folder);
    addCircuit(first, sample("Horn"), { name: "Begun" }, MORNING);
    closeStore(first);
    for (let time = 0; time < 2; time++) {
      const store = await opened(folder, MORNING, [...UPGRADES, next]);
      expect(store.connection.prepare("SELECT title, next FROM circuits").all()).toEqual([
        { title: "Horn", next: "new" },
      ]);
      closeStore(store);
    }
    expect(readdirSync(join(folder, "copies"))).toEqual(["2026-03-02T080000Z-before-900-next.db"]);
  });

  it("that fail leave nothing of themselves", async () => {
    const folder = ownFolder();
    closeStore(await opened(folder));
    await expect(openStore(folder, MORNING, [...UPGRADES, next, bad])).rejects.toThrow("nowhere");
    const store = await opened(folder, MORNING, [...UPGRADES, next]);
    expect(store.connection.prepare("SELECT name FROM sqlite_schema WHERE name = 'half'").all()).toEqual([]);
  });

  it("of a newer program are refused, and nothing is changed", async () => {
    const folder = ownFolder();
    closeStore(await opened(folder, MORNING, [...UPGRADES, next]));
    const before = readFileSync(join(folder, STORE_FILE));
    expect(code(await openStore(folder, MORNING))).toBe("store-newer");
    expect(readFileSync(join(folder, STORE_FILE)).equals(before)).toBe(true);
  });

  const fixtures = new URL("libraries/", import.meta.url);
  it.each(readdirSync(fixtures))("open the library %s with what is in it", async (name) => {
    const folder = join(ownFolder(), "library");
    mkdirSync(folder);
    const written = new Database(join(folder, STORE_FILE));
    // The index of the search writes its own tables, which SQL may only do where it is trusted.
    written.unsafeMode();
    written.exec(readFileSync(new URL(name, fixtures), "utf8"));
    written.close();
    const store = await opened(folder);
    expect(store.notices).toEqual([]);
    const [row] = listCircuits(store, { ...ALL, search: "fixture" }).rows;
    expect(row).toMatchObject({ title: "Fixture of a library", version: 2 });
    const key = store.connection.prepare("SELECT key FROM circuits").pluck().get() as number;
    expect(value(circuitInVersion(store, key, 2)).title).toBe("Fixture of a library");
  });

  it("have a library of each form among the fixtures", () => {
    expect(readdirSync(fixtures).toSorted()).toEqual(UPGRADES.map(({ name }) => `${name}.sql`));
  });
});
