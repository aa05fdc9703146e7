import { spawn } from "node:child_process";
import { mkdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import Database from "better-sqlite3";
import { describe, expect, it, onTestFinished } from "vitest";
import { copiesIn } from "../../electron/store/sqlite/backup.ts";
import { closeStore, openStore, STORE_FILE } from "../../electron/store/sqlite/open.ts";
import { UPGRADES } from "../../electron/store/sqlite/upgrades.ts";
import { circuitInVersion } from "../../electron/store/sqlite/versions.ts";
import { trials } from "../long.ts";
import { lotsOf } from "../lots.ts";
import { MORNING, ownFolder, value } from "./library.ts";
import { ROOT } from "./sample.ts";
import { SLOW, SLOW_ROWS } from "./slowUpgrades.ts";

const KILLS = trials(5, 40);
/** Within so many milliseconds after it began to open, by lot. */
const MOST_MS = 900;

/** Starts to bring a library to its newest form and kills that; gives whether it was over before. */
async function upgradedAndKilled(folder: string, afterMs: number): Promise<boolean> {
  const child = spawn(process.execPath, [join(ROOT, "tests/electron/upgrader.ts"), folder]);
  let said = "";
  child.stdout.once("data", () => setTimeout(() => child.kill("SIGKILL"), afterMs));
  child.stdout.on("data", (piece) => {
    said += piece;
  });
  await new Promise((ended) => child.once("close", ended));
  return said.includes("opened");
}

/** A library of the oldest form, as it was given out. */
function oldLibrary(): string {
  const folder = join(ownFolder(), "library");
  mkdirSync(folder);
  const written = new Database(join(folder, STORE_FILE));
  written.unsafeMode();
  written.exec(readFileSync(new URL("libraries/001-library.sql", import.meta.url), "utf8"));
  written.close();
  return folder;
}

describe("an upgrade that is killed in the middle", () => {
  it("is gone on with at the next start: nothing is lost, nothing done twice", async () => {
    const lots = lotsOf(29);
    let cut = 0;
    for (let kill = 0; kill < KILLS; kill++) {
      const folder = oldLibrary();
      if (!(await upgradedAndKilled(folder, lots.upTo(MOST_MS)))) cut += 1;
      const store = value(await openStore(folder, MORNING, [...UPGRADES, ...SLOW]));
      onTestFinished(() => closeStore(store));
      expect(store.notices).toEqual([]);
      const { connection } = store;
      expect(connection.pragma("integrity_check", { simple: true })).toBe("ok");
      expect(connection.prepare("SELECT name FROM upgrades ORDER BY name").pluck().all()).toEqual(
        [...UPGRADES, ...SLOW].map(({ name }) => name),
      );
      expect(
        connection.prepare("SELECT name FROM sqlite_schema WHERE name LIKE 'slow!__' ESCAPE '!'").pluck().all(),
      ).toEqual(["slow_2"]);
      expect(connection.prepare("SELECT count(*) FROM slow_2").pluck().get()).toBe(SLOW_ROWS);
      const key = connection.prepare("SELECT key FROM circuits").pluck().get() as number;
      expect(value(circuitInVersion(store, key, 2)).title).toBe("Fixture of a library");
      // What it was before is there in a copy that was read whole.
      expect((await copiesIn(folder)).map(({ path }) => path).join()).toContain("before-002-pictures");
      closeStore(store);
    }
    expect(cut).toBeGreaterThan(0);
  });
});
