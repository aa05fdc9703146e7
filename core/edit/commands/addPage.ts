import type { Outcome } from "../../base/outcome.ts";
import type { Millimetres } from "../../base/units.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import type { Page } from "../../circuit/circuit.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { editOf } from "../editOf.ts";
import { nextId } from "../ids.ts";
import { sizeRefusal } from "../pageFields.ts";
import { labelNeeded } from "../typed.ts";

/** What a new page is given; A4 on its side unless a size is said. */
export interface PageGiven {
  readonly title: string;
  readonly widthMm?: Millimetres;
  readonly heightMm?: Millimetres;
}

/** Adds a page after all others, under the next free id. Refuses `label-empty`, `label-long` and `page-size`. */
export function addPage(bench: Bench, { title, widthMm = 297, heightMm = 210 }: PageGiven): Outcome<Edit> {
  const { pages } = bench.circuit;
  const label = labelNeeded(title);
  if (!label.ok) return label;
  const refusal = sizeRefusal(widthMm, heightMm);
  if (refusal) return { ok: false, refusal };
  const id = nextId("p", new Set(pages.map((page) => page.id)));
  const item: Page = { id, title: label.value, widthMm, heightMm };
  return editOf(bench, WIRING_NAMES.addPage(label.value), [{ change: "add", list: "pages", at: pages.length, item }]);
}
