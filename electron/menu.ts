import type { MenuItemConstructorOptions } from "electron";
import { WINDOW_NAMES as WORDS } from "../core/base/words/window.ts";
import { keysOf, type OwnKeys } from "../core/edit/keys/ownKeys.ts";
import type { KeyId } from "../core/edit/keys/rows.ts";
import { type Front, MENU_WITH, type MenuCommand } from "../schemas/calls/window.ts";

type Items = MenuItemConstructorOptions[];

/**
 * The window's menu. Keys of the page's own commands are shown but not taken: the page hears them itself, in a browser
 * too; `own` are those that the person gave. There is no zoom and no reload of the page, since plus, minus and 0 belong to the
 * drawing. What the page can do nothing about is greyed out, by what is in `front` there.
 */
export function menuTemplate(
  platform: string,
  send: (command: MenuCommand) => void,
  own: OwnKeys,
  front: Front,
): Items {
  const isMac = platform === "darwin";
  const command = (label: string, name: MenuCommand, row?: KeyId): MenuItemConstructorOptions => {
    // Where a row has several keys the last is the one of a Mac: Shift Z in place of Y.
    const key = row && keysOf(row, own).at(isMac && row === "redo" ? -1 : 0);
    return {
      label,
      enabled: MENU_WITH[front].includes(name),
      ...(key !== undefined && { accelerator: accelerator(key), registerAccelerator: false }),
      click: () => send(name),
    };
  };
  const file: Items = [
    command(WORDS.openFile, "open-file", "open-file"),
    command(WORDS.saveCopy, "save-copy", "save-file"),
    command(WORDS.saveJob, "save-job"),
    command(WORDS.takeHome, "take-home"),
    command(WORDS.export, "export"),
    { type: "separator" },
    command(WORDS.print, "print", "print"),
    ...(isMac ? [] : ([{ type: "separator" }, { role: "quit", label: WORDS.quit }] satisfies Items)),
  ];
  const edit: Items = [
    command(WORDS.undo, "undo", "undo"),
    command(WORDS.redo, "redo", "redo"),
    { type: "separator" },
    { role: "cut", label: WORDS.cut },
    { role: "copy", label: WORDS.copy },
    { role: "paste", label: WORDS.paste },
    { role: "selectAll", label: WORDS.selectAll },
    { type: "separator" },
    command(WORDS.find, "find", "find"),
  ];
  const view: Items = [
    command(WORDS.fit, "fit", "whole-page"),
    command(WORDS.actualSize, "actual-size", "full-size"),
    { type: "separator" },
    command(WORDS.classView, "class", "class"),
    { role: "togglefullscreen", label: WORDS.fullScreen },
  ];
  return [
    ...(isMac ? ([{ role: "appMenu" }] satisfies Items) : []),
    { label: WORDS.file, submenu: file },
    { label: WORDS.edit, submenu: edit },
    { label: WORDS.view, submenu: view },
    ...(isMac ? ([{ role: "windowMenu" }] satisfies Items) : []),
    {
      label: WORDS.help,
      role: "help",
      submenu: [
        command(WORDS.helpNow, "help", "help"),
        command(WORDS.before, "before"),
        command(WORDS.keys, "keys", "keys"),
        { type: "separator" },
        command(WORDS.about, "about"),
      ],
    },
  ];
}

/** A key as Electron spells it. */
function accelerator(key: string): string {
  return key.replace("Ctrl+", "CmdOrCtrl+").replace(/\+\+$/, "+Plus");
}
