import { existsSync } from "node:fs";
import { delimiter, join } from "node:path";
import { fileURLToPath } from "node:url";
import { electronProgram, hasScreen } from "../../electron/launch/electron.ts";

/** Root of the project. */
export const ROOT = fileURLToPath(new URL("../..", import.meta.url));

/** Loaded before a host, ends it as soon as it asks for the network. */
export const NO_NETWORK = join(ROOT, "tests", "noNetwork.ts");

/** Names under which Chromium is installed. */
const NAMES = ["chromium", "chromium-browser", "google-chrome"];

/** Path of the Chromium of this machine, or null where there is none. */
export function chromiumProgram(): string | null {
  const folders = (process.env.PATH ?? "").split(delimiter);
  return NAMES.flatMap((name) => folders.map((folder) => join(folder, name))).find((path) => existsSync(path)) ?? null;
}

/** True where Electron's own program is here and has a screen to show a window on; else the stand-in is run. */
export function hasElectron(): boolean {
  const env = { ...process.env, ELECTRON_OVERRIDE_DIST_PATH: givenElectron };
  return electronProgram(ROOT, env) !== null && hasScreen(process);
}

/** Where somebody keeps Electron elsewhere; read before a host puts the stand-in there. */
const givenElectron = process.env.ELECTRON_OVERRIDE_DIST_PATH;
