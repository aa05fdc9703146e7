import type { Refusal } from "../../core/base/outcome.ts";
import { sentence } from "../../core/base/words.ts";
import type { SavedWhere } from "../../schemas/calls.ts";
import { BIN_DAYS } from "../../schemas/limits.ts";
import { isChangedElsewhere } from "../state/keeping.ts";
import type { Notice, Open } from "../state/state.ts";
import { counted } from "./figures.ts";
import { shownTitle } from "./library.ts";

/** Who changed something: "ann", "Another window". */
function whoOf({ by }: Pick<ChangedBy, "by">): string {
  return by === "" ? "Another window" : by;
}

/** When, by the clock of this place: "at 14:05". */
function whenOf({ saved }: Pick<ChangedBy, "saved">): string {
  return `at ${new Date(saved).toLocaleTimeString("en-GB", { hour: "2-digit", minute: "2-digit" })}`;
}

const OF_OTHERS = { isError: false, isOfOthers: true } as const;

type ChangedBy = NonNullable<SavedWhere["beside"]>;

/** That a circuit was changed twice at once, and that both are kept; `other` is the id of the one that was there. */
export function keptBeside({ desk }: Open, other: string, { by, saved, isRemoved }: ChangedBy): Omit<Notice, "id"> {
  const title = shownTitle(desk.bench.circuit.title);
  const kept = "Nothing is lost: yours is kept as a circuit of its own beside it, and goes on here.";
  if (isRemoved) return { title: `${title} was deleted while you worked on it.`, words: kept, ...OF_OTHERS };
  return {
    title: `${title} was changed twice at once.`,
    words: `${whoOf({ by })} changed it too, ${whenOf({ saved })}. ${kept}`,
    ...OF_OTHERS,
    offers: [{ words: "Open the other one", action: { do: "open-circuit", id: other } }],
  };
}

/** That somebody else changed or deleted the circuit that is open here, before anything was changed here too. */
export function changedByOther({ desk, id }: Open, { by, saved, isRemoved }: ChangedBy): Omit<Notice, "id"> {
  const title = shownTitle(desk.bench.circuit.title);
  const on = "It stands here as it was. What you change on it is kept beside the other.";
  if (isRemoved) return { title: `${title} was deleted elsewhere.`, words: on, ...OF_OTHERS };
  return {
    title: `${whoOf({ by })} changed ${title} ${whenOf({ saved })}.`,
    words: on,
    ...OF_OTHERS,
    offers: [{ words: "Show it as it is now", action: { do: "open-circuit", id: id ?? "" } }],
  };
}

/** That the last changes to a bench are not kept, and why; null is a host that does not answer. */
export function notKept({ desk, id }: Open, refusal: Refusal | null, canBeCopied: boolean): Omit<Notice, "id"> {
  const words = refusal
    ? sentence(refusal)
    : "The program behind this page does not answer; it is asked again until it does.";
  const title = `Your last changes to ${shownTitle(desk.bench.circuit.title)} are not kept yet.`;
  const notice = { title, words, isError: true, isUntilKept: true };
  if (!canBeCopied) return { ...notice, offers: [{ words: "Save a copy to a file", action: { do: "save-file" } }] };
  // What is on the bench is kept as a copy when the other one takes its place.
  const reopen = { words: "Open it again", action: { do: "open-circuit", id: id ?? "" } } as const;
  const copy = { words: "Keep mine as a copy", action: { do: "keep-as-copy" } } as const;
  return { ...notice, offers: isChangedElsewhere(refusal) ? [copy, reopen] : [copy] };
}

/** That this window shows what was done to its circuit in another one. */
export function followed({ desk }: Open): Omit<Notice, "id"> {
  return {
    title: `${shownTitle(desk.bench.circuit.title)} was changed in another window.`,
    words: "It is shown as it is now.",
    isError: false,
  };
}

/** What was noted on a sample beside how it stands: "the complaint, 2 ticks and 6 readings"; "" where nothing was. */
export function notedOn({ desk }: Pick<Open, "desk">): string {
  const { complaint, observed, readings, batteryVolts, sleepingAmps, faults, job } = desk.bench;
  const ticks = Object.keys(observed).filter((check) => check !== complaint).length;
  const said = [
    ...(job === null ? [] : ["the job"]),
    ...(complaint === null ? [] : ["the complaint"]),
    ...(ticks === 0 ? [] : [counted(ticks, "tick")]),
    ...(readings.length === 0 ? [] : [counted(readings.length, "reading")]),
    ...(batteryVolts === null ? [] : ["volts of the battery"]),
    ...(sleepingAmps === null ? [] : ["the sleeping current"]),
    ...(faults.length === 0 ? [] : [counted(faults.length, "fault")]),
  ];
  return said.length < 2 ? said.join("") : `${said.slice(0, -1).join(", ")} and ${said.at(-1)}`;
}

/** That a sample is as it came again, and what of it can be kept all the same. */
export function trialEnded({ desk }: Pick<Open, "desk">, noted: string, id: string): Omit<Notice, "id"> {
  return {
    title: `${shownTitle(desk.bench.circuit.title)} is a sample, and is as it came again.`,
    words: `What you noted on it stands under Deleted for ${BIN_DAYS} days: ${noted}.`,
    isError: false,
    offers: [{ words: "Keep it as my circuit", action: { do: "restore", id } }],
  };
}

/** That a bench that was put away went into the library beside the circuit it was made from. */
export function keptAsCopy({ desk }: Open): Omit<Notice, "id"> {
  return {
    title: `Your changes are kept as ${shownTitle(desk.bench.circuit.title)}.`,
    words: "The circuit itself was changed or deleted in another window.",
    isError: false,
  };
}

/** What the library has to say of itself. That it can be written again takes away that it could only be read. */
export function ofLibrary(refusal: Refusal): Omit<Notice, "id"> {
  const isAgain = refusal.code === "store-own-again";
  const kind = isAgain || refusal.code === "store-looked-at" ? ({ kind: "library" } as const) : {};
  return { title: "Note.", words: sentence(refusal), isError: !isAgain, ...kind };
}

/** That a circuit is whole, but what stood on its bench is not. */
export function benchLost(title: string): Omit<Notice, "id"> {
  return {
    title: `What was noted on ${shownTitle(title)} cannot be read any more.`,
    words: "Its drawing is whole; condition, ticks, readings and faults are as on a new bench.",
    isError: true,
    kind: "open",
  };
}
