import { figure } from "../base/figure.ts";
import type { Share } from "../base/units.ts";
import { DIAGNOSE_SENTENCES as SAY } from "../base/words/diagnose.ts";
import { PAIR_WORDS } from "../base/words/pairs.ts";
import { repairsOf } from "./repairs.ts";
import type { ProbeOrder } from "./step.ts";

/** What is not on the drawing is spoken of from this share on. */
const LEAST_ELSEWHERE: Share = 0.1;

/** How far the search is, in sentences: what was found or is still expected, and which readings cannot all be right. */
export function progressWords({
  progress,
  suspects,
  expectedMinutes,
  elsewhere,
  clashes,
  jointly,
}: ProbeOrder): readonly string[] {
  const leader = repairsOf(suspects)[0];
  const found = leader ? `${leader.suspects[0]!.title}, ${percent(leader.share)}` : "";
  const standing = {
    open: SAY.open(figure(expectedMinutes, 0)),
    certain: SAY.certain(found),
    tied: SAY.tied(found),
    "order-now": SAY.orderNow(found),
    none: SAY.none,
  }[progress];
  return [
    standing,
    ...(elsewhere >= LEAST_ELSEWHERE ? [SAY.elsewhere(percent(elsewhere))] : []),
    ...clashes.map((numbers) => (numbers.length === 2 ? SAY.clash(numbers[0]!, numbers[1]!) : SAY.misfit(numbers[0]!))),
    ...(jointly[0] === undefined ? [] : [PAIR_WORDS.explains(jointly[0])]),
  ];
}

/** A share in whole per cent; "under 1 %" and "over 99 %" where it would be none or all: neither is ever known. */
export function percent(share: Share): string {
  if (share > 0 && share < 0.005) return "under 1\u00a0%";
  if (share >= 0.995 && share < 1) return "over 99\u00a0%";
  return `${Math.round(share * 100)}\u00a0%`;
}
