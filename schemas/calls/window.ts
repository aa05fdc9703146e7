import { z } from "zod";
import { settingsShape } from "../settings.ts";
import { type Call, circuitId, nothing, refusal } from "./call.ts";
import { circuitRow } from "./circuits.ts";

/** What the window's own menu can ask of the page. The page has a control of its own for each. */
export const MENU_COMMANDS = [
  "open-file",
  "save-copy",
  "save-job",
  "take-home",
  "export",
  "print",
  "undo",
  "redo",
  "find",
  "fit",
  "actual-size",
  "class",
  "help",
  "before",
  "about",
  "keys",
] as const;
/** An entry of the window's menu. */
export type MenuCommand = (typeof MENU_COMMANDS)[number];

/** What can be in front in the page: the library, a circuit, an exercise, or an instructor's desk over either. */
export const FRONTS = ["library", "bench", "learner", "desk"] as const;
/** What is in front now. */
export type Front = (typeof FRONTS)[number];

/** What can be asked of any page. */
const ALWAYS = ["help", "before", "about"] as const satisfies readonly MenuCommand[];

/** What the menu can ask of the page while that is in front; all else would do nothing. */
export const MENU_WITH: Readonly<Record<Front, readonly MenuCommand[]>> = {
  library: ["open-file", "keys", ...ALWAYS],
  bench: MENU_COMMANDS,
  learner: ["open-file", "save-copy", "find", "fit", "actual-size", "keys", ...ALWAYS],
  desk: ALWAYS,
};

const windowRequest = z.union([
  /** A file came from the desktop and is in the library now: bring it to the bench. */
  z.strictObject({ ask: z.literal("open"), id: circuitId }),
  /** A job file came from the desktop: the page takes it up. */
  z.strictObject({ ask: z.literal("job"), name: z.string(), text: z.string() }),
  /** An exercise came from the desktop: the page opens it. */
  z.strictObject({ ask: z.literal("exercise"), name: z.string(), text: z.string() }),
  /** A hand-in came from the desktop: it comes onto the instructor's desk. */
  z.strictObject({ ask: z.literal("handin"), name: z.string(), text: z.string() }),
  /** Something to tell the person, as that a file cannot be read. */
  z.strictObject({ ask: z.literal("tell"), refusal }),
  /** The program itself met a fault: its report, and where that lies. */
  z.strictObject({ ask: z.literal("mishap"), text: z.string(), file: z.string().nullable() }),
  z.strictObject({ ask: z.literal("menu"), command: z.enum(MENU_COMMANDS) }),
]);
/** What comes from outside the page while it runs. */
export type WindowRequest = z.infer<typeof windowRequest>;

/** A page that drives a class window, as it names itself: it stands in the address of that window. */
const classId = z.string().regex(/^[\da-z-]{1,40}$/);

/** Calls about the window as a whole. */
export const WINDOW_CALLS = {
  /**
   * What to show first. Refuses where the library cannot be opened (`store-...`); asking again tries again. Samples and
   * printing work without it.
   */
  start: {
    argument: nothing,
    answer: z.strictObject({
      version: z.string(),
      host: z.enum(["electron", "loopback"]),
      /** Which library it is: on this machine, or the name of one that is shared on a server. */
      library: z.strictObject({ where: z.enum(["here", "server"]), name: z.string() }),
      settings: settingsShape,
      /** Circuits in the library. */
      count: z.int(),
      /** Circuits opened last, newest first; 12 at most. */
      recent: z.array(circuitRow),
      /** The circuit to bring to the bench: a file given at start, else what was open when the program ended. */
      open: circuitId.nullable(),
      /** The exercise to bring to the bench in its place: the file given at start, or the id of the one that was worked on last. */
      exercise: z
        .union([z.strictObject({ name: z.string(), text: z.string() }), z.strictObject({ id: z.string() })])
        .nullable(),
      /** What the person must be told once, as that the library was put right from a copy. */
      notices: z.array(refusal),
    }),
  },
  /**
   * Waits until something comes from outside the page, 25 seconds at most; then null, and the page asks again. Only the
   * host `electron` has such; a page in a browser need not ask, since a browser keeps few connections to one host.
   */
  nextRequest: { argument: nothing, answer: z.strictObject({ request: windowRequest.nullable() }) },
  /** Says what is in front, for a host whose window has a menu of its own. */
  "window.front": { argument: z.strictObject({ front: z.enum(FRONTS) }), answer: nothing },
  /**
   * Shows what the class sees: on a second screen where there is one (`any`), in a window of its own, or in this window
   * over the whole screen (`here`). `id` is that of the page the class window is driven by. The host `loopback` has no
   * windows of its own: its page opens what it can.
   */
  "class.open": {
    argument: z.strictObject({ id: classId, where: z.enum(["any", "window", "here"]) }),
    answer: z.strictObject({ shown: z.enum(["window", "here", "page"]) }),
  },
  /** Takes the class window away, and this window back from the whole screen. */
  "class.close": { argument: nothing, answer: nothing },
} as const satisfies Readonly<Record<string, Call>>;
