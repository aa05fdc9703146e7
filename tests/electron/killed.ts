import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { join } from "node:path";
import { createInterface } from "node:readline";
import { setTimeout as wait } from "node:timers/promises";
import { build } from "rolldown";
import type { Outcome } from "../../core/base/outcome.ts";
import type { Answer, Argument, CallName } from "../../schemas/calls.ts";
import { send } from "./http.ts";
import { ROOT } from "./sample.ts";

const HOST = join(ROOT, "tests", "window", "serve.ts");
/** Beside the modules that it needs as they are. */
const BUNDLED = join(ROOT, "out", "tests", "serve.mjs");

/** The host of the stories in one file: it starts in a third of the time, and a test starts it hundreds of times. */
export async function bundledHost(): Promise<string> {
  await build({
    input: HOST,
    platform: "node",
    external: ["better-sqlite3", "pdfkit", "rolldown", "vite"],
    output: { file: BUNDLED, format: "es", codeSplitting: false },
    logLevel: "silent",
  });
  return BUNDLED;
}

/** A loopback host in a process of its own, as a page that was let in sees it. */
export interface KilledHost {
  /** Asks as a page does; rejects where the host has gone before it answered. */
  ask<N extends CallName>(name: N, argument: Argument<N>): Promise<Outcome<Answer<N>>>;
  /** Kills it so many milliseconds from now, and resolves when it has gone. */
  killAfter(ms: number): Promise<void>;
}

/** Starts the host on a library and lets a page in; null where it was killed before it served. */
export async function startKilled(program: string, folder: string, killMs: number | null): Promise<KilledHost | null> {
  const host = spawn(process.execPath, [program, ROOT, folder], { stdio: ["pipe", "pipe", "pipe"] });
  const ended = once(host, "exit");
  let complaint = "";
  host.stderr.on("data", (piece) => {
    complaint += piece;
  });
  if (killMs !== null) setTimeout(() => host.kill("SIGKILL"), killMs);
  const line = await Promise.race([once(createInterface(host.stdout), "line"), ended.then(() => null)]);
  if (line === null) return fromKilled(host, complaint);
  const { port, origin, pathname, search } = new URL(String(line[0]));
  const come = await send(Number(port), pathname + search).catch(() => null);
  if (!come) return ended.then(() => fromKilled(host, complaint));
  const cookie = come.headers["set-cookie"]![0]!.split(";")[0]!;
  const headers = { cookie, origin, "content-type": "application/json" };
  return {
    ask: async (name, argument) => {
      const body = JSON.stringify(argument);
      const reply = await send(Number(port), `/call/${name}`, { method: "POST", headers, body });
      return JSON.parse(reply.body);
    },
    killAfter: async (ms) => {
      await wait(ms);
      host.kill("SIGKILL");
      await ended;
    },
  };
}

/** A host that ended by itself is a fault; one that was killed is what was asked for. */
function fromKilled(host: ChildProcess, complaint: string): null {
  if (host.signalCode !== "SIGKILL") throw new Error(`the host ended by itself: ${complaint}`);
  return null;
}
