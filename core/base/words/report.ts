/** What is said where the program itself is at fault, in the window and in the report. */
export const REPORT_WORDS = {
  title: "Wirefathom met a fault of its own.",
  kept: "What you changed is kept. Nothing was sent anywhere.",
  show: "Show the report",
  dialog: "Report of a fault",
  about:
    "This is all that the report says. It holds no words, values or pictures of your circuits, and it goes nowhere by itself: send it only if you want to.",
  lies: (file: string) => `It is also kept on this computer: ${file}`,
  notKept: "It could not be kept on this computer. Save it here if you want it.",
  save: "Save it as a file",
  copy: "Copy",
  copied: "Copied.",
  close: "Close",
  again: "Load it again",
  library: "Back to the library",
  failed: "Wirefathom met a fault of its own",
  failedAbout:
    "Everything you changed is in the library. Load it again, or go back to the library and open it from there.",

  head: (version: string) => `Wirefathom ${version} met a fault of its own`,
  where: {
    page: "in the page",
    worker: "beside the page, where it computes",
    window: "in the window: the page in it was lost or hung",
    program: "in the program behind the page",
  },
  rows: {
    when: "When",
    where: "Where",
    runsOn: "Runs on",
    shown: "Shown by",
    said: "It said",
    at: "At",
    did: "Done last, newest first",
    counts: "Open then",
  },
  nothing: "nothing",
  nowhere: "no place was told",
  leftOut: "[left out]",
  foot: "No words, values or pictures of a circuit are in this report. Nothing was sent. What was changed is in the library.",
} as const;
