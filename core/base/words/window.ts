/** Words of the window's own menu and of what it asks by itself. */
export const WINDOW_NAMES = {
  program: "Wirefathom",
  file: "File",
  openFile: "Open a file...",
  saveCopy: "Save a copy...",
  saveJob: "Save the job to a file...",
  takeHome: "Take-home page...",
  export: "Export...",
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
  classView: "Class view",
  help: "Help",
  helpNow: "Help on this view",
  before: "Before you probe",
  about: "About Wirefathom",
  keys: "Keys and commands",
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

/** What is told in the terminal of a request that was refused. */
export const REFUSED_WORDS = {
  one: "{time} refused: {reason}",
  more: "{count} more were refused and are not listed.",
  waited: "a connection that asked for nothing while many waited",
  tooMany: "a connection, since there are too many",
} as const;

/** What a start says in the terminal. */
export const START_NAMES = {
  building: "Building the window from its sources; this is done once.",
  notBuilt: "The window could not be built:",
  fetching: "Fetching Electron, which is done once and given up after {seconds} s.",
  notFetched: "Electron is not there, so the window opens in a browser. To fetch it later: npx install-electron",
  notStarted: "Electron does not run here, so the window opens in a browser.",
  report: "The report of it: {file}",
  address: "Wirefathom is open at {address}\nThe address works once, in one browser. Ctrl+C here ends Wirefathom.",
  running: "Wirefathom runs already. A new address for it, which works once: {address}",
} as const;
