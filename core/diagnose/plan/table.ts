import { remember } from "../../base/memo.ts";
import type { Problem } from "./problem.ts";

/**
 * The outcomes of all probes laid out for a sweep: of each probe only the suspects that show something else than most do.
 * Those of probe p stand at start[p] .. start[p + 1] - 1, those of one repair side by side.
 */
export interface Table {
  /** One more than there are probes. */
  readonly start: Uint32Array;
  readonly suspect: Uint16Array;
  /** Outcome class of each. */
  readonly outcome: Uint8Array;
}

const MOST_CLASSES = 256;

/** Lays the outcomes of a problem out, once. */
export const tableOf = remember(({ probes, repairs }: Problem): Table => {
  const order = Uint16Array.from(repairs, (_, index) => index);
  order.sort((one, other) => repairs[one]! - repairs[other]! || one - other);
  const commonest = probes.map(({ classes }) => commonestOf(classes));
  const start = new Uint32Array(probes.length + 1);
  probes.forEach(({ classes }, probe) => {
    start[probe + 1] = start[probe]! + classes.length - commonest[probe]!.suspects;
  });
  const [suspect, outcome] = [new Uint16Array(start[probes.length]!), new Uint8Array(start[probes.length]!)];
  probes.forEach(({ classes }, probe) => {
    const usual = commonest[probe]!.outcome;
    let at = start[probe]!;
    if (at === start[probe + 1]) return;
    for (let k = 0; k < order.length; k++) {
      const each = order[k]!;
      const shown = classes[each]!;
      if (shown === usual) continue;
      suspect[at] = each;
      outcome[at++] = shown;
    }
  });
  return { start, suspect, outcome };
});

const counts = new Uint32Array(MOST_CLASSES);

/** What most suspects show; of equals what the first of them shows, however the classes are numbered. */
function commonestOf(classes: Uint8Array): { readonly outcome: number; readonly suspects: number } {
  counts.fill(0);
  let most = 0;
  for (let at = 0; at < classes.length; at++) most = Math.max(most, ++counts[classes[at]!]!);
  const first = classes.findIndex((each) => counts[each] === most);
  return { outcome: classes[first] ?? 0, suspects: most };
}
