import type { Millimetres } from "../../core/base/units.ts";
import type { Page } from "../../core/circuit/circuit.ts";
import { PAPERS } from "../../core/paper/placing.ts";

/** The papers that sheets are printed on, by the names people know them by: short and long side in millimetres. */
export const PAPER_SIZES = {
  A4: PAPERS.a4,
  A3: PAPERS.a3,
  Letter: PAPERS.letter,
  Tabloid: PAPERS.tabloid,
} as const satisfies Readonly<Record<string, readonly [Millimetres, Millimetres]>>;

/** The name of a paper. */
export type PaperName = keyof typeof PAPER_SIZES;

/** Names of the papers in the order they are offered. */
export const PAPER_NAMES = Object.keys(PAPER_SIZES) as readonly PaperName[];

/** A drawn page is given in whole millimetres where the paper has tenths. */
const NEAR_MM: Millimetres = 1;

/** The paper that a page has the size of, lying or standing; null for a size of its own. */
export function paperOf({ widthMm, heightMm }: Pick<Page, "widthMm" | "heightMm">): PaperName | null {
  const [short, long] = [Math.min(widthMm, heightMm), Math.max(widthMm, heightMm)];
  const isNear = (side: Millimetres, wanted: Millimetres): boolean => Math.abs(side - wanted) <= NEAR_MM;
  return PAPER_NAMES.find((name) => isNear(short, PAPER_SIZES[name][0]) && isNear(long, PAPER_SIZES[name][1])) ?? null;
}

/** Width and height of a paper that lies on its long side, or stands on its short one. */
export function sidesOf(paper: PaperName, isStanding: boolean): readonly [Millimetres, Millimetres] {
  const [short, long] = PAPER_SIZES[paper];
  return isStanding ? [short, long] : [long, short];
}
