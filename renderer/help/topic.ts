import type { HelpTopic } from "../../core/base/words/help/index.ts";
import type { AppState } from "../state/state.ts";

/** The page of help for what is in front now. */
export function topicOf(state: AppState): HelpTopic {
  const { open, learning, handins, classroom, isPrinting, isExporting, bringing } = state;
  if (classroom.where === "here") return "class";
  if (handins.isShown) return "handins";
  if (learning) return "learner";
  if (!open) return state.shelf.count === 0 ? "start" : "library";
  if (isPrinting) return "print";
  if (isExporting) return "export";
  if (bringing || open.adjusting) return "printed";
  if (open.editing !== null) return "editor";
  if (open.tool.is === "lead") return "instruments";
  if (open.isAdding || open.tool.is !== "hand") return "draw";
  return open.panel;
}
