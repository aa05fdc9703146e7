import { keepStore } from "../../electron/store/sqlite/keeper.ts";

// Run as a process of its own: gives up root's rights, which no lock on a file holds back, and says what opening gives.
const [folder = ""] = process.argv.slice(2);
process.setuid?.(process.getuid?.() === 0 ? 65_534 : process.getuid!());
const store = await keepStore(folder, () => new Date("2026-03-02T09:00:00Z")).store();
process.stdout.write(store.ok ? "opened" : store.refusal.code);
process.exit();
