import { writeSync } from "node:fs";
import { keepStore } from "../../electron/store/sqlite/keeper.ts";
import { saveCircuit } from "../../electron/store/sqlite/save.ts";
import { sample } from "./sample.ts";

// Run as a process of its own, to be killed: edits a circuit as fast as it can, and after each commit says which.
const [folder = "", id = "", from = "1"] = process.argv.slice(2);
const store = await keepStore(folder, () => new Date("2026-03-02T09:00:00Z")).store();
if (!store.ok) throw new Error(store.refusal.code);
for (let version = Number(from); ; version++) {
  const bench = { bench: String(version + 1), benchVersion: version - 1 };
  const save = { version, circuit: sample(`Edit ${version + 1}`), name: "Rename", bench };
  const saved = saveCircuit(store.value, id, save, new Date("2026-03-02T09:00:00Z"));
  if (!saved.ok) throw new Error(saved.refusal.code);
  writeSync(1, `${saved.value.version}\n`);
}
