/** Words of the window's own menu and of what it asks by itself. */
export const WINDOW_NAMES = {
  program: "Wirefathom",
  file: "File",
  openFile: "Open a file...",
  saveCopy: "Save a copy...",
  print: "Print...",
  quit: "Quit",
  edit: "Edit",
  undo: "Undo",
  redo: "Redo",
  cut: "Cut",
  copy: "Copy",
  paste: "Paste",
  selectAll: "Select all",
  find: "Find...",
  view: "View",
  fit: "Fit the page",
  actualSize: "Actual size",
  fullScreen: "Full screen",
  circuitFiles: "Circuits",
  allFiles: "All files",
} as const;

/** What the window says where the page in it fails, with what can be done about it. */
export const TROUBLE_NAMES = {
  gone: "The window's contents failed several times. Everything you changed is in the library.",
  stuck: "The window does not answer. Everything you changed until a second ago is in the library.",
  tryAgain: "Load it again",
  wait: "Wait",
  close: "Close",
} as const;
