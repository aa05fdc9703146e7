import { spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** Starts Chromium with no window and gives the address of its developers' tools. It ends with this process. */
export function startChromium(program: string): Promise<string> {
  const profile = mkdtempSync(join(tmpdir(), "wirefathom-standin-"));
  const words = [
    "--remote-debugging-port=0",
    "--no-startup-window",
    `--user-data-dir=${profile}`,
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-extensions",
    "--disable-sync",
    // Nothing but the program's own scheme is to be found, whatever a page asks for.
    "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE *.localhost",
    ...(process.env.DISPLAY ? [] : ["--headless"]),
    // Neither root nor a container has a sandbox or much shared memory. Only a test's browser goes without: the program
    // itself never turns a sandbox off.
    "--no-sandbox",
    "--disable-dev-shm-usage",
  ];
  const child = spawn(program, words, { stdio: ["ignore", "ignore", "pipe"] });
  process.once("exit", () => {
    child.kill("SIGKILL");
    try {
      rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
    } catch {}
  });
  return new Promise((resolve, reject) => {
    let said = "";
    child.once("error", reject);
    child.once("exit", (code) => reject(new Error(`Chromium ended with ${code}: ${said}`)));
    child.stderr.on("data", (piece: Buffer) => {
      // The driver of tests reads the address here too, as it does with Electron.
      process.stderr.write(piece);
      said += piece;
      const address = /DevTools listening on (ws:\S+)/.exec(said)?.[1];
      if (address) resolve(address);
    });
  });
}
