import { PAPER_NAMES, PAPER_SIZES, type PaperName } from "../circuit/paperSizes.ts";
import type { Adjusting } from "../state/state.ts";
import type { PaperSize } from "./adjusting.ts";

/** Papers that a photograph may be of; "page" is one whose size is not known, which is laid as large as the page takes. */
export const PAPERS_OFFERED = ["page", ...PAPER_NAMES] as const;

/** The paper that the person says the photograph is of, as its short and long side. */
export function paperChosen({ paper }: Adjusting): PaperSize {
  return PAPER_NAMES.includes(paper as PaperName) ? PAPER_SIZES[paper as PaperName] : null;
}
