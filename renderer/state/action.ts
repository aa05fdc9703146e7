import type { ControlKey } from "../../core/base/ids.ts";
import type { Outcome } from "../../core/base/outcome.ts";
import type { HelpTopic } from "../../core/base/words/help/index.ts";
import type { ArrangeWhat } from "../../core/edit/arranging.ts";
import type { Bench } from "../../core/edit/bench.ts";
import type { ArrangedPlaces } from "../../core/edit/commands/arrangeParts.ts";
import type { Edit } from "../../core/edit/edit.ts";
import type { Play } from "../../core/lesson/play.ts";
import type { Question } from "../../core/lesson/question.ts";
import type { Answer } from "../../schemas/calls.ts";
import type { Tool } from "../canvas/tool.ts";
import type { Viewport } from "../canvas/viewport.ts";
import type { Classroom, Lesson } from "../class/lesson.ts";
import type { CupboardAct } from "../instructor/cupboard.ts";
import type { HandinsAct } from "../instructor/handins.ts";
import type { LearnerAction } from "../learner/action.ts";
import type { HostAction, HostAnswer } from "./hostAction.ts";
import type { JumperLead } from "./jumpering.ts";
import type { Adjusting, Notice, Panel, Report, Theme, Thing, Wish } from "./state.ts";

/** A command of `core/edit/commands` with all it needs but the bench. */
export type Command = (bench: Bench) => Outcome<Edit>;

/** Everything that can be asked of the store about the open bench. */
export type BenchAction =
  /** Makes the edit of a command; edits of one gesture carry one group and are undone as one. */
  | { readonly do: "make"; readonly command: Command; readonly group?: string }
  /** Brackets a drag: what is made in between is one step, or none when it is abandoned. */
  | { readonly do: "begin-drag" | "keep-drag" | "cancel-drag" }
  | { readonly do: "undo" | "redo" }
  /** Takes an arrangement that was left because it is no better. */
  | { readonly do: "take-arranged"; readonly places: ArrangedPlaces }
  /** A throw that stays: of a spring-back position, pinned. */
  | { readonly do: "throw"; readonly control: ControlKey; readonly position: string }
  /** A finger or key holds a control in a spring-back position, until it lets go or pins it. */
  | { readonly do: "hold"; readonly control: ControlKey; readonly position: string }
  | { readonly do: "let-go" | "pin"; readonly control: ControlKey }
  | { readonly do: "show-page"; readonly page: string }
  | { readonly do: "look-at"; readonly page: string; readonly viewport: Viewport }
  | { readonly do: "wish"; readonly want: Wish["want"] }
  | { readonly do: "choose" | "hover"; readonly thing: Thing | null }
  /** Chooses a thing beside what is chosen; one that is chosen already is let go. */
  | { readonly do: "choose-also"; readonly thing: Thing }
  /** Chooses exactly these. */
  | { readonly do: "choose-all"; readonly things: readonly Thing[] }
  | { readonly do: "use-tool"; readonly tool: Tool }
  /** Opens the editor of a part in place of the drawing; null closes it. */
  | { readonly do: "edit-part"; readonly part: string | null }
  /** Takes a printed page up to be laid or made square, moves it so far, or with null leaves it as it was. */
  /** Opens the catalogue of parts, or closes it. */
  | { readonly do: "add"; readonly isAdding: boolean }
  | { readonly do: "adjust"; readonly adjusting: Adjusting | null }
  /** Shows the page that a thing stands on, chooses it and brings it into sight. */
  | { readonly do: "find"; readonly thing: Thing }
  /** Chooses a part or wire and shows where it is on the printed page that it is tied to. */
  | { readonly do: "show-printed"; readonly id: string }
  | { readonly do: "find-named"; readonly id: string }
  | { readonly do: "go-to-step"; readonly step: number }
  /** Opens the row of a suspect and shows the drawing as it would be with it; null closes it. */
  | { readonly do: "show-suspect"; readonly id: string | null }
  /** Shows the wires as they would be with the suspect that is marked, or as they are. */
  | { readonly do: "with-suspect"; readonly isWith: boolean }
  /** Shows only in full what the last step changed, or everything. */
  | { readonly do: "show-changed"; readonly isOn: boolean }
  | { readonly do: "show-table"; readonly connector: string }
  /** Changes what is shown to a class of the circuit, and how. */
  | {
      readonly do: "teach";
      readonly lesson: Partial<Pick<Lesson, "focus" | "hasCaption" | "isCovered" | "isCoveredHere" | "showsFaults">>;
    }
  /** Puts a question to the class, with the drawing set up as it says; null takes it away. */
  | { readonly do: "ask"; readonly question: Question | null }
  /** Puts the next question that the circuit itself asks. */
  | { readonly do: "ask-next" }
  /** Counts one hand more for a choice, takes the last one back, or shows the answer once somebody has committed to one. */
  | { readonly do: "hand"; readonly choice: number }
  | { readonly do: "hand-back" }
  | { readonly do: "reveal" }
  /** Goes to where the scenes are in their playing: the drawing is set up where that is another scene, or it is asked for anew. */
  | { readonly do: "play-scenes"; readonly play: Play; readonly isAnew?: boolean }
  /** Shows what else hangs on a fuse, splice, ground, connector, pin or wire. */
  | { readonly do: "show-shares"; readonly place: string }
  /** Begins lowest and highest of an instrument anew; of all for null. */
  | { readonly do: "begin-trace"; readonly instrument: string | null }
  /** A step of time passes for faults that come and go; or all steps up to the next that comes or goes. */
  | { readonly do: "pass-time" | "pass-to-next" }
  /** Stops time for them, or lets it go on. */
  | { readonly do: "let-time-pass"; readonly isPassing: boolean }
  /** Has every way sought in which current can run against the drawn direction. */
  | { readonly do: "seek-sneaks" }
  /** Names an end of the jumper, its fuse, or which end is picked on the drawing. */
  | { readonly do: "set-jumper"; readonly jumper: Partial<JumperLead> }
  /** What an instructor does with the fault cupboard. */
  | { readonly do: "cupboard"; readonly act: CupboardAct }
  | { readonly do: "open-panel"; readonly panel: Panel };

/** Everything that can be asked of the window itself. */
export type WindowAction =
  | { readonly do: "system-theme"; readonly theme: Theme }
  | { readonly do: "open-find" | "close-find" | "open-print" | "close-print" | "open-keys" | "close-keys" }
  | { readonly do: "open-export" | "close-export" }
  /** Opens the help at a topic, or at that of what is in front. */
  | { readonly do: "open-help"; readonly topic?: HelpTopic }
  | { readonly do: "close-help" }
  | { readonly do: "about-told"; readonly about: Answer<"about"> }
  /** Shows a class what it is to see: on a second screen where there is one (`any`), in a window of its own, or over this one. */
  | { readonly do: "open-class"; readonly where: "any" | "window" | "here" }
  | { readonly do: "close-class" }
  | { readonly do: "class"; readonly classroom: Partial<Classroom> }
  /** Shows what printed pages are in files, to be put under the drawing. */
  | { readonly do: "bring-in"; readonly files: readonly File[] }
  | { readonly do: "close-bring-in" }
  /** Lays parts of the page shown out anew, or gives that up. */
  | { readonly do: "arrange"; readonly what: ArrangeWhat }
  | { readonly do: "cancel-arrange" }
  /** Which attempt is under way; null for none. */
  | { readonly do: "arranging"; readonly attempt: number | null }
  | { readonly do: "tell"; readonly notice: Omit<Notice, "id"> }
  | { readonly do: "put-away"; readonly notice: number }
  /** The program itself met a fault, which is told with its report. */
  | { readonly do: "mishap"; readonly report: Report }
  | { readonly do: "show-report" | "close-report" }
  /** Brings the report into a file. */
  | { readonly do: "save-report" }
  /** What an instructor does with the hand-ins of a class. */
  | { readonly do: "handins"; readonly act: HandinsAct }
  /** Tells a listener something that changes nothing. */
  | { readonly do: "say"; readonly words: string };

/** Everything that can be asked of the store. */
export type Action = BenchAction | WindowAction | HostAction | HostAnswer | LearnerAction;
