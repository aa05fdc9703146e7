import { type Outcome, ok, refuse } from "../base/outcome.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { FACTOR_LIMITS, mayBeWeighed, mayBeWeighedInShop, type WeightFactor } from "./weighing.ts";

/**
 * Reads `M3:seized=3: bulletin 12 of 2024`; with no circuit it is a shop's, `motor:seized=3: own records`. Refuses
 * `weight-spelling` and as `factorOf`.
 */
export function parseWeight(text: string, circuit: Circuit | null): Outcome<WeightFactor> {
  // The value of a fault follows an equals sign too: the last one before the source counts.
  const [, of = "", times = "", source = ""] = /^\s*(\S+)\s*=\s*([\d.,]+)\s*:\s*(.*)$/.exec(text) ?? [];
  return of === "" ? refuse("weight-spelling", { text }) : factorOf(of, times, source.trim(), circuit);
}

/**
 * A factor as typed. Refuses `weight-of` or `weight-of-shop`, `weight-limits`, and `weight-source` where nothing or too much is
 * said of where it comes from.
 */
export function factorOf(of: string, typed: string, source: string, circuit: Circuit | null): Outcome<WeightFactor> {
  if (circuit && !mayBeWeighed(circuit, of)) return refuse("weight-of", { of });
  if (!circuit && !mayBeWeighedInShop(of)) return refuse("weight-of-shop", { of });
  const factor = Number(typed.trim().replace(",", "."));
  const { least, most } = FACTOR_LIMITS;
  if (typed.trim() === "" || !(factor >= least && factor <= most))
    return refuse("weight-limits", { least, most, typed });
  if (source.trim() === "" || source.length > FACTOR_LIMITS.source) return refuse("weight-source");
  return ok({ of, factor, source: source.trim() });
}

/** A factor in the spelling that `parseWeight` reads. */
export function weightText({ of, factor, source }: WeightFactor): string {
  return `${of}=${factor}: ${source}`;
}

/** Whether a value from outside has the shape of a list of factors. */
export function areFactors(value: unknown): value is readonly WeightFactor[] {
  return Array.isArray(value) && value.length <= FACTOR_LIMITS.count && value.every(isFactor);
}

function isFactor(value: unknown): boolean {
  if (typeof value !== "object" || value === null) return false;
  const { of, factor, source } = value as Record<string, unknown>;
  const isIn = typeof factor === "number" && factor >= FACTOR_LIMITS.least && factor <= FACTOR_LIMITS.most;
  return isIn && isText(of, FACTOR_LIMITS.of) && isText(source, FACTOR_LIMITS.source);
}

function isText(value: unknown, most: number): boolean {
  return typeof value === "string" && value !== "" && value.length <= most;
}
