import type { MenuItemConstructorOptions } from "electron";
import { WINDOW_NAMES as WORDS } from "../core/base/words/window.ts";
import type { MenuCommand } from "../schemas/calls/window.ts";

type Items = MenuItemConstructorOptions[];

/**
 * The window's menu. Keys of the page's own commands are shown but not taken: the page hears them itself, in a browser
 * too. There is no zoom and no reload of the page, since plus, minus and 0 belong to the drawing.
 */
export function menuTemplate(platform: string, send: (command: MenuCommand) => void): Items {
  const command = (label: string, name: MenuCommand, accelerator?: string): MenuItemConstructorOptions => ({
    label,
    ...(accelerator !== undefined && { accelerator, registerAccelerator: false }),
    click: () => send(name),
  });
  const isMac = platform === "darwin";
  const file: Items = [
    command(WORDS.openFile, "open-file", "CmdOrCtrl+O"),
    command(WORDS.saveCopy, "save-copy", "CmdOrCtrl+Shift+S"),
    command(WORDS.saveJob, "save-job"),
    { type: "separator" },
    command(WORDS.print, "print", "CmdOrCtrl+P"),
    ...(isMac ? [] : ([{ type: "separator" }, { role: "quit", label: WORDS.quit }] satisfies Items)),
  ];
  const edit: Items = [
    command(WORDS.undo, "undo", "CmdOrCtrl+Z"),
    command(WORDS.redo, "redo", isMac ? "Shift+Cmd+Z" : "Ctrl+Y"),
    { type: "separator" },
    { role: "cut", label: WORDS.cut },
    { role: "copy", label: WORDS.copy },
    { role: "paste", label: WORDS.paste },
    { role: "selectAll", label: WORDS.selectAll },
    { type: "separator" },
    command(WORDS.find, "find", "CmdOrCtrl+F"),
  ];
  const view: Items = [
    command(WORDS.fit, "fit"),
    command(WORDS.actualSize, "actual-size"),
    { type: "separator" },
    { role: "togglefullscreen", label: WORDS.fullScreen },
  ];
  return [
    ...(isMac ? ([{ role: "appMenu" }] satisfies Items) : []),
    { label: WORDS.file, submenu: file },
    { label: WORDS.edit, submenu: edit },
    { label: WORDS.view, submenu: view },
    ...(isMac ? ([{ role: "windowMenu" }] satisfies Items) : []),
    { label: WORDS.help, role: "help", submenu: [command(WORDS.keys, "keys", "F1")] },
  ];
}
