import type { Refusal } from "../../core/base/outcome.ts";
import type { Share } from "../../core/base/units.ts";
import { type Mark, marksOf } from "../../core/lesson/tasks.ts";
import type { KeptMark } from "../../schemas/calls.ts";
import type { ExerciseSeen, HandinMarked } from "./deskQuestion.ts";
import { type Column, sortedBy } from "./handinColumns.ts";

/** A file as it was chosen or dropped: its text, or why it cannot be read. */
export interface FileTaken {
  readonly name: string;
  readonly text: string | null;
  readonly refusal: Refusal | null;
}

/** An exercise on the instructor's desk; shut until its passphrase was typed. */
export interface ExerciseIn {
  readonly name: string;
  readonly title: string;
  readonly text: string;
  readonly seen: ExerciseSeen | null;
  /** Why it stays shut, in a sentence; null where that was not tried. */
  readonly trouble: string | null;
}

/** A hand-in on the desk; `marked` is null until it was graded, or found that it cannot be. */
export interface HandinIn {
  readonly key: number;
  readonly name: string;
  readonly text: string | null;
  readonly marked: HandinMarked | null;
}

/** A picture of a moment of a route. */
export interface RouteDrawn {
  readonly of: string;
  readonly svg: string;
}

/** What lies on the instructor's desk: exercises, hand-ins, and which of them is looked at. */
export interface Handins {
  readonly isShown: boolean;
  readonly exercises: readonly ExerciseIn[];
  readonly handins: readonly HandinIn[];
  /** How far the grading of those that wait is; null while nothing is graded. */
  readonly done: Share | null;
  readonly isOpening: boolean;
  /** What learners showed in hand-ins that were graded here before; null while the library was not asked. */
  readonly kept: readonly KeptMark[] | null;
  /** What the program itself got wrong, or null. */
  readonly trouble: string | null;
  readonly sort: { readonly by: Column; readonly isDown: boolean } | null;
  /** Key of the hand-in whose route is shown; null for the table. */
  readonly shown: number | null;
  readonly picture: RouteDrawn | null;
}

/** A desk with nothing on it. */
export const CLEAR_DESK: Handins = {
  isShown: false,
  exercises: [],
  handins: [],
  done: null,
  isOpening: false,
  kept: null,
  trouble: null,
  sort: null,
  shown: null,
  picture: null,
};

/** What can be asked of the desk. */
export type HandinsAct =
  | { readonly act: "show" | "leave" | "stop-grading" }
  /** The worker was lost, and with it all that was open in it. */
  | { readonly act: "shut" }
  /** Puts files on the desk: exercises, and whatever else was chosen as a hand-in. */
  | {
      readonly act: "take";
      readonly exercises: readonly Pick<ExerciseIn, "name" | "title" | "text">[];
      readonly handins: readonly FileTaken[];
    }
  /** Tries a passphrase on every exercise that is shut. It is kept nowhere. */
  | { readonly act: "open"; readonly passphrase: string }
  | {
      readonly act: "opened";
      readonly text: string;
      readonly seen: ExerciseSeen | null;
      readonly trouble: string | null;
    }
  | { readonly act: "marked"; readonly key: number; readonly marked: HandinMarked }
  | {
      readonly act: "set";
      readonly change: Partial<Pick<Handins, "done" | "isOpening" | "kept" | "trouble" | "picture">>;
    }
  | { readonly act: "put-away"; readonly key: number }
  | { readonly act: "put-exercise-away"; readonly text: string }
  | { readonly act: "sort"; readonly by: Column }
  | { readonly act: "look"; readonly key: number | null }
  /** Has the table written for a spreadsheet, or as sheets to be printed. */
  | { readonly act: "save"; readonly as: "csv" | "pdf" }
  /** Forgets all that one learner showed. */
  | { readonly act: "forget"; readonly learner: string }
  /** Has a moment of the route drawn that is looked at. */
  | { readonly act: "draw"; readonly moment: RouteMoment };

/** A moment of a route as it is asked for. */
export interface RouteMoment {
  readonly handin: string;
  readonly step: number;
  readonly page: string;
  readonly palette: "light" | "dark";
  readonly look: "iec" | "na";
}

/** What the flag of a reading is called in a picture. */
export function flagName(reading: number): string {
  return `reading ${reading}`;
}

/** What tells the picture of one moment from that of another. */
export function momentText({ handin, step, page, palette, look }: RouteMoment): string {
  return `${handin} ${step} ${page} ${palette} ${look}`;
}

/** The desk after what was asked of it; what must be worked out is an errand. */
export function reduceHandins(desk: Handins, act: HandinsAct): Handins {
  switch (act.act) {
    case "show":
      return { ...desk, isShown: true };
    case "leave":
      return { ...desk, isShown: false };
    case "stop-grading":
      return { ...desk, done: null };
    case "shut":
      return { ...desk, shown: null, exercises: desk.exercises.map((each) => ({ ...each, seen: null })) };
    case "take":
      return taken(desk, act);
    case "open":
      return { ...desk, isOpening: true, trouble: null };
    case "opened":
      return {
        ...desk,
        exercises: desk.exercises.map((each) => (each.text === act.text ? { ...each, ...seen(act) } : each)),
      };
    case "marked":
      return {
        ...desk,
        handins: desk.handins.map((each) => (each.key === act.key ? { ...each, marked: act.marked } : each)),
      };
    case "set":
      return { ...desk, ...act.change };
    case "put-away":
      return { ...desk, handins: desk.handins.filter(({ key }) => key !== act.key) };
    case "put-exercise-away":
      return { ...desk, exercises: desk.exercises.filter(({ text }) => text !== act.text) };
    case "sort": {
      const isAgain = desk.sort?.by === act.by;
      return { ...desk, sort: { by: act.by, isDown: isAgain && !desk.sort?.isDown } };
    }
    case "look":
      return { ...desk, shown: act.key, picture: null };
    case "save":
    case "forget":
    case "draw":
      return desk;
  }
}

function seen({ seen, trouble }: Extract<HandinsAct, { act: "opened" }>): Pick<ExerciseIn, "seen" | "trouble"> {
  return { seen, trouble };
}

/** The same file twice is one. */
function taken(desk: Handins, { exercises, handins }: Extract<HandinsAct, { act: "take" }>): Handins {
  const has = new Set(desk.exercises.map(({ text }) => text));
  const known = new Set(desk.handins.map(({ name, text }) => text ?? name));
  let key = Math.max(0, ...desk.handins.map((each) => each.key));
  const newHandins: HandinIn[] = [];
  for (const { name, text, refusal } of handins) {
    if (known.has(text ?? name)) continue;
    known.add(text ?? name);
    key += 1;
    newHandins.push({ key, name, text, marked: refusal && unread(name, refusal) });
  }
  const newExercises = exercises.filter(({ text }) => !has.has(text) && has.add(text));
  return {
    ...desk,
    isShown: true,
    exercises: [...desk.exercises, ...newExercises.map((each) => ({ ...each, seen: null, trouble: null }))],
    handins: [...desk.handins, ...newHandins],
  };
}

/** A hand-in that cannot be graded, under the name of its file. */
export function unread(name: string, refusal: Refusal): HandinMarked {
  return { learner: name, exercise: "", grade: null, refusal, id: null, steps: [], pages: [], pageOf: [] };
}

/** Hand-ins as they are listed: as they came, or by the column that was chosen. */
export function listedHandins({ handins, sort }: Pick<Handins, "handins" | "sort">): readonly HandinIn[] {
  return sort ? sortedBy(handins, sort.by, sort.isDown) : handins;
}

/** The hand-ins that were looked at, in the order in which they are listed. */
export function markedHandins(desk: Pick<Handins, "handins" | "sort">): readonly HandinMarked[] {
  return listedHandins(desk).flatMap(({ marked }) => (marked ? [marked] : []));
}

/** The marks of the hand-ins on the desk, as the library keeps them. */
export function ownMarks({ handins }: Pick<Handins, "handins">): readonly KeptMark[] {
  return handins.flatMap(({ marked }) =>
    marked?.id ? marksOf([marked]).map((mark) => ({ ...mark, id: marked.id! })) : [],
  );
}

/** All marks that are known: those that were kept, and those of the desk. */
export function allMarks(desk: Pick<Handins, "handins" | "kept">): readonly Mark[] {
  const own = ownMarks(desk);
  const ids = new Set(own.map(({ id }) => id));
  return [...(desk.kept ?? []).filter(({ id }) => !ids.has(id)), ...own];
}

/** Whether a hand-in is still to be graded: never looked at, or of an exercise that was shut when it was. */
export function isWaiting({ text, marked }: HandinIn): boolean {
  return text !== null && (marked === null || marked.refusal?.code === "handin-waits");
}
