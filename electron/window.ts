import { BrowserWindow, screen, type WebPreferences } from "electron";
import { WINDOW_NAMES } from "../core/base/words/window.ts";
import { PAGE_ADDRESS } from "./protocol.ts";
import type { SettingShelf } from "./store/library.ts";
import { keepPlace, keptPlace } from "./window/place.ts";
import { recoverPage } from "./window/recovery.ts";

const FIRST_SIZE = { width: 1280, height: 800 } as const;
const LEAST_SIZE = { minWidth: 760, minHeight: 520 } as const;
/** How long a page that is being closed has to hand over its last edit, in milliseconds. */
const LAST_EDIT_MS = 500;

/**
 * What the page in a window may do: nothing of the machine, and without a preload not even ask the host. Said in full, though
 * much is Electron's own choice too.
 */
export function webPreferences(preload: string | null, isDeveloped: boolean): WebPreferences {
  return {
    ...(preload !== null && { preload }),
    contextIsolation: true,
    sandbox: true,
    nodeIntegration: false,
    nodeIntegrationInWorker: false,
    nodeIntegrationInSubFrames: false,
    webSecurity: true,
    webviewTag: false,
    navigateOnDragDrop: false,
    spellcheck: false,
    devTools: isDeveloped,
  };
}

/** What a window is opened with. */
export interface WindowWish {
  readonly preload: string;
  readonly isDeveloped: boolean;
  /** Settings of the library, where it is open: they know where the window was. */
  readonly settings: SettingShelf | null;
  now(): Date;
  /** Told that the page was lost. */
  lost(fault: Error): void;
}

/** Opens the window where it was left; it is shown once the first picture of its page stands. */
export async function openWindow(wish: WindowWish): Promise<BrowserWindow> {
  const { preload, isDeveloped, settings, now, lost } = wish;
  const areas = screen.getAllDisplays().map((display) => display.workArea);
  const place = settings && (await keptPlace(settings, areas));
  const { isMaximized, ...bounds } = place ?? { ...FIRST_SIZE, isMaximized: false };
  const window = new BrowserWindow({
    ...bounds,
    ...LEAST_SIZE,
    show: false,
    title: WINDOW_NAMES.program,
    webPreferences: webPreferences(preload, isDeveloped),
  });
  window.once("ready-to-show", () => {
    if (isMaximized) window.maximize();
    window.show();
  });
  if (settings) keepPlaceOf(window, settings);
  closeGently(window);
  recoverPage(window, now, lost);
  // A window without its page is shown all the same: an invisible program could not even be closed.
  window.loadURL(PAGE_ADDRESS).catch(() => window.isDestroyed() || window.show());
  return window;
}

function keepPlaceOf(window: BrowserWindow, settings: SettingShelf): void {
  window.once("close", () => {
    // The library may be closed already, or its disk full: the place is not worth a word.
    keepPlace(settings, { ...window.getNormalBounds(), isMaximized: window.isMaximized() }).catch(() => {});
  });
}

/** Hides the window at once and lets it go a moment later: a page that is hidden saves what it has not saved yet. */
function closeGently(window: BrowserWindow): void {
  window.once("close", (event) => {
    event.preventDefault();
    window.hide();
    setTimeout(() => window.destroy(), LAST_EDIT_MS);
  });
}
