import type { HelpPage } from "./page.ts";
import { REFERENCE_HELP } from "./reference.ts";
import { VIEW_HELP } from "./views.ts";
import { WORK_HELP } from "./work.ts";

const ABOUT = {
  about: {
    title: "About Wirefathom",
    also: "version, licence, third party, open source, privacy, where is my library",
    blocks: [
      "Nothing leaves this computer: no account, no count of users, no look for updates, no page of the web. The program opens no connection but the one between itself and its own window, and one to the server of a shared library where you chose that.",
    ],
  },
} as const satisfies Readonly<Record<string, HelpPage>>;

/** Every page of the help by its topic. */
export const HELP = { ...WORK_HELP, ...VIEW_HELP, ...REFERENCE_HELP, ...ABOUT } as const;
/** What there is a page of help for. */
export type HelpTopic = keyof typeof HELP;

/** The pages in the order of the list, by heading. */
export const HELP_ORDER: readonly { readonly title: string; readonly topics: readonly HelpTopic[] }[] = [
  { title: "To begin", topics: ["start", "before", "library", "bench"] },
  { title: "To draw", topics: ["draw", "editor", "printed", "circuit"] },
  { title: "To find the fault", topics: ["works", "order", "readings", "suspects", "job"] },
  { title: "To look closer", topics: ["branch", "table", "instruments", "shares", "faults", "condition", "list"] },
  { title: "To teach and to learn", topics: ["class", "cupboard", "handins", "learner"] },
  { title: "To hand on", topics: ["print", "export", "files"] },
  { title: "To look up", topics: ["states", "symbols", "glossary", "trouble", "about"] },
];

/** Words of the window that the help stands in. */
export const HELP_WORDS = {
  help: "Help",
  search: "Search the help",
  example: "floating, plug, hand-in",
  none: "Nothing in the help says that. Try one word, as it stands on the screen.",
  pages: "Pages of the help",
  keys: "All keys and commands",
  before: "Before you probe",
  version: "Version",
  runsOn: "Runs on",
  library: "Your library",
  reports: "Reports of faults",
  licence: "Wirefathom is free to use, change and pass on, under the MIT licence.",
  others: "What others made and this program holds",
  othersAbout: "Each under its own licence; press one to read it.",
  noOthers: "The list is made when the program is built, and is not here.",
  alwaysFed: "a bar under the sign: no switch can take the feed off",
} as const;

/** What each wire state means, in the order they are listed. */
export const STATE_HELP = {
  powered: "Joined to the feed through wires, good fuses and closed contacts alone. A lamp to ground lights fully.",
  "powered-through-load": "Fed only through a load or a resistance. A meter may show full volts; a lamp pulls it down.",
  grounded: "Joined to the battery’s negative post through wires and closed contacts alone.",
  "grounded-through-load": "Reaches ground only through a load.",
  between: "Loads on both sides: a volt in the middle.",
  floating: "Joined to neither side. A meter shows 0 V, as on a ground; a lamp to the feed tells them apart.",
  clash: "Joined firmly to feed and ground at once, or to two different feeds: a dead short. A fuse melts.",
  undecided: "It hangs on a module output that is not set, or a relay chatters.",
} as const;
