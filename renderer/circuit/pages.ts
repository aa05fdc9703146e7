import { parseAmount } from "../../core/base/amount.ts";
import { type Outcome, ok } from "../../core/base/outcome.ts";
import type { Millimetres } from "../../core/base/units.ts";
import type { Circuit, Page } from "../../core/circuit/circuit.ts";
import { addPage } from "../../core/edit/commands/addPage.ts";
import { resizePage } from "../../core/edit/commands/resizePage.ts";
import type { Command } from "../state/action.ts";

/** Adds a page as large as the last one, under the next title that no page has: "Page 3". */
export const addNextPage: Command = (bench) => {
  const { pages } = bench.circuit;
  const last = pages.at(-1);
  return addPage(bench, {
    title: nextTitle(pages),
    ...(last && { widthMm: last.widthMm, heightMm: last.heightMm }),
  });
};

function nextTitle(pages: readonly Page[]): string {
  for (let number = pages.length + 1; ; number++) {
    const title = `Page ${number}`;
    if (pages.every((page) => page.title !== title)) return title;
  }
}

/** Ids of the parts that stand on a page, in the order of the circuit. */
export function standingOn({ parts, placement }: Circuit, page: string): readonly string[] {
  return parts.filter(({ id }) => placement.parts[id]?.page === page).map(({ id }) => id);
}

const MOST_NAMED = 4;

/** Some names in a sentence: "S1, S2, M4"; of many the first few, "and 9 more". */
export function namedFew(ids: readonly string[]): string {
  const rest = ids.length - MOST_NAMED;
  // One more takes no more room than to say so.
  if (rest <= 1) return ids.join(", ");
  return `${ids.slice(0, MOST_NAMED).join(", ")} and ${rest} more`;
}

/** Gives a page one other side, as typed: "420", "42 cm", "16.5 in". Refuses a wrong amount, and as `resizePage` does. */
export function sideChanged(page: Page, side: "widthMm" | "heightMm", typed: string): Command {
  return (bench) => {
    const amount = millimetres(typed);
    if (!amount.ok) return amount;
    const isWidth = side === "widthMm";
    return resizePage(bench, page.id, isWidth ? amount.value : page.widthMm, isWidth ? page.heightMm : amount.value);
  };
}

const MM_PER_METRE = 1000;
/** A page is measured to a tenth of a millimetre. */
const TENTHS = 10;

/** A side as typed; a bare number is millimetres. */
function millimetres(typed: string): Outcome<Millimetres> {
  const bare = parseAmount(typed, "");
  if (bare.ok) return bare;
  const metres = parseAmount(typed, "m");
  return metres.ok ? ok(Math.round(metres.value * MM_PER_METRE * TENTHS) / TENTHS) : metres;
}
