import { type BrowserWindow, dialog } from "electron";
import { TROUBLE_NAMES } from "../../core/base/words/window.ts";
import { mayReload } from "./reloads.ts";

/**
 * Brings a page back that was lost or hangs. What was on the bench is in the library, so a reload shows it again; a page
 * that fails over and over is left to the person. `lost` is told of each.
 */
export function recoverPage(window: BrowserWindow, now: () => Date, lost: (fault: Error) => void): void {
  let reloads: readonly Date[] = [];
  const reload = (): void => {
    reloads = [...reloads, now()];
    window.webContents.reload();
  };
  window.webContents.on("render-process-gone", async (_event, { reason, exitCode }) => {
    if (reason === "clean-exit" || window.isDestroyed()) return;
    lost(new Error(`the page was lost: ${reason}, ${exitCode}`));
    if (mayReload(reloads, now())) return reload();
    const again = await asked(window, TROUBLE_NAMES.gone, [TROUBLE_NAMES.tryAgain, TROUBLE_NAMES.close]);
    if (window.isDestroyed()) return;
    if (again) reload();
    else window.destroy();
  });
  window.on("unresponsive", async () => {
    const again = await asked(window, TROUBLE_NAMES.stuck, [TROUBLE_NAMES.tryAgain, TROUBLE_NAMES.wait]);
    if (!again || window.isDestroyed()) return;
    // A page that hangs does not let go by itself; losing it brings it back by the way above.
    window.webContents.forcefullyCrashRenderer();
  });
}

/** True where the person took the first of the answers. */
async function asked(window: BrowserWindow, message: string, buttons: [string, string]): Promise<boolean> {
  const { response } = await dialog.showMessageBox(window, {
    type: "warning",
    message,
    buttons,
    defaultId: 0,
    cancelId: 1,
    noLink: true,
  });
  return response === 0;
}
