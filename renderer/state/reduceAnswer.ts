import type { OrderAnswer } from "../workers/question.ts";
import { readBench } from "./benchText.ts";
import { copied } from "./copied.ts";
import type { Asked, Remaining } from "./hostAction.ts";
import { deskWith, openFor, standing, VERSIONS_SHOWN } from "./openBench.ts";
import { opensKey, picturesOf, type Shelf } from "./shelf.ts";
import type { AppState, Asking, Open } from "./state.ts";
import { succeeded } from "./succeeded.ts";

/** The state after an answer of host or worker, or after a wish about the library. */
export function reduceAnswer(state: AppState, action: Remaining): AppState {
  switch (action.do) {
    case "opened": {
      const { id, version, benchVersion, circuit, bench, isBenchOlder } = action.opened;
      const open = readBench(circuit, bench, { id, version, benchVersion }, isBenchOlder);
      return brought(state, inSightOf(state.open, open));
    }
    case "sample-opened":
      return brought(
        state,
        openFor(deskWith(action.circuit), { id: null, version: 0, benchVersion: 0, isTrial: true }),
      );
    case "close":
      return {
        ...state,
        open: null,
        learning: null,
        shelf: left(state),
        isFinding: false,
        isPrinting: false,
        isExporting: false,
        said: "",
      };
    case "saving":
      return saving(state, action.saved);
    case "keep-as-copy":
    case "stored":
    case "versions-listed":
    case "versions-troubled":
    case "jobs-listed":
    case "show-older":
    case "asked":
    case "ordered":
    case "proven":
    case "tabled":
    case "judged":
    case "paged":
    case "shared":
    case "sneaks-found":
    case "jumped":
    case "print-what":
    case "worker-troubled":
      return state.open ? { ...state, open: reduceOpen(state.open, action) } : state;
    default:
      return { ...state, shelf: reduceShelf(state.shelf, action) };
  }
}

/** The drawing tells a new wish by its count, and counts on over benches that take each other's place. */
function brought(state: AppState, open: Open): AppState {
  const number = state.brought + 1;
  const next = { ...open, number, wish: state.open?.wish ?? null };
  return {
    ...succeeded(state, "open"),
    open: next,
    learning: null,
    brought: number,
    isFinding: false,
    isPrinting: false,
    isExporting: false,
    said: "",
  };
}

/** A circuit that is opened again in this window is looked at as it was: the page and the view stay in sight. */
function inSightOf(before: Open | null, open: Open): Open {
  if (before === null || before.id !== open.id) return open;
  const { viewports, panel } = before;
  const has = ({ id }: { readonly id: string }): boolean => id === before.page;
  const page = open.desk.bench.circuit.pages.some(has) ? before.page : open.page;
  return { ...open, page, viewports, panel };
}

/** The shelf as somebody comes back to it from a bench. A sample on it is no circuit of the library. */
function left({ open, learning, shelf }: AppState): Shelf {
  if (learning !== null) return { ...shelf, last: opensKey({ exercise: learning.id }) };
  return open === null || open.id === null || open.isTrial ? shelf : { ...shelf, last: opensKey({ id: open.id }) };
}

/** Once all is kept, nothing speaks any more of what is not. */
function saving(state: AppState, saved: Open["saved"]): AppState {
  const gone = saved === "saved" && state.notices.some(({ isUntilKept }) => isUntilKept);
  const notices = gone ? state.notices.filter(({ isUntilKept }) => !isUntilKept) : state.notices;
  const open = state.open && state.open.saved !== saved ? { ...state.open, saved } : state.open;
  return open === state.open && !gone ? state : { ...state, open, notices };
}

type OfOpen = Extract<
  Remaining,
  {
    do:
      | "keep-as-copy"
      | "stored"
      | "versions-listed"
      | "versions-troubled"
      | "show-older"
      | "jobs-listed"
      | "asked"
      | "ordered"
      | "proven"
      | "tabled"
      | "judged"
      | "paged"
      | "shared"
      | "sneaks-found"
      | "jumped"
      | "print-what"
      | "worker-troubled";
  }
>;

function reduceOpen(open: Open, action: OfOpen): Open {
  switch (action.do) {
    case "keep-as-copy":
      return { ...copied(open), id: null, version: 0, benchVersion: 0, isTrial: false, saved: "waiting" };
    case "stored":
      return { ...open, ...standing(action) };
    case "versions-listed":
      return { ...open, versions: { ...open.versions, rows: action.rows, besides: action.besides, trouble: null } };
    case "versions-troubled":
      return { ...open, versions: { ...open.versions, trouble: action.words } };
    case "jobs-listed":
      return { ...open, jobs: action.rows };
    case "show-older":
      return { ...open, versions: { ...open.versions, shown: open.versions.shown + VERSIONS_SHOWN } };
    case "asked":
      return withAsking(open, action.about, (asking) => ({ ...asking, isOld: true, trouble: null }));
    case "ordered": {
      const first = action.answer.order.steps[0]?.number ?? null;
      return {
        ...open,
        order: fresh(action.answer),
        step: first,
        earlier: comparable(open.order.answer, action.answer),
      };
    }
    case "proven":
      return { ...open, proof: fresh(action.answer) };
    case "tabled":
      return { ...open, tables: fresh(action.answer) };
    case "judged":
      return { ...open, verdicts: fresh(action.answer) };
    case "paged":
      return { ...open, pages: fresh(action.answer) };
    case "shared":
      return { ...open, shares: fresh(action.answer) };
    case "sneaks-found":
      return { ...open, sneaks: fresh(action.answer) };
    case "jumped":
      return { ...open, jumped: fresh(action.answer) };
    case "print-what":
      return { ...open, printing: { ...open.printing, ...action.sheets } };
    case "worker-troubled":
      return withAsking(open, action.about, (asking) => ({ ...asking, isOld: false, trouble: action.words }));
  }
}

/** The answer before, if it was to the same complaint: shares of two complaints cannot be compared. */
function comparable(before: OrderAnswer | null, now: OrderAnswer): OrderAnswer | null {
  return before?.order.complaint === now.order.complaint ? before : null;
}

function fresh<T>(answer: T): Asking<T> {
  return { answer, isOld: false, trouble: null };
}

function withAsking(open: Open, about: Asked, change: <T>(asking: Asking<T>) => Asking<T>): Open {
  switch (about) {
    case "order":
      return { ...open, order: change(open.order) };
    case "proof":
      return { ...open, proof: change(open.proof) };
    case "table":
      return { ...open, tables: change(open.tables) };
    case "verdicts":
      return { ...open, verdicts: change(open.verdicts) };
    case "shares":
      return { ...open, shares: change(open.shares) };
    case "sneaks":
      return { ...open, sneaks: change(open.sneaks) };
    case "jumper":
      return { ...open, jumped: change(open.jumped) };
    case "pages":
      return { ...open, pages: change(open.pages) };
  }
}

function reduceShelf(
  shelf: Shelf,
  action: Exclude<Remaining, OfOpen | { do: "opened" | "sample-opened" | "close" | "saving" }>,
): Shelf {
  switch (action.do) {
    case "search":
      return { ...shelf, search: action.words };
    case "begin-rename":
      return { ...shelf, renaming: action.id };
    case "rename":
      return { ...shelf, renaming: null };
    case "shelved": {
      const count = shelf.search.trim() === "" ? action.count : shelf.count;
      const { circuits, deleted, jobs, deletedJobs } = action;
      const listed = { ...shelf, isRead: true, circuits, deleted, jobs, deletedJobs, count, trouble: null };
      return { ...listed, pictures: picturesOf(listed, circuits.length === count) };
    }
    case "samples-listed":
      return { ...shelf, samples: action.samples };
    case "library-named":
      return { ...shelf, sharedAs: action.name === "" ? null : action.name };
    case "library-troubled":
      return { ...shelf, isRead: true, trouble: action.words };
    case "pictured":
      return { ...shelf, pictures: { ...shelf.pictures, [action.key]: action.picture } };
    case "open-sample":
      return { ...shelf, last: opensKey(action) };
    case "open-sample-exercise":
    case "open-circuit":
    case "open-earlier":
    case "new-circuit":
    case "open-text":
    case "open-packed":
    case "choose-file":
    case "duplicate":
    case "remove":
    case "restore":
    case "list-versions":
    case "bring-back":
    case "save-file":
    case "save-pdf":
    case "export":
    case "open-job":
    case "remove-job":
    case "restore-job":
    case "open-job-text":
    case "save-job":
    case "retry":
      return shelf;
  }
}
