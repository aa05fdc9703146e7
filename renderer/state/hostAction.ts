import type { Circuit } from "../../core/circuit/circuit.ts";
import type { PositionTable } from "../../core/diagnose/positionTable.ts";
import type { Verdict } from "../../core/live/judge.ts";
import type {
  Argument,
  BesideRow,
  CircuitRow,
  JobRow,
  OpenedCircuit,
  SampleRow,
  VersionRow,
} from "../../schemas/calls.ts";
import type { Settings } from "../../schemas/settings.ts";
import type { ExportAsk } from "../export/exports.ts";
import type { Picture } from "../workers/picture.ts";
import type { Answers, OrderAnswer, ProofAnswer, Question } from "../workers/question.ts";
import type { PrintedPage } from "../workers/sheets.ts";
import type { PrintWhat, Standing } from "./state.ts";

/** What the worker is asked. */
export type Asked = Question["ask"];

/** What a person asks of the library and the files; an errand brings it to the host. */
export type HostAction =
  | { readonly do: "open-circuit"; readonly id: string }
  /** Opens the newest version that can be read of a circuit whose newest one is damaged, as a circuit of its own. */
  | { readonly do: "open-earlier"; readonly id: string }
  /** Begins an empty circuit; with files, over the printed pages that are in them. */
  | { readonly do: "new-circuit"; readonly printed?: readonly File[] }
  | { readonly do: "open-sample"; readonly sample: string }
  /** Begins to work on an exercise that comes with a lesson. */
  | { readonly do: "open-sample-exercise"; readonly exercise: string }
  | { readonly do: "choose-file" }
  /** The text of a file that was dropped or chosen in the page. */
  | { readonly do: "open-text"; readonly name: string; readonly text: string }
  /** Such a file in which the circuit is packed with its pictures, in base64. */
  | { readonly do: "open-packed"; readonly name: string; readonly bytes: string }
  | { readonly do: "close" }
  | { readonly do: "search"; readonly words: string }
  | { readonly do: "begin-rename"; readonly id: string | null }
  | { readonly do: "rename"; readonly id: string; readonly title: string }
  | { readonly do: "duplicate" | "remove" | "restore"; readonly id: string }
  | { readonly do: "save-file" }
  /** Keeps what is on the bench as a circuit of its own, since the stored one was changed elsewhere. */
  | { readonly do: "keep-as-copy" }
  /** Asks which versions of the circuit on the bench are kept. */
  | { readonly do: "list-versions" }
  | { readonly do: "show-older" }
  /** Brings the circuit back as it was in a version, as an edit of the bench. */
  | { readonly do: "bring-back"; readonly row: VersionRow }
  /** Changes what the print dialog is to show. */
  | { readonly do: "print-what"; readonly sheets: Partial<PrintWhat> }
  /** Brings the sheets into a file, over what was made ready of the printed pages. */
  | { readonly do: "save-pdf"; readonly under?: Argument<"print.pdf">["under"] }
  /** Makes a file to hand on of what is open. */
  | ({ readonly do: "export" } & ExportAsk)
  /** Opens a job's circuit where it stood, and takes the job up. */
  | { readonly do: "open-job" | "remove-job" | "restore-job"; readonly circuit: string; readonly id: string }
  /** The text of a job file: taken up on its circuit, or on the one that is open. */
  | { readonly do: "open-job-text"; readonly name: string; readonly text: string }
  /** Brings the job in hand into a file. */
  | { readonly do: "save-job" }
  | { readonly do: "set"; readonly settings: Partial<Settings> }
  | { readonly do: "retry" };

/** What came back. Only errands and answers dispatch these. */
export type HostAnswer =
  | { readonly do: "opened"; readonly opened: OpenedCircuit }
  | { readonly do: "sample-opened"; readonly circuit: Circuit }
  | {
      readonly do: "shelved";
      readonly circuits: readonly CircuitRow[];
      readonly count: number;
      readonly deleted: readonly CircuitRow[];
      readonly jobs: readonly JobRow[];
      readonly deletedJobs: readonly JobRow[];
    }
  /** The jobs that stand on the open circuit. */
  | { readonly do: "jobs-listed"; readonly rows: readonly JobRow[] }
  | { readonly do: "samples-listed"; readonly samples: readonly SampleRow[] }
  | { readonly do: "library-troubled"; readonly words: string }
  /** Which shared library it is; empty for one on this machine. */
  | { readonly do: "library-named"; readonly name: string }
  | { readonly do: "pictured"; readonly key: string; readonly picture: Picture | null }
  | { readonly do: "settled"; readonly settings: Settings }
  | ({ readonly do: "stored" } & Standing)
  | { readonly do: "versions-listed"; readonly rows: readonly VersionRow[]; readonly besides: readonly BesideRow[] }
  | { readonly do: "versions-troubled"; readonly words: string }
  | { readonly do: "saving"; readonly saved: "saved" | "waiting" | "failed" }
  | { readonly do: "asked"; readonly about: Asked }
  | { readonly do: "paged"; readonly answer: readonly PrintedPage[] }
  | { readonly do: "proven"; readonly answer: ProofAnswer }
  | { readonly do: "ordered"; readonly answer: OrderAnswer }
  | { readonly do: "tabled"; readonly answer: readonly PositionTable[] }
  | { readonly do: "judged"; readonly answer: Readonly<Record<string, Verdict>> }
  | { readonly do: "shared"; readonly answer: Answers["shares"] }
  | { readonly do: "sneaks-found"; readonly answer: Answers["sneaks"] }
  | { readonly do: "jumped"; readonly answer: Answers["jumper"] }
  | { readonly do: "worker-troubled"; readonly about: Asked; readonly words: string; readonly fault: unknown };

/** What is left for the library and the open bench once settings are dealt with. */
export type Remaining = Exclude<HostAction | HostAnswer, { do: "set" | "settled" }>;
