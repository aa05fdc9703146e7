import type { Outcome, Refusal } from "../../core/base/outcome.ts";
import { sentence } from "../../core/base/words.ts";
import type { OpenedCircuit } from "../../schemas/calls.ts";
import { LIMITS } from "../../schemas/limits.ts";
import type { Host } from "../host/host.ts";
import type { Autosave } from "./autosave.ts";
import type { Notice } from "./state.ts";
import type { AppStore } from "./store.ts";

/** What a page does about files where its host has no dialogs: it shows its own field, or hands one to the browser. */
export interface FilePage {
  chooseFile(): void;
  download(name: string, content: string, encoding: "text" | "base64"): void;
}

/** What the page itself must do for an errand: files, and the window that a class sees. */
export interface Page extends FilePage {
  /** Opens the class window where a person lets it, or where there is a second screen to put it on; says where it is shown. */
  openClass(where: "any" | "window" | "here"): "window" | "here" | "forbidden";
  closeClass(): void;
  /** What the class window knows this one by. */
  readonly classId: string;
}

/** What an errand needs on its way. */
export interface Going {
  readonly host: Host;
  readonly page: Page;
  readonly autosave: Autosave;
  readonly store: AppStore;
  /** True until something newer of its kind was asked. */
  readonly isLast: () => boolean;
}

/** What can be done about a refusal. */
export type Offers = NonNullable<Notice["offers"]>;

/** Tells why something was not done. */
export function refused(
  store: AppStore,
  refusal: Refusal,
  title: string,
  kind?: Notice["kind"],
  offers: Offers = [],
): void {
  const notice = {
    title,
    words: sentence(refusal),
    isError: true,
    ...(kind && { kind }),
    ...(offers[0] && { offers }),
  };
  store.dispatch({ do: "tell", notice });
}

/** Brings a circuit to the bench once the host has answered, or tells why not. */
export async function opened(
  going: Going,
  asked: Promise<Outcome<OpenedCircuit>>,
  title: string,
  offers: (code: string) => Offers = () => [],
): Promise<void> {
  const { store, isLast } = going;
  const answer = await asked;
  if (!isLast()) return;
  if (answer.ok) return store.dispatch({ do: "opened", opened: answer.value });
  refused(store, answer.refusal, title, "open", offers(answer.refusal.code));
  const { open, shelf } = store.getState();
  if (!open && !shelf.isRead) await listed(going);
}

/** Reads the library anew. */
export async function listed({ host, store, isLast }: Going): Promise<void> {
  // No title is longer.
  const search = store.getState().shelf.search.slice(0, LIMITS.labelLength);
  const [answer, bin, jobs, jobsBin] = await Promise.all([
    host.ask("circuits.list", { search }),
    host.ask("circuits.list", { search, where: "bin" }),
    host.ask("jobs.list", { search }),
    host.ask("jobs.list", { search, where: "bin" }),
  ]);
  if (!isLast()) return;
  const deleted = bin.ok ? bin.value.rows : [];
  const ofJobs = { jobs: jobs.ok ? jobs.value.rows : [], deletedJobs: jobsBin.ok ? jobsBin.value.rows : [] };
  if (answer.ok)
    store.dispatch({ do: "shelved", circuits: answer.value.rows, count: answer.value.count, deleted, ...ofJobs });
  else store.dispatch({ do: "library-troubled", words: sentence(answer.refusal) });
}

const HANDED_OUT: Omit<Notice, "id"> = {
  title: "Handed to the browser.",
  words: "The program behind this page does not answer; look for the file among the downloads.",
  isError: false,
  kind: "file",
};

/** Has a file written where the person says, or hands it to the browser. */
export async function fileSaved(
  { host, page, store }: Pick<Going, "host" | "store"> & { readonly page: FilePage },
  name: string,
  content: string,
  encoding: "text" | "base64",
): Promise<void> {
  const asked = host.ask("files.save", { name, content, encoding });
  // The program's own window lets no page hand a file out.
  const answer = await (host.name === "electron" ? asked : asked.catch(() => null));
  if (!answer) {
    // A browser can, and it is all that is left.
    page.download(name, content, encoding);
    store.dispatch({ do: "tell", notice: HANDED_OUT });
  } else if (!answer.ok) refused(store, answer.refusal, "Not saved.", "file");
  else if (answer.value.done === "download") page.download(name, content, encoding);
  else if (answer.value.done === "saved")
    store.dispatch({
      do: "tell",
      notice: { title: "Saved.", words: answer.value.where, isError: false, kind: "file" },
    });
}
