import type { ControlKey } from "../../core/base/ids.ts";
import type { HelpTopic } from "../../core/base/words/help/index.ts";
import type { PositionTable } from "../../core/diagnose/positionTable.ts";
import type { Quad } from "../../core/drawing/projection.ts";
import type { Bench } from "../../core/edit/bench.ts";
import type { ArrangedPlaces } from "../../core/edit/commands/arrangeParts.ts";
import type { Desk } from "../../core/edit/history.ts";
import type { Verdict } from "../../core/live/judge.ts";
import type { Answer, BesideRow, JobRow, VersionRow } from "../../schemas/calls.ts";
import type { Settings } from "../../schemas/settings.ts";
import type { Tool } from "../canvas/tool.ts";
import type { Viewport } from "../canvas/viewport.ts";
import type { Classroom, Lesson } from "../class/lesson.ts";
import type { Cupboard } from "../instructor/cupboard.ts";
import type { Handins } from "../instructor/handins.ts";
import type { Attempts, Learning } from "../learner/learning.ts";
import type { Answers, OrderAnswer, ProofAnswer } from "../workers/question.ts";
import type { HandoverSaid, PrintedPage } from "../workers/sheets.ts";
import type { JumperLead } from "./jumpering.ts";
import type { Shelf } from "./shelf.ts";
import type { Thing, Wish } from "./thing.ts";
import type { Traces } from "./traces.ts";

export type { Thing, Wish } from "./thing.ts";

/** Views of the side panel, in the order of its tabs. */
export const PANELS = [
  "order",
  "suspects",
  "readings",
  "works",
  "branch",
  "instruments",
  "shares",
  "faults",
  "cupboard",
  "table",
  "condition",
  "class",
  "list",
  "circuit",
  "printed",
] as const;
export type Panel = (typeof PANELS)[number];

/**
 * A printed page under way: `lay` moves the corners of what is shown about the page, `square` seeks the corners of the paper in
 * the photograph, which lies there whole meanwhile, `crop` moves the edges of what is shown. The corners are in millimetres of the page.
 */
export interface Adjusting {
  readonly underlay: string;
  readonly how: "lay" | "square" | "crop";
  readonly quad: Quad;
  /** What paper the photograph is of, by its name; absent where that is not known. */
  readonly paper?: string;
}

/** What was asked of the worker, and the last answer. The old answer stays until the new one is there. */
export interface Asking<T> {
  readonly answer: T | null;
  readonly isOld: boolean;
  /** What the program itself got wrong, or null. */
  readonly trouble: string | null;
}

/** Versions of the circuit on the bench that the host has kept. */
export interface Versions {
  /** Newest first; null while they were not asked for. */
  readonly rows: readonly VersionRow[] | null;
  /** Circuits that were kept beside this one, or that it was kept beside. */
  readonly besides: readonly BesideRow[];
  /** How many of them are shown. */
  readonly shown: number;
  /** Why they cannot be read, in a sentence; null where they can. */
  readonly trouble: string | null;
}

/** Where a bench stands in the library: its circuit, and the versions of that and of what is on the bench. */
export interface Standing {
  readonly id: string;
  readonly version: number;
  readonly benchVersion: number;
}

/** The open bench: core's desk, and what only the window knows of it. */
export interface Open {
  /** Tells one bench from the next that is brought out in this window, the same circuit included; counts from 1. */
  readonly number: number;
  /** Id in the store; null while it is not stored yet, as a sample on which nothing was done. */
  readonly id: string | null;
  /** Version in the store that the circuit on the bench was last kept as. */
  readonly version: number;
  /** The same of what stands on it: it counts what was changed on the bench, 0 while nothing of it is kept. */
  readonly benchVersion: number;
  /** True for a sample whose circuit is as it came: closed, it is gone. */
  readonly isTrial: boolean;
  /** The bench with its history. */
  readonly desk: Desk;
  /** Page shown. */
  readonly page: string;
  /** Where each page was left; a page that is not here has not been shown yet and is fitted. */
  readonly viewports: Readonly<Record<string, Viewport>>;
  readonly chosen: Thing | null;
  /** Further things chosen beside it, for what is done to several at once. */
  readonly also: readonly Thing[];
  /** What a press on the drawing does. */
  readonly tool: Tool;
  /** The part whose editor stands in place of the drawing, or null. */
  readonly editing: string | null;
  /** The printed page that is being laid or made square, or null. */
  readonly adjusting: Adjusting | null;
  /** Whether the catalogue of parts is open. */
  readonly isAdding: boolean;
  readonly hovered: Thing | null;
  readonly wish: Wish | null;
  /** Controls that a finger or key holds in a spring-back position now; all others that stand in one are pinned. */
  readonly held: readonly ControlKey[];
  /** Counts the holds, so that each is a step of its own to undo. */
  readonly gesture: number;
  /** The bench before the last step that current may feel; null where nothing was done yet. */
  readonly stoodBefore: Bench | null;
  /** Whether only what that step changed is shown in full. */
  readonly showsChanged: boolean;
  /** Steps of time that have passed for faults that come and go, and whether more are to pass. */
  readonly time: { readonly steps: number; readonly isPassing: boolean };
  /** What the instruments on the bench showed lately. */
  readonly traces: Traces;
  readonly lesson: Lesson;
  /** Controls thrown lately, newest first. */
  readonly recent: readonly ControlKey[];
  readonly panel: Panel;
  /** Number of the active row of the probe order. */
  readonly step: number | null;
  readonly order: Asking<OrderAnswer>;
  /** The answer before the last reading, to compare with; null where nothing changed yet. */
  readonly earlier: OrderAnswer | null;
  /** Id of the suspect whose row is open; null for none, then the drawing marks the likeliest. */
  readonly suspect: string | null;
  /** Whether the wires are shown as they would be with the suspect that is marked, while the view of suspects is open. */
  readonly isWithSuspect: boolean;
  /** What proves the repair of what was found. */
  readonly proof: Asking<ProofAnswer>;
  /** Connector whose position table is shown; "" for all of them. */
  readonly connector: string;
  readonly tables: Asking<readonly PositionTable[]>;
  /** By check: what the circuit does in it with its faults. */
  readonly verdicts: Asking<Readonly<Record<string, Verdict>>>;
  /** The fuse, splice, ground, connector, pin or wire of which it is asked what else hangs on it; "" for none. */
  readonly place: string;
  readonly shares: Asking<Answers["shares"]>;
  /** Whether sneak paths are sought while the view of shared paths is open. */
  readonly isSeeking: boolean;
  readonly sneaks: Asking<Answers["sneaks"]>;
  /** The jumper that is checked in the same view. */
  readonly jumper: JumperLead;
  readonly jumped: Asking<Answers["jumper"]>;
  /** The instructor's fault cupboard, and the exercise that is being made out of it. */
  readonly cupboard: Cupboard;
  readonly saved: "saved" | "waiting" | "failed";
  readonly versions: Versions;
  /** Jobs of this circuit that the library has; null while they were not asked for. */
  readonly jobs: readonly JobRow[] | null;
  /** What the print dialog is set to, and its pages. */
  readonly printing: PrintWhat;
  readonly pages: Asking<readonly PrintedPage[]>;
}

/** What is to be printed. Paper, ink and symbols are settings of the person. */
export interface PrintWhat {
  readonly what: "sheet" | "checklist" | "branches" | "wiggle" | "table" | "straight" | "budget" | "proof" | "handover";
  /** Page of the circuit; null for all. */
  readonly page: string | null;
  /** Whether printed pages go under the circuit sheets; not where absent. */
  readonly isOverPrint?: boolean;
  readonly connector: string;
  /** Load whose straight branch is followed, on paper and in the side panel; that of the complaint where absent. */
  readonly load?: string;
  /** What a handover page says in people's words, and what was read after the repair; absent while nothing is. */
  readonly handover?: HandoverSaid;
}

/** A sentence to a person, until it is put away. */
export interface Notice {
  readonly id: number;
  /** The first words, set bold. */
  readonly title: string;
  readonly words: string;
  readonly isError: boolean;
  /** What was tried: an error goes with the next of its kind that succeeds. */
  readonly kind?: "edit" | "open" | "file" | "library";
  /** True where it tells of what somebody else did to the open circuit: the next such takes its place. */
  readonly isOfOthers?: boolean;
  /** True where it goes by itself once all changes are kept. */
  readonly isUntilKept?: boolean;
  /** What can be done about it, such as bringing a deleted circuit back. */
  readonly offers?: readonly { readonly words: string; readonly action: Offered }[];
}

/** The report of a fault of the program itself, and the file it lies in; null where it could not be kept. */
export interface Report {
  readonly text: string;
  readonly file: string | null;
}

/** What a notice can offer to do. */
export type Offered =
  | { readonly do: "restore" | "open-circuit" | "open-earlier"; readonly id: string }
  | { readonly do: "restore-job"; readonly circuit: string; readonly id: string }
  | { readonly do: "restore-attempt" | "restart-attempt"; readonly id: string }
  | { readonly do: "keep-as-copy" | "save-file" | "undo" | "show-report" }
  | { readonly do: "take-arranged"; readonly places: ArrangedPlaces };

/** All that the window shows. */
export interface AppState {
  /** False until the host has said what to show first. */
  readonly isStarted: boolean;
  readonly open: Open | null;
  /** The exercise on the learner's bench; then no circuit is open. */
  readonly learning: Learning | null;
  /** Exercises of the library. */
  readonly attempts: Attempts;
  /** The instructor's desk with the hand-ins of a class. */
  readonly handins: Handins;
  /** How many benches were brought out so far. */
  readonly brought: number;
  readonly shelf: Shelf;
  readonly settings: Settings;
  /** What the system asks for; counts while the setting says "system". */
  readonly systemTheme: Theme;
  /** The look in force. */
  readonly theme: Theme;
  readonly isFinding: boolean;
  readonly isPrinting: boolean;
  /** True while files to hand on are chosen. */
  readonly isExporting: boolean;
  /** Files out of which printed pages are being chosen, or null. */
  readonly bringing: readonly File[] | null;
  /** True while the sheet of keys is open. */
  readonly isShowingKeys: boolean;
  /** The page of the help that is open; null while none is. */
  readonly help: HelpTopic | null;
  /** What the program is and where it keeps things; null until it was asked for. */
  readonly about: Answer<"about"> | null;
  /** The report of the last fault of the program itself; null while there was none. */
  readonly report: Report | null;
  readonly isShowingReport: boolean;
  readonly classroom: Classroom;
  /** Number of the attempt at arranging that is under way, from 1; null while nothing is arranged. */
  readonly arranging: number | null;
  readonly notices: readonly Notice[];
  /** What the last accepted edit changed, for the polite live region. */
  readonly said: string;
}

/** Light or dark. */
export type Theme = "light" | "dark";

/** The bench in hand, or null in the library. */
export function benchOf(state: AppState): Bench | null {
  return state.open?.desk.bench ?? null;
}
