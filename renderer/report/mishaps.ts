import { REPORT_WORDS } from "../../core/base/words/report.ts";
import { namesOf } from "../../core/edit/history.ts";
import { type Mishap, reportText, saidAndAt } from "../../schemas/mishap.ts";
import type { Host } from "../host/host.ts";
import type { Action } from "../state/action.ts";
import type { AppState } from "../state/state.ts";
import type { AppStore, Reaction } from "../state/store.ts";

/** Takes down faults of the program itself, and remembers what was done before. */
export interface Mishaps {
  readonly reaction: Reaction;
  /** Takes one down, unless it is one of those just taken down. */
  note(error: unknown, where: "page" | "worker"): void;
}

const MOST_DONE = 30;
/** A fault that comes with every frame is told of so often in the life of a page, and each only once. */
const MOST_TOLD = 8;

/** What happens by itself, or says nothing of what a person did. */
const UNNOTED: ReadonlySet<Action["do"]> = new Set([
  "hover",
  "look-at",
  "pass-time",
  "say",
  "asked",
  "ordered",
  "proven",
  "tabled",
  "judged",
  "shared",
  "sneaks-found",
  "jumped",
  "paged",
  "pictured",
  "shelved",
  "jobs-listed",
  "samples-listed",
  "attempts-listed",
  "stored",
  "saving",
  "settled",
  "about-told",
  "mishap",
]);

/**
 * Faults of a page: each is brought to the host, which keeps its report and gives it back to be shown. Where the host is gone, the
 * page writes the report itself.
 */
export function mishapsOf(host: Host, store: () => AppStore, now: () => Date): Mishaps {
  let done: readonly string[] = [];
  const told = new Set<string>();
  const note = (error: unknown, where: "page" | "worker"): void => {
    const mishap = mishapIn(store().getState(), error, where, done);
    const sign = mishap.said + mishap.at;
    if (told.has(sign) || told.size >= MOST_TOLD) return;
    told.add(sign);
    const alone = { text: reportText(mishap, { version: "", runsOn: "", when: now() }), file: null };
    host
      .ask("reports.keep", mishap)
      .then((answer) => (answer.ok ? answer.value : alone))
      .catch(() => alone)
      .then((report) => store().dispatch({ do: "mishap", report }));
  };
  return {
    note,
    reaction: (action, state) => {
      if (!UNNOTED.has(action.do)) done = [doneAs(action, state), ...done].slice(0, MOST_DONE);
      if (action.do === "worker-troubled") note(action.fault, "worker");
    },
  };
}

/** The name of what was done; of an edit also what kind it was, which is the first word of its name. */
function doneAs(action: Action, { open }: AppState): string {
  const [kind] = action.do === "make" && open ? (namesOf(open.desk).undo ?? "").split(" ") : [];
  if (action.do === "open-panel") return `${action.do} ${action.panel}`;
  return kind ? `${action.do} ${kind}` : action.do;
}

function mishapIn(state: AppState, error: unknown, where: Mishap["where"], did: readonly string[]): Mishap {
  const { said, at } = saidAndAt(error);
  return {
    where,
    said: withoutWords(said, state),
    at,
    did: [...did],
    counts: countsOf(state),
    shown: navigator.userAgent,
  };
}

/** How much was open: how large a circuit, never what is in it. */
function countsOf({ open, learning, shelf }: AppState): Mishap["counts"] {
  if (learning) return { exercise: 1, moves: learning.attempt.route.length };
  if (!open) return { "circuits in the library": shelf.count };
  const { circuit, faults, readings } = open.desk.bench;
  const { pages, parts, wires, connectors, checks, scenes } = circuit;
  return {
    pages: pages.length,
    parts: parts.length,
    wires: wires.length,
    connectors: connectors.length,
    checks: checks.length,
    scenes: scenes.length,
    faults: faults.length,
    readings: readings.length,
  };
}

/** Shorter words than this are no secret, and would leave holes in every sentence; designators are told apart. */
const LEAST_WORD = 3;
const DESIGNATOR = /^[A-Z]\d$/;

/**
 * What a fault said without anything that stands on the bench: a message may name a part or quote a label. Of an exercise nothing is
 * told but the kind of fault, since its message could name what is hidden.
 */
export function withoutWords(
  said: string,
  { open, learning, handins }: Pick<AppState, "open" | "learning" | "handins">,
): string {
  if (learning || handins.isShown) return said.replace(/:.*$/s, "");
  if (!open) return said;
  const words = [...wordsIn(open.desk.bench)].filter((word) => said.includes(word));
  // The longest first: a label may stand within another one.
  const longestFirst = words.toSorted((one, other) => other.length - one.length);
  return longestFirst.reduce((text, word) => text.replaceAll(word, REPORT_WORDS.leftOut), said);
}

function wordsIn(value: unknown, found: Set<string> = new Set()): Set<string> {
  if (typeof value === "string") {
    if (value.length >= LEAST_WORD || DESIGNATOR.test(value)) found.add(value);
  } else if (typeof value === "object" && value !== null) {
    for (const [name, inner] of Object.entries(value)) {
      // Places stand under the designators of their parts.
      if (!Array.isArray(value) && /\d/.test(name)) wordsIn(name, found);
      wordsIn(inner, found);
    }
  }
  return found;
}

/** Browsers tell of this where a measured thing is measured again in the same frame; nothing is wrong. */
const HARMLESS = /^ResizeObserver loop/;

/** Takes down what nothing in the page caught. */
export function heedMishaps(page: Window, mishaps: Pick<Mishaps, "note">): void {
  page.addEventListener("error", ({ error, message }) => {
    if (!HARMLESS.test(message)) mishaps.note(error ?? message, "page");
  });
  page.addEventListener("unhandledrejection", ({ reason }) => mishaps.note(reason, "page"));
}

/** A worker whose uncaught faults are taken down; whoever asks it hears of them as well. */
export function watched(worker: Worker, mishaps: Pick<Mishaps, "note">): Worker {
  worker.addEventListener("error", ({ message, filename, lineno, colno }) => {
    const error = new Error(message || "the worker could not be loaded");
    error.stack = `\n    at ${filename || "a worker"}:${lineno}:${colno}`;
    mishaps.note(error, "worker");
  });
  return worker;
}
