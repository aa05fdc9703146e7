import { capital } from "../../core/base/capital.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Grade } from "../../core/lesson/grade.ts";
import type { Difficulty } from "../../core/lesson/graded.ts";
import { resultWords } from "../../core/lesson/gradeTable.ts";
import { VERDICT_TITLES } from "../words/check.ts";
import { minutesText } from "../words/figures.ts";
import type { Fails } from "./deskQuestion.ts";

/** Difficulties as a person chooses them. */
export const DIFFICULTY_TITLES: Readonly<Record<Difficulty | "any", string>> = {
  any: "Any",
  easy: "Easy",
  medium: "Medium",
  hard: "Hard",
};

/** A check that fails: "Low beam, left: dead". */
export function failsWords({ checks }: Circuit, { check, word }: Fails): string {
  return `${checks.find(({ id }) => id === check)?.label ?? check}: ${VERDICT_TITLES[word]}`;
}

/** What makes a fault hard: "4.2 min by the probe order; an unloaded meter misleads at 60 % of the points". */
export function hardnessWords({ minutes, misleads }: { readonly minutes: number; readonly misleads: number }): string {
  const share = Math.round(misleads * 100);
  const misled =
    share === 0 ? "an unloaded meter shows it" : `an unloaded meter misleads at ${share}\u00A0% of the points`;
  return `${minutesText(minutes)} by the probe order; ${misled}`;
}

/** The result of a hand-in as its table says it; a right verdict that is not proven was luck. */
export function resultTitle(grade: Grade): string {
  const isLucky = grade.is === "right" && grade.proof?.is === "not proven";
  return capital(`${resultWords(grade)}${isLucky ? ": lucky" : ""}`);
}
