import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { build, isBuilt } from "../../../electron/build.ts";

import { freshFolder } from "../room.ts";

const ROOT = fileURLToPath(new URL("../../..", import.meta.url));

/** The loopback host as a process of its own, on a library of its own. */
export interface RunningHost {
  /** Lets one page in, once. */
  readonly address: string;
  /** Number of the process. */
  readonly pid: number;
  /** Where its inspector listens, where it was started with one. */
  readonly inspector: string | null;
  stop(): Promise<void>;
}

/** Builds page and window where the sources are newer, so that no start has to. */
export async function buildOnce(): Promise<void> {
  if (!isBuilt(ROOT)) await build(ROOT);
}

/** Starts the host as `npm start` does, without a screen, with a circuit file or none, and waits until it serves. */
export async function startHost(...file: readonly string[]): Promise<RunningHost> {
  return started([], file);
}

/** The same without a file, on a library that is there already and stays. */
export async function startHostOn(library: string): Promise<RunningHost> {
  return started([], [], { path: library, remove: () => undefined });
}

/** The same with an inspector, by which its memory can be looked at from outside. */
export async function startInspected(): Promise<RunningHost> {
  return started(["--inspect=127.0.0.1:0"], []);
}

async function started(
  switches: readonly string[],
  file: readonly string[],
  folder = freshFolder(),
): Promise<RunningHost> {
  const host = spawn(process.execPath, [...switches, join(ROOT, "electron", "run.cjs"), "open", ...file], {
    stdio: ["ignore", "pipe", "pipe"],
    env: { ...process.env, WIREFATHOM_DATA: folder.path, DISPLAY: undefined, WAYLAND_DISPLAY: undefined },
  });
  let inspector: string | null = null;
  host.stderr.on("data", (piece) => {
    const listens = /^Debugger listening on (ws:\S+)/m.exec(String(piece));
    if (listens) inspector = listens[1]!;
    else if (switches.length === 0) process.stderr.write(piece);
  });
  const address = await addressOf(host);
  return {
    address,
    pid: host.pid!,
    inspector,
    stop: async () => {
      host.kill("SIGTERM");
      if (host.exitCode === null) await once(host, "exit");
      folder.remove();
    },
  };
}

function addressOf(host: ChildProcess): Promise<string> {
  return new Promise((found, failed) => {
    let said = "";
    host.stdout!.on("data", (piece) => {
      said += piece;
      const address = /http:\/\/127\.0\.0\.1:\d+\/\?t=[\w-]+\s/.exec(said)?.[0];
      if (address) found(address.trim());
    });
    host.once("exit", () => failed(new Error(`the host ended without an address: ${said}`)));
  });
}
