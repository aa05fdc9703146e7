import { BrowserWindow, screen } from "electron";
import { WINDOW_NAMES } from "../../core/base/words/window.ts";
import type { Classroom } from "../answers/host.ts";
import { PAGE_ADDRESS } from "../protocol.ts";
import { webPreferences } from "../window.ts";

/** Size of a class window where there is no second screen to fill. */
const SIZE = { width: 1280, height: 720 } as const;

/** What a class sees: one window on the screen that the program's window is not on, else that window over its whole screen. */
export function classroomOf(isDeveloped: boolean, main: () => BrowserWindow | null): Classroom {
  let shown: BrowserWindow | null = null;
  const openWindow = (id: string): void => {
    const other = otherScreen(main());
    const opened = new BrowserWindow({
      ...(other ? { ...other.bounds, fullscreen: true } : SIZE),
      title: WINDOW_NAMES.classView,
      autoHideMenuBar: true,
      // It only shows what the other window hands it, and has nothing to ask of the host.
      webPreferences: webPreferences(null, isDeveloped),
    });
    opened.once("closed", () => {
      shown = null;
    });
    shown = opened;
    opened.loadURL(`${PAGE_ADDRESS}class.html#${id}`).catch(() => opened.destroy());
  };
  return {
    open: ({ id, where }) => {
      if (where === "window" || (where === "any" && otherScreen(main()) !== null)) {
        if (shown) shown.focus();
        else openWindow(id);
        return "window";
      }
      main()?.setFullScreen(true);
      return "here";
    },
    close: () => {
      shown?.destroy();
      const window = main();
      if (window?.isFullScreen()) window.setFullScreen(false);
    },
  };
}

/** A screen beside the one that the window stands on; null where there is none. */
function otherScreen(window: BrowserWindow | null): Electron.Display | null {
  const own = window && screen.getDisplayMatching(window.getBounds());
  return screen.getAllDisplays().find(({ id }) => id !== own?.id) ?? null;
}
