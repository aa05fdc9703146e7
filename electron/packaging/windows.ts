import { FILE_KINDS } from "./fileKinds.ts";

/** Name of the script beside the program that says to Windows which files it opens. */
export const REGISTER = "register-files.cmd";

/**
 * A script that the person runs, once and again after the folder was moved: for this person alone it makes `.wirefathom` files
 * the program's own and has it offered for `.json` files. Windows knows a kind of file by the last part of its name alone.
 */
export function registerScript(): string {
  const classes = "HKCU\\Software\\Classes";
  const open = '/ve /t REG_SZ /d "\\"%~dp0Wirefathom.exe\\" \\"%%1\\"" /f';
  const own = FILE_KINDS.filter(({ ending }) => !ending.includes("."));
  const lines = [
    "@echo off",
    "rem Tells Windows, for this person alone, which files Wirefathom opens. Run it again after moving the folder.",
    ...own.flatMap(({ ending, words }) => [
      `reg add "${classes}\\.${ending}" /ve /t REG_SZ /d "Wirefathom.${ending}" /f`,
      `reg add "${classes}\\Wirefathom.${ending}" /ve /t REG_SZ /d "${words}" /f`,
      `reg add "${classes}\\Wirefathom.${ending}\\DefaultIcon" /ve /t REG_SZ /d "%~dp0Wirefathom.exe,0" /f`,
      `reg add "${classes}\\Wirefathom.${ending}\\shell\\open\\command" ${open}`,
    ]),
    `reg add "${classes}\\Applications\\Wirefathom.exe\\SupportedTypes" /v .json /t REG_SZ /d "" /f`,
    `reg add "${classes}\\Applications\\Wirefathom.exe\\shell\\open\\command" ${open}`,
    "pause",
  ];
  return `${lines.join("\r\n")}\r\n`;
}
