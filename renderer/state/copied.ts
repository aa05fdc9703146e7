import { changeTitle } from "../../core/edit/commands/changeTitle.ts";
import { perform } from "../../core/edit/history.ts";
import { copyTitle } from "../words/library.ts";
import type { Open } from "./state.ts";

/** The bench under a title that tells it from the circuit it parted from; an edit like any other, which can be undone. */
export function copied(open: Open): Open {
  const { bench } = open.desk;
  const edit = changeTitle(bench, copyTitle(bench.circuit.title));
  const desk = edit.ok ? perform(open.desk, edit.value) : edit;
  return desk.ok ? { ...open, desk: desk.value } : open;
}
