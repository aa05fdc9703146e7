import { fileStem } from "../../core/base/fileName.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import type { CircuitRow, SampleRow } from "../../schemas/calls.ts";
import { BIN_DAYS, LIMITS } from "../../schemas/limits.ts";
import { counted } from "./figures.ts";

/** What a circuit without a title is called, until it is given one. */
export const NO_TITLE = "Circuit without a title";

/** The title of a circuit as it is shown: one in which nothing can be seen is none. */
export function shownTitle(title: string): string {
  return /[\p{L}\p{N}\p{P}\p{S}]/u.test(title) ? title : NO_TITLE;
}

/** How far a circuit is drawn: "4 pages, 2 loose ends", or that none is left. */
export function circuitFacts({ pages, problems, looseEnds }: CircuitRow): string {
  const open = [
    ...(problems > 0 ? [counted(problems, "problem")] : []),
    ...(looseEnds > 0 ? [counted(looseEnds, "loose end")] : []),
  ];
  return [counted(pages, "page"), ...(open.length > 0 ? open : ["no loose ends"])].join(", ");
}

/** Who kept a circuit beside another that was changed at the same time; null where it is none of those. */
export function besideWords({ beside }: Pick<CircuitRow, "beside">): string | null {
  if (beside === null) return null;
  return beside === "" ? "Kept beside another" : `Kept beside by ${beside}`;
}

const LESSONS: Readonly<Record<string, string>> = {
  "1-roof-vents": "Two switches, one motor",
  "2-exterior-lights": "One ground lost: backfeed",
  "3-starter": "Coil, contact, heavy cable",
  "4-horn": "Relay and clock spring",
  "5-blower": "Volts in steps",
  "6-truck-trailer": "24 V, socket and trailer",
  "7-charging": "Alternator and its lamp",
  "8-wiper": "Park contact, two speeds",
  "9-liftgate": "Limit switches, two ways",
  "10-power-and-ground": "Three states of a wire",
  "11-unloaded-tests": "12 V that do no work",
  "12-reversing-motor": "Both sides on ground",
  "13-unlike-lamps": "A puzzle",
};

/** What a sample teaches, in a few words; its vehicle where that is not known. */
export function lessonOf({ sample, vehicle }: SampleRow): string {
  return LESSONS[sample] ?? vehicle;
}

/** Whether a sample is a lesson: its scenes ask questions. */
export function isLesson({ questions }: SampleRow): boolean {
  return questions > 0;
}

/** What a lesson brings: "7 scenes, 13 questions, 2 hidden faults". */
export function lessonFacts({ scenes, questions, exercises }: SampleRow): string {
  const hidden = exercises.length === 0 ? [] : [counted(exercises.length, "hidden fault")];
  return [counted(scenes, "scene"), counted(questions, "question"), ...hidden].join(", ");
}

const COPY = / \(copy(?: (\d+))?\)$/;

/** What a copy of a circuit is called: "Horns (copy)", and a copy of that "Horns (copy 2)". */
export function copyTitle(title: string): string {
  const known = COPY.exec(title);
  const sign = known ? ` (copy ${Number(known[1] ?? 1) + 1})` : " (copy)";
  return title.replace(COPY, "").slice(0, LIMITS.labelLength - sign.length) + sign;
}

/** A name for the file of a circuit, made from its title: only letters, figures and signs that every system takes. */
export function fileNameFor(
  { title }: Pick<Circuit, "title">,
  ending:
    | "circuit.json"
    | "wirefathom"
    | "job.json"
    | "exercise.json"
    | "handin.json"
    | "gif"
    | "csv"
    | "txt" = "circuit.json",
): string {
  const plain = title.replace(/[^\p{L}\p{M}\p{N} ,()_-]+/gu, " ").replace(/\s+/g, " ");
  return `${fileStem(plain)}.${ending}`;
}

const MINUTE_MS = 60_000;
const DAY_MS = 24 * 60 * MINUTE_MS;

/** When a circuit was deleted, and until when it can be brought back: "Deleted yesterday, kept until 24 December 2026". */
export function deletedWords({ removed }: Pick<CircuitRow, "removed">, nowMs: number): string {
  const since = sinceWords(removed ?? "", nowMs);
  if (since === "") return "Deleted";
  return `Deleted ${since}, kept until ${dayWords(new Date(Date.parse(removed ?? "") + BIN_DAYS * DAY_MS))}`;
}

/** When something was edited, roughly: "just now", "5 min ago", "yesterday", "12 March 2026". */
export function sinceWords(edited: string, nowMs: number): string {
  const then = new Date(edited);
  const minutes = Math.floor((nowMs - then.getTime()) / MINUTE_MS);
  if (!Number.isFinite(minutes)) return "";
  if (minutes < 2) return "just now";
  if (minutes < 60) return `${minutes}\u00A0min ago`;
  if (minutes < 24 * 60) return `${Math.floor(minutes / 60)}\u00A0h ago`;
  if (minutes < 48 * 60) return "yesterday";
  return dayWords(then);
}

function dayWords(day: Date): string {
  return day.toLocaleDateString("en-GB", { day: "numeric", month: "long", year: "numeric" });
}
