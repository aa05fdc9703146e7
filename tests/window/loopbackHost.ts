import { spawn } from "node:child_process";
import { once } from "node:events";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { createInterface } from "node:readline";
import type { BrowserContext } from "@playwright/test";
import { NO_NETWORK, ROOT } from "./machine.ts";
import type { OpenProgram } from "./opened.ts";

/** Serves the library in a folder, or the one that `env` names, from a process of its own, and opens its page in a browser. */
export async function openLoopback(
  context: BrowserContext,
  folder: string,
  file: string | null,
  env: Readonly<Record<string, string>> = {},
): Promise<OpenProgram> {
  const words = [
    "--require",
    NO_NETWORK,
    join(import.meta.dirname, "serve.ts"),
    ROOT,
    folder,
    ...(file === null ? [] : [file]),
  ];
  const server = spawn(process.execPath, words, { stdio: ["pipe", "pipe", "pipe"], env: { ...process.env, ...env } });
  let complaint = "";
  server.stderr.on("data", (piece) => {
    complaint += piece;
  });
  const ended = once(server, "exit");
  const address = await Promise.race([
    once(createInterface(server.stdout), "line").then(([line]) => String(line)),
    ended.then(() => Promise.reject(new Error(`the host ended: ${complaint}`))),
  ]);
  const page = await context.newPage();
  await page.goto(address);
  return {
    engine: `Chromium ${context.browser()?.version()}`,
    page,
    app: null,
    close: async () => {
      await page.close();
      server.kill("SIGTERM");
      const [code] = await ended;
      if (code !== 0) throw new Error(`the host met a fault: ${complaint}`);
    },
    kill: async () => {
      server.kill("SIGKILL");
      await ended;
      await page.close();
    },
    saved: async (act) => {
      const [download] = await Promise.all([page.waitForEvent("download"), act()]);
      return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
    },
    chooses: async (chosen, act) => {
      const [chooser] = await Promise.all([page.waitForEvent("filechooser"), act()]);
      await chooser.setFiles(chosen);
    },
  };
}
