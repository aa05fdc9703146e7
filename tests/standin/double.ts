/** Everything that the program and the driver of tests take from Electron. */
export { app } from "./app.ts";
export { webContents } from "./contents.ts";
export { dialog } from "./dialog.ts";
export { ipcMain } from "./ipc.ts";
export { Menu } from "./menu.ts";
export { protocol } from "./scheme.ts";
export { session } from "./session.ts";
export { standin } from "./stage.ts";
export { BrowserWindow, screen } from "./window.ts";
