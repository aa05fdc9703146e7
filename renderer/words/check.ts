import type { FunctionCheck } from "../../core/circuit/circuit.ts";
import type { Observed, Verdict } from "../../core/live/judge.ts";

/** What a person may say of a check, in the order they are offered. */
export const OBSERVED_TITLES: Readonly<Record<Observed, string>> = {
  "not-tried": "Not tried",
  works: "Works",
  dead: "Dead",
  weak: "Weak",
  wrong: "Does the wrong thing",
  "stays-on": "Stays on",
  sometimes: "Sometimes",
  "blows-its-fuse": "Blows its fuse",
};

/** A verdict of the program in one word. */
export const VERDICT_TITLES: Readonly<Record<Verdict, string>> = {
  works: "works",
  weak: "weak",
  dead: "dead",
  wrong: "does the wrong thing",
};

/** What a check that is complained of is taken for until a person says otherwise. */
export function failsAs(check: FunctionCheck): Observed {
  return check.expect === "off" ? "wrong" : "dead";
}
