import { spawn } from "node:child_process";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { benchOf } from "../../electron/store/sqlite/benches.ts";
import { addCircuit, placeOf } from "../../electron/store/sqlite/circuits.ts";
import { closeStore, openStore } from "../../electron/store/sqlite/open.ts";
import { circuitInVersion } from "../../electron/store/sqlite/versions.ts";
import { MORNING, ownFolder, value } from "./library.ts";
import { ROOT, sample } from "./sample.ts";

/** Runs the writer, kills it this long after its first edit, and gives the last edit it said it had kept. */
function lastKeptByKilled(folder: string, id: string, from: number, afterMs: number): Promise<number> {
  const writer = spawn(process.execPath, [join(ROOT, "tests/electron/writer.ts"), folder, id, String(from)]);
  let said = "";
  writer.stdout.once("data", () => setTimeout(() => writer.kill("SIGKILL"), afterMs));
  writer.stdout.on("data", (piece) => {
    said += piece;
  });
  return new Promise((resolve) => {
    writer.once("close", () => resolve(Number(said.trimEnd().split("\n").at(-1))));
  });
}

describe("a writer killed in the middle of its edits", () => {
  it("leaves every edit that it said it had kept, whole, with its bench and its words", async () => {
    const folder = ownFolder();
    const first = value(await openStore(folder, MORNING));
    const { id, key } = addCircuit(first, sample("Edit 1"), { name: "Begun" }, MORNING);
    closeStore(first);
    let version = 1;
    for (const afterMs of [0, 1, 7, 23, 60, 110]) {
      const kept = await lastKeptByKilled(folder, id, version, afterMs);
      expect(kept).toBeGreaterThan(version);
      const store = value(await openStore(folder, MORNING));
      expect(store.notices).toEqual([]);
      expect(store.connection.pragma("integrity_check", { simple: true })).toBe("ok");
      version = value(placeOf(store, id)).version;
      // The one that was under way when it was killed may be there too.
      expect([kept, kept + 1]).toContain(version);
      expect(value(circuitInVersion(store, key, version)).title).toBe(`Edit ${version}`);
      expect(benchOf(store, key)).toBe(String(version));
      const found = store.connection.prepare("SELECT count(*) FROM search WHERE search MATCH ?").pluck();
      expect(found.get(`"Edit ${version}"`)).toBe(1);
      closeStore(store);
    }
  });
});
