import { spawn } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import type { Seconds } from "../../core/base/units.ts";
import type { Surroundings } from "../dataFolder.ts";

const MISSED = "electron-missed.txt";
const DAY_MS = 86_400_000;

/** True where a window can be shown: there is a screen, and not by root on Linux, where Electron has no sandbox. */
export function canShowWindow({ platform, env }: Omit<Surroundings, "home">, isRoot: boolean): boolean {
  return platform !== "linux" || (hasScreen({ platform, env }) && !isRoot);
}

/** True where something can be opened on a screen. */
export function hasScreen({ platform, env }: Omit<Surroundings, "home">): boolean {
  return platform === "win32" || platform === "darwin" || Boolean(env.DISPLAY || env.WAYLAND_DISPLAY);
}

/** Path of Electron's program under this project, or null where it was not fetched. It is not started. */
export function electronProgram(root: string, env: Surroundings["env"]): string | null {
  const place = electronFolder(root);
  if (place === null) return null;
  const named = join(place, "path.txt");
  const name = existsSync(named) ? readFileSync(named, "utf8") : null;
  const folder = env.ELECTRON_OVERRIDE_DIST_PATH || join(place, "dist");
  const program = join(folder, name ?? "electron");
  return (name !== null || env.ELECTRON_OVERRIDE_DIST_PATH) && existsSync(program) ? program : null;
}

/** True where fetching it failed within the last day, as noted in this folder. */
export function wasMissed(folder: string, now: Date): boolean {
  try {
    const missed = new Date(readFileSync(join(folder, MISSED), "utf8").trim()).getTime();
    return now.getTime() - missed < DAY_MS && missed <= now.getTime();
  } catch {
    return false;
  }
}

/**
 * Notes for a day that it could not be fetched, so that the next starts are quick; null takes the note away. A folder
 * that cannot be written only makes them slow.
 */
export function noteMissed(folder: string, missed: Date | null): void {
  const note = join(folder, MISSED);
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    if (missed) writeFileSync(note, `${missed.toISOString()}\n`);
    else rmSync(note, { force: true });
  } catch {}
}

/** Fetches Electron by its own installer; false where that fails or takes longer. A network may swallow everything. */
export function fetchElectron(root: string, most: Seconds): Promise<boolean> {
  const place = electronFolder(root);
  const installer = place && join(place, "install.js");
  if (!installer || !existsSync(installer)) return Promise.resolve(false);
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [installer], {
      stdio: "ignore",
      timeout: most * 1_000,
      killSignal: "SIGKILL",
    });
    child.once("error", () => resolve(false));
    child.once("exit", (code) => resolve(code === 0));
  });
}

function electronFolder(root: string): string | null {
  try {
    return dirname(createRequire(join(root, "package.json")).resolve("electron/package.json"));
  } catch {
    return null;
  }
}
