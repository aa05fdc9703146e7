import { once } from "node:events";
import { mkdtempSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { _electron, type ElectronApplication } from "@playwright/test";
import { electronProgram } from "../../electron/launch/electron.ts";
import { chromiumProgram, hasElectron, NO_NETWORK, ROOT } from "./machine.ts";
import type { OpenProgram, SavedFile } from "./opened.ts";

/** Where the driver of tests finds Electron's program; it asks for it once. */
if (!hasElectron()) process.env.ELECTRON_OVERRIDE_DIST_PATH = join(ROOT, "tests", "standin");

/** Path of the program that is run. */
export function programOfElectron(): string {
  const program = electronProgram(ROOT, process.env);
  if (program === null) throw new Error("broken invariant: there is Electron or its stand-in");
  return program;
}

/**
 * Opens the program's own window on the library in a folder: in Electron where it is here, else in the stand-in. `root` is the
 * folder of the program, where it is not the project's.
 */
export async function openElectron(folder: string, file: string | null, root = ROOT): Promise<OpenProgram> {
  const { ELECTRON_RUN_AS_NODE: _, ...env } = process.env as Record<string, string>;
  const app = await _electron.launch({
    args: [root, ...(file === null ? [] : [file])],
    // Chromium has no sandbox for root.
    chromiumSandbox: process.getuid?.() !== 0 || !hasElectron(),
    env: {
      ...env,
      // The stand-in runs the program in Node; Electron takes no such option, and its session asks for nothing foreign anyhow.
      ...(!hasElectron() && { NODE_OPTIONS: `--require=${NO_NETWORK}` }),
      WIREFATHOM_DATA: folder,
      STANDIN_CHROMIUM: chromiumProgram() ?? "",
    },
  });
  const ended = once(app.process(), "exit");
  const page = await app.firstWindow();
  return {
    engine: await engineOf(app),
    page,
    app,
    close: async () => {
      // The program may be gone before it can answer.
      await app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.close()).catch(() => {});
      await ended;
    },
    kill: async () => {
      // With the processes that it began.
      process.kill(-app.process().pid!, "SIGKILL");
      await ended;
    },
    saved: (act) => savedBy(app, folder, act),
    chooses: async (path, act) => {
      await app.evaluate(({ dialog }, chosen) => {
        Object.assign(dialog, { showOpenDialog: async () => ({ canceled: false, filePaths: [chosen] }) });
      }, path);
      await act();
    },
  };
}

/** What runs the window, as it says itself: never a stand-in under Electron's name. */
function engineOf(app: ElectronApplication): Promise<string> {
  return app.evaluate((modules) => {
    const { standin } = modules as unknown as { readonly standin?: { readonly chromium: string } };
    return standin ? `stand-in with Chromium ${standin.chromium}` : `Electron ${process.versions.electron}`;
  });
}

/** A person's answer to the dialog is to leave the name as it is, in a folder of the test's own. */
async function savedBy(app: ElectronApplication, folder: string, act: () => Promise<unknown>): Promise<SavedFile> {
  const place = mkdtempSync(join(folder, "saved-"));
  await app.evaluate(({ dialog }, place) => {
    const answer = async (...given: readonly unknown[]) => {
      const { defaultPath } = given.at(-1) as { readonly defaultPath: string };
      return { canceled: false, filePath: `${place}/${defaultPath.split(/[\\/]/).at(-1)}` };
    };
    Object.assign(dialog, { showSaveDialog: answer });
  }, place);
  await act();
  for (;;) {
    const name = readdirSync(place).find((each) => !each.endsWith(".part"));
    if (name !== undefined) return { name, bytes: readFileSync(join(place, name)) };
    await wait(50);
  }
}
