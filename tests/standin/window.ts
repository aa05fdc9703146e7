import { EventEmitter } from "node:events";
import { isPrevented, windowGone } from "./app.ts";
import { type Preferences, WebContents } from "./contents.ts";
import { stage } from "./stage.ts";

const SCREEN = { x: 0, y: 0, width: 1920, height: 1080 };

/** The one screen there is. */
const ONLY = { id: 1, workArea: SCREEN, bounds: SCREEN };
export const screen = { getAllDisplays: () => [ONLY], getDisplayMatching: () => ONLY };

/** What a window is made with, as far as the double heeds it. */
interface Options {
  readonly x?: number;
  readonly y?: number;
  readonly width?: number;
  readonly height?: number;
  readonly webPreferences: Preferences;
}

/** Tells a page that it is hidden, as Electron does when its window hides. */
const HIDDEN = `Object.defineProperty(document, "visibilityState", { value: "hidden", configurable: true });
  document.dispatchEvent(new Event("visibilitychange"));`;

/** A window, as far as it can be had without a desktop. */
export class BrowserWindow extends EventEmitter {
  readonly webContents: WebContents;
  readonly #bounds: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
  #isMaximized = false;
  #isVisible = false;
  #isFullScreen = false;

  constructor({ x = 100, y = 100, width = 800, height = 600, webPreferences }: Options) {
    super();
    const { contextIsolation, sandbox, nodeIntegration } = webPreferences;
    if (!contextIsolation || !sandbox || nodeIntegration)
      throw new Error("the stand-in shows no page with more rights");
    this.#bounds = { x, y, width, height };
    this.webContents = new WebContents(webPreferences, { width, height });
    this.webContents.once("did-finish-load", () => this.emit("ready-to-show"));
    this.webContents.on("standin-close", () => this.close());
    stage.windows.add(this);
  }

  static getAllWindows(): readonly BrowserWindow[] {
    return [...stage.windows] as BrowserWindow[];
  }
  static fromWebContents(contents: WebContents): BrowserWindow | null {
    return BrowserWindow.getAllWindows().find((window) => window.webContents === contents) ?? null;
  }

  loadURL = (address: string): Promise<void> => this.webContents.loadURL(address);
  focus(): void {
    this.emit("focus");
  }
  show(): void {
    this.#isVisible = true;
  }
  hide(): void {
    this.#isVisible = false;
    // A page that was lost has nothing to hide.
    this.webContents.executeJavaScript(HIDDEN).catch(() => {});
  }
  isVisible = (): boolean => this.#isVisible;
  isMinimized = (): boolean => false;
  restore(): void {}
  maximize(): void {
    this.#isMaximized = true;
  }
  isMaximized = (): boolean => this.#isMaximized;
  setFullScreen(isFull: boolean): void {
    this.#isFullScreen = isFull;
  }
  isFullScreen = (): boolean => this.#isFullScreen;
  getNormalBounds = () => this.#bounds;
  getBounds = () => this.#bounds;
  isDestroyed = (): boolean => !stage.windows.has(this);

  /** As a person closes it; false where the program would not have it closed. */
  close(): boolean {
    if (isPrevented("close", this)) return false;
    this.destroy();
    return true;
  }
  destroy(): void {
    if (!stage.windows.delete(this)) return;
    void this.webContents.destroy();
    this.emit("closed");
    windowGone();
  }
}
