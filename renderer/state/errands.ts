import type { Outcome } from "../../core/base/outcome.ts";
import { emptyCircuit } from "../../core/circuit/emptyCircuit.ts";
import { picturesShown } from "../../core/circuit/pictures.ts";
import type { Argument } from "../../schemas/calls.ts";
import { formatCircuit } from "../../schemas/formatCircuit.ts";
import { BIN_DAYS } from "../../schemas/limits.ts";
import type { ExportAsk } from "../export/exports.ts";
import type { Host } from "../host/host.ts";
import { takeHandin } from "../instructor/handinFiles.ts";
import { GONE_WORDS } from "../words/gone.ts";
import { fileNameFor, NO_TITLE, shownTitle } from "../words/library.ts";
import { benchLost } from "../words/saving.ts";
import type { Action } from "./action.ts";
import type { Autosave } from "./autosave.ts";
import { begin } from "./begin.ts";
import { isBenchLost } from "./benchText.ts";
import { classClosed, classOpened } from "./classErrands.ts";
import { broughtBack, versionsListed } from "./earlier.ts";
import { fileSaved, type Going, listed, opened, type Page, refused } from "./going.ts";
import { jobOpened, jobRemoved, jobSaved, jobsAreListed, jobsListed, jobTextOpened } from "./jobErrands.ts";
import { foundNow, pdfArgument } from "./printing.ts";
import { earlierOpened } from "./rescue.ts";
import { type AppState, benchOf } from "./state.ts";
import type { AppStore, Reaction } from "./store.ts";
import { weighingNow } from "./weighingNow.ts";

/** What is asked anew before it was answered: only the last answer counts. */
const KINDS: Readonly<Partial<Record<Action["do"], "opening" | "listing">>> = {
  "open-circuit": "opening",
  "open-earlier": "opening",
  "open-sample": "opening",
  "open-text": "opening",
  "open-packed": "opening",
  "new-circuit": "opening",
  "open-job": "opening",
  "open-job-text": "opening",
  search: "listing",
  retry: "listing",
  close: "listing",
  rename: "listing",
  duplicate: "listing",
  remove: "listing",
  restore: "listing",
  "remove-job": "listing",
  "restore-job": "listing",
};

/** Brings what a person asks of library and files to the host, and what it answers back to the store. */
export function errandsReaction(host: Host, page: Page, autosave: Autosave): Reaction {
  const last = { opening: 0, listing: 0 };
  const isListed = jobsAreListed();
  return (action, state, _before, store) => {
    if (action.do === "stored" && isListed(benchOf(state))) return;
    const kind = KINDS[action.do];
    if (kind) last[kind] += 1;
    const number = kind && last[kind];
    const isLast = (): boolean => !kind || last[kind] === number;
    const errand = errandFor(action, { host, page, autosave, store, isLast });
    errand?.catch(() => gone(store));
  };
}

/** In the library without circuits it stands where they would; else it is told. */
function gone(store: AppStore): void {
  const { open, shelf } = store.getState();
  if (!open && !shelf.isRead) store.dispatch({ do: "library-troubled", words: GONE_WORDS });
  else store.dispatch({ do: "tell", notice: { title: "No answer.", words: GONE_WORDS, isError: true } });
}

function errandFor(action: Action, going: Going): Promise<void> | null {
  const { host, store, autosave } = going;
  switch (action.do) {
    case "open-circuit":
      return circuitOpened(going, action.id);
    case "open-earlier":
      return opened(going, earlierOpened(host, action.id), NOT_OPENED);
    case "open-sample":
      return sampleOpened(going, action.sample);
    case "open-sample-exercise":
      return sampleExerciseOpened(going, action.exercise);
    case "new-circuit":
      return begun(going, action.printed ?? []);
    case "choose-file":
      return fileChosen(going);
    case "open-text":
      return textOpened(going, action.name, action.text);
    case "open-packed":
      return packedOpened(going, action.name, action.bytes);
    case "close":
      return closed(going);
    case "search":
      return listed(going);
    case "retry":
      return store.getState().isStarted ? listed(going) : begin(host, store);
    case "rename":
      return changed(going, host.ask("circuits.rename", { id: action.id, title: action.title }), "Not renamed.");
    case "duplicate":
      return changed(going, host.ask("circuits.duplicate", { id: action.id }), "Not duplicated.");
    case "restore":
      return changed(going, host.ask("circuits.restore", { id: action.id }), "Not brought back.");
    case "remove":
      return removed(going, action.id);
    case "save-file":
      return circuitSaved(going);
    case "open-help":
      return store.getState().help === "about" ? aboutTold(going) : null;
    case "save-report":
      return reportSaved(going);
    case "open-class":
      return classOpened(going, action.where);
    case "close-class":
      return classClosed(going);
    case "save-pdf":
      return pdfSaved(going, action.under);
    case "export":
      return exported(going, action);
    case "open-job":
      return jobOpened(going, action);
    case "open-job-text":
      return jobTextOpened(going, action.name, action.text);
    case "save-job":
      return jobSaved(going);
    case "remove-job":
      return jobRemoved(going, action);
    case "restore-job":
      return changed(
        going,
        host.ask("jobs.restore", { circuit: action.circuit, id: action.id }),
        "That job was not brought back.",
      );
    case "stored":
      return mayHaveJobs(store.getState()) ? jobsListed(going) : null;
    case "list-versions":
      return autosave.flush().then(() => versionsListed(host, store));
    case "bring-back":
      return broughtBack(host, store, action.row);
    case "set":
      return quietly(going, host.ask("settings.set", action.settings), "Not kept.");
    case "opened":
      if (action.opened.known) store.dispatch({ do: "tell", notice: KNOWN });
      if (isBenchLost(action.opened)) store.dispatch({ do: "tell", notice: benchLost(action.opened.circuit.title) });
      return jobsListed(going);
    default:
      return null;
  }
}

const KNOWN = {
  title: "In the library already.",
  words: "This is the circuit you had, with all that was done to it since.",
  isError: false,
};

const NOT_OPENED = "That circuit was not opened.";

/** What waits is kept first: the circuit may be the very one that was just put away. */
async function circuitOpened(going: Going, id: string): Promise<void> {
  await going.autosave.flush();
  const earlier = { words: "Open an earlier version", action: { do: "open-earlier", id } } as const;
  const offers = (code: string) => (code === "version-damaged" ? [earlier] : []);
  await opened(going, going.host.ask("circuits.open", { id }), NOT_OPENED, offers);
}

async function sampleOpened({ host, store, isLast }: Going, sample: string): Promise<void> {
  const answer = await host.ask("samples.open", { sample });
  if (!isLast()) return;
  if (answer.ok) store.dispatch({ do: "sample-opened", circuit: answer.value.circuit });
  else refused(store, answer.refusal, "That sample was not opened.", "open");
}

async function sampleExerciseOpened({ host, store }: Going, exercise: string): Promise<void> {
  const answer = await host.ask("samples.exercise", { exercise });
  if (answer.ok) store.dispatch({ do: "open-exercise", name: exercise, text: answer.value.text });
  else refused(store, answer.refusal, "That exercise was not opened.", "open");
}

async function fileChosen({ host, page, store, autosave }: Going): Promise<void> {
  await autosave.flush();
  const answer = await host.ask("files.open", {});
  if (!answer.ok) refused(store, answer.refusal, "That file was not opened.", "open");
  else if (answer.value.done === "choose") page.chooseFile();
  else if (answer.value.done === "job")
    store.dispatch({ do: "open-job-text", name: answer.value.name, text: answer.value.text });
  else if (answer.value.done === "handin")
    store.dispatch({ do: "handins", act: takeHandin(answer.value.name, answer.value.text) });
  else if (answer.value.done === "exercise")
    store.dispatch({ do: "open-exercise", name: answer.value.name, text: answer.value.text });
  else if (answer.value.done === "opened") store.dispatch({ do: "opened", opened: answer.value.opened });
}

async function textOpened(going: Going, name: string, text: string): Promise<void> {
  await going.autosave.flush();
  await opened(going, going.host.ask("circuits.import", { text }), `${name} was not opened.`);
}

async function packedOpened(going: Going, name: string, bytes: string): Promise<void> {
  await going.autosave.flush();
  await opened(going, going.host.ask("circuits.unpack", { bytes }), `${name} was not opened.`);
}

/** The library is read once the bench that was put away is in it. */
async function closed(going: Going): Promise<void> {
  await going.autosave.flush();
  if (!going.store.getState().open) await going.host.ask("circuits.close", {});
  await listed(going);
}

async function changed(going: Going, asked: Promise<Outcome<unknown>>, title: string): Promise<void> {
  await quietly(going, asked, title);
  await listed(going);
}

async function quietly({ store }: Going, asked: Promise<Outcome<unknown>>, title: string): Promise<void> {
  const answer = await asked;
  if (!answer.ok) refused(store, answer.refusal, title);
}

async function removed(going: Going, id: string): Promise<void> {
  const { host, store } = going;
  const answer = await host.ask("circuits.remove", { id });
  if (!answer.ok) refused(store, answer.refusal, "Not deleted.");
  else
    store.dispatch({
      do: "tell",
      notice: {
        title: `${shownTitle(answer.value.title)} is deleted.`,
        words: `It stands under Deleted for ${BIN_DAYS} days and can be brought back.`,
        isError: false,
        offers: [{ words: "Bring it back", action: { do: "restore", id } }],
      },
    });
  await listed(going);
}

/**
 * The circuit as it stands on the bench goes into the file, even where the library cannot be written. Pictures of its
 * printed pages and places go along; should one be missing, the circuit is saved without them and it is told.
 */
async function circuitSaved(going: Going): Promise<void> {
  const { host, store } = going;
  const { open } = store.getState();
  if (!open) return;
  const { circuit } = open.desk.bench;
  const hasPictures = picturesShown(circuit).length > 0;
  const packed = hasPictures ? await host.ask("circuits.pack", { circuit }).catch(() => null) : null;
  if (packed?.ok) return fileSaved(going, fileNameFor(circuit, "wirefathom"), packed.value.bytes, "base64");
  await fileSaved(going, fileNameFor(circuit), formatCircuit(circuit), "text");
  if (packed) refused(store, packed.refusal, WITHOUT_PICTURES);
  else if (hasPictures)
    store.dispatch({ do: "tell", notice: { title: WITHOUT_PICTURES, words: GONE_WORDS, isError: true, kind: "file" } });
}

/** An empty circuit; printed pages are brought in once it lies on the bench. */
async function begun(going: Going, printed: readonly File[]): Promise<void> {
  const { host, store } = going;
  await opened(going, host.ask("circuits.create", { circuit: emptyCircuit(NO_TITLE) }), "No circuit was begun.");
  if (printed.length > 0) store.dispatch({ do: "bring-in", files: printed });
}

async function reportSaved(going: Going): Promise<void> {
  const { report } = going.store.getState();
  if (report) await fileSaved(going, REPORT_FILE, report.text, "text");
}

async function aboutTold({ host, store }: Going): Promise<void> {
  const answer = await host.ask("about", {});
  if (answer.ok) store.dispatch({ do: "about-told", about: answer.value });
}

const REPORT_FILE = "Wirefathom report.txt";

const WITHOUT_PICTURES = "Saved without its printed pages and photos.";

async function pdfSaved(going: Going, under: Argument<"print.pdf">["under"]): Promise<void> {
  const { host, store } = going;
  const { open, settings } = store.getState();
  if (!open) return;
  const weighing = weighingNow(open, settings);
  const asked = pdfArgument(open.desk.bench, open.printing, settings, weighing, foundNow(open));
  const printed = await host.ask("print.pdf", { ...asked, under });
  if (!printed.ok) return refused(store, printed.refusal, "Not printed.", "file");
  await fileSaved(going, printed.value.name, printed.value.pdf, "base64");
}

const BEING_MADE = {
  title: "Being made.",
  words: "The moving picture takes some seconds.",
  isError: false,
  kind: "file",
} as const;

/** What makes the file is loaded only now: few ever ask. */
async function exported(going: Going, ask: ExportAsk): Promise<void> {
  const { host, store } = going;
  const { open, settings } = store.getState();
  if (!open) return;
  if (ask.what === "moving") store.dispatch({ do: "tell", notice: BEING_MADE });
  const { fileFor } = await import("../export/exporting.ts");
  const made = await fileFor(host, open, settings, ask);
  if (!made.ok) return refused(store, made.refusal, "Not made.", "file");
  await fileSaved(going, made.value.name, made.value.content, made.value.encoding);
}

/** Whether a save can have changed the jobs of the circuit on the bench. */
function mayHaveJobs({ open }: AppState): boolean {
  return open !== null && (open.desk.bench.job !== null || open.jobs === null || open.jobs.length > 0);
}
