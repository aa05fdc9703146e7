import { writeSync } from "node:fs";
import { openStore } from "../../electron/store/sqlite/open.ts";
import { UPGRADES } from "../../electron/store/sqlite/upgrades.ts";
import { SLOW } from "./slowUpgrades.ts";

// Run as a process of its own, to be killed: brings a library to its present form and on by upgrades that take their time.
const [folder = ""] = process.argv.slice(2);
writeSync(1, "begun\n");
const store = await openStore(folder, new Date("2026-03-02T09:00:00Z"), [...UPGRADES, ...SLOW]);
writeSync(1, store.ok ? "opened\n" : `${store.refusal.code}\n`);
process.exit();
