import { type Outcome, ok, type Refusal, refuse } from "../base/outcome.ts";
import type { Millimetres } from "../base/units.ts";
import type { Circuit, Page } from "../circuit/circuit.ts";

/** Least and most millimetres of a page's side, as a circuit file takes them. */
const SIDE = { least: 50, most: 5_000 } as const;

/** The page of this id, or the refusal `page-unknown`. */
export function pageOf({ pages }: Circuit, id: string): Outcome<Page> {
  const page = pages.find((candidate) => candidate.id === id);
  return page ? ok(page) : refuse("page-unknown", { page: id });
}

/** Why a page cannot have this size, `page-size`; null where it can. */
export function sizeRefusal(widthMm: Millimetres, heightMm: Millimetres): Refusal | null {
  const isWithin = [widthMm, heightMm].every((side) => side >= SIDE.least && side <= SIDE.most);
  return isWithin ? null : refuse("page-size", { ...SIDE, width: widthMm, height: heightMm }).refusal;
}
