import { join } from "node:path";
import { beginSession } from "../../electron/loopback/session.ts";
import { TAKE_HOME } from "../../electron/print/takeHome.ts";
import { chosenLibrary } from "../../electron/store/choose.ts";

// Run as a process of its own by the loopback host of the stories: serves the built page as `npm start` does, and says where.
const [root = "", folder = "", file] = process.argv.slice(2);
const choice = chosenLibrary({ given: null, env: process.env, data: folder, platform: process.platform });
if (!choice.ok) throw new Error(choice.refusal.code);
const now = (): Date => new Date();
const session = await beginSession({
  folder: choice.value.folder,
  keeper: choice.value.keeper(now),
  pages: join(root, "out", "renderer"),
  samples: join(root, "samples"),
  printer: new URL("../../electron/print/printer.ts", import.meta.url),
  takeHome: join(root, TAKE_HOME),
  version: "stories",
  file: file ?? null,
  now,
  fault: (error) => {
    console.error(error);
    process.exitCode = 1;
  },
  refused: (line) => process.stderr.write(line),
});
process.once("SIGTERM", () => void session.close().then(() => process.stdin.destroy()));
// Held open by the story: a host must not outlive it, however the story ends.
process.stdin.resume().once("end", () => process.exit());
console.log(session.address);
