import type { Outcome } from "../../core/base/outcome.ts";
import type { Front } from "../../schemas/calls/window.ts";
import type { Answer, CallName, Checked } from "../../schemas/calls.ts";
import type { Settings } from "../../schemas/settings.ts";
import type { Reports } from "../reports.ts";
import type { LibraryKeeper } from "../store/library.ts";
import type { Requests } from "./requests.ts";

/** Where a class can be shown something. */
export interface Classroom {
  /** Shows it, and says where: in a window of its own, or in the program's window over the whole screen. */
  open(wish: Checked<"class.open">): "window" | "here";
  close(): void;
}

/** What the answers need of the world; each host gives its own. */
export interface Host {
  readonly kind: "electron" | "loopback";
  /** Version of the program. */
  readonly version: string;
  readonly keeper: LibraryKeeper;
  /** Folder of the samples. */
  readonly samples: string;
  /** File that a thread runs to paint sheets. */
  readonly printer: URL | string;
  /** Folder of what take-home pages are made of. */
  readonly takeHome: string;
  /** What comes from outside the page, as files from the desktop. */
  readonly requests: Requests;
  /** Keeps reports of faults of the program itself. */
  readonly reports: Reports;
  now(): Date;
  /** Is told all settings once some were changed; absent where nothing outside the page shows any. */
  onSettings?(settings: Settings): void;
  /** Is told what is in front in the page; absent where no menu depends on it. */
  onFront?(front: Front): void;
  /** The window that a class sees; absent where the page opens it by itself. */
  readonly classroom?: Classroom;
  /** Has the person say where a file goes, and writes it there. */
  saveFile(file: Checked<"files.save">): Promise<Outcome<Answer<"files.save">>>;
  /** Has the person choose a circuit file: its path, or what happened instead. */
  chooseFile(): Promise<Outcome<{ readonly path: string } | { readonly done: "cancelled" | "choose" }>>;
}

/** The function behind a call. What it is handed was checked at the door. */
export type AnswerOf<N extends CallName> = (
  argument: Checked<N>,
  host: Host,
  gone?: AbortSignal,
) => Promise<Outcome<Answer<N>>>;

/** The functions behind the calls of a family. */
export type AnswersOf<N extends CallName> = { readonly [Name in N]: AnswerOf<Name> };
