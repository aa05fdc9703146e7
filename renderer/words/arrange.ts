import type { Tidiness } from "../../core/circuit/tidiness.ts";
import type { Compared } from "../../core/edit/arranging.ts";
import { counted } from "./figures.ts";

/** The figures of a page: "7 crossings and 31 bends", and what is broken where anything is. */
export function tidinessText({ broken, crossings, bends }: Tidiness): string {
  const drawn = `${counted(crossings, "crossing")} and ${counted(bends, "bend")}`;
  return broken === 0 ? drawn : `${drawn}, ${counted(broken, "wire")} without a way`;
}

/** What came of arranging, both figures told. */
export function comparedText({ before, after, isBetter }: Compared): string {
  if (isBetter) return `${tidinessText(after)}, where there were ${tidinessText(before)}.`;
  return `${tidinessText(before)} as it stands, ${tidinessText(after)} arranged.`;
}
