import type { Expectation, FunctionCheck } from "../circuit/circuit.ts";
import type { PartLive } from "./live.ts";

/** Level from which a load works, and from which it is at least weak. */
export const WORKS_FROM = 0.7;
export const WEAK_FROM = 0.15;

/** What the program finds when it tries a function check. */
export type Verdict = "works" | "weak" | "dead" | "wrong";

/** What a person may say of a function check. */
export const OBSERVED_WORDS = [
  "works",
  "dead",
  "weak",
  "wrong",
  "stays-on",
  "sometimes",
  "blows-its-fuse",
  "not-tried",
] as const;
export type Observed = (typeof OBSERVED_WORDS)[number];

/**
 * Judges a check by the level its load reaches: works from 0.7, weak from 0.15, dead below; wrong where it runs the
 * other way or does anything when it should be off.
 */
export function judge(
  check: Pick<FunctionCheck, "expect">,
  load: Pick<PartLive, "doing" | "level"> | undefined,
): Verdict {
  if (!load) return "dead";
  const level = load.level ?? 0;
  if (check.expect === "off") return level >= WEAK_FROM ? "wrong" : "works";
  if (level >= WEAK_FROM && runsWrong(check.expect, load)) return "wrong";
  if (level >= WORKS_FROM) return "works";
  return level >= WEAK_FROM ? "weak" : "dead";
}

function runsWrong(expect: Expectation, load: Pick<PartLive, "doing">): boolean {
  if (expect === "flashes") return load.doing !== "flashing";
  return (expect === "forward" && load.doing === "reverse") || (expect === "reverse" && load.doing === "forward");
}

/** Whether a verdict is what a person saw, as far as a steady circuit can tell. */
export function agrees(verdict: Verdict, observed: Observed, melted: boolean): boolean {
  switch (observed) {
    case "works":
    case "dead":
    case "weak":
    case "wrong":
      return verdict === observed;
    case "stays-on":
      return verdict === "wrong";
    case "blows-its-fuse":
      return melted;
    case "sometimes":
      return verdict !== "works";
    case "not-tried":
      return true;
  }
}
