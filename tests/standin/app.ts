import { EventEmitter } from "node:events";
import { existsSync, readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { takeLock } from "./lock.ts";
import { stage } from "./stage.ts";

const ready = Promise.withResolvers<void>();
const paths = new Map<string, string>();
let isQuitting = false;

/** The program as a whole. */
export const app = Object.assign(new EventEmitter(), {
  isPackaged: false,
  /** What the driver of tests switches on is Chromium's, which runs already. */
  commandLine: { appendSwitch: (): void => {} },
  isReady: (): boolean => stage.isReady,
  whenReady: (): Promise<void> => ready.promise,
  enableSandbox: (): void => before("enableSandbox"),
  getAppPath: (): string => stage.root,
  getVersion: (): string => JSON.parse(readFileSync(join(stage.root, "package.json"), "utf8")).version,
  getPath: (name: string): string => paths.get(name) ?? tmpdir(),
  setPath: (name: string, path: string): void => {
    before("setPath");
    if (!existsSync(path)) throw new Error(`there is no folder ${path}`);
    paths.set(name, path);
  },
  requestSingleInstanceLock: (data: unknown): boolean =>
    takeLock(app.getPath("userData"), { words: process.argv, folder: process.cwd(), data }, (second) =>
      app.emit("second-instance", {}, second.words, second.folder, second.data),
    ),
  /** Closes the windows and ends, unless a window or the program would not. */
  quit: (): void => {
    isQuitting = true;
    for (const window of [...stage.windows]) if (!window.close()) isQuitting = false;
    if (isQuitting && !isPrevented("will-quit")) app.exit(0);
    isQuitting = false;
  },
  exit: (code = 0): void => {
    process.exit(code);
  },
});

/** Says that Chromium is there. The event comes first: the driver of tests holds it back until it is there itself. */
export function becomeReady(): void {
  stage.isReady = true;
  app.emit("ready", {});
  ready.resolve();
}

/** Told by a window that is gone; the last one is an event, but where the whole program goes. */
export function windowGone(): void {
  if (stage.windows.size === 0 && !isQuitting) app.emit("window-all-closed");
}

/** True where somebody who hears of an event would not have it. */
export function isPrevented(name: string, from: EventEmitter = app, about: object = {}): boolean {
  let prevented = false;
  const preventDefault = (): void => {
    prevented = true;
  };
  from.emit(name, { ...about, preventDefault });
  return prevented;
}

function before(what: string): void {
  if (stage.isReady) throw new Error(`${what} must be called before the program is ready`);
}
