import type { Outcome } from "../../base/outcome.ts";
import type { Millimetres } from "../../base/units.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import type { Circuit } from "../../circuit/circuit.ts";
import { partAt } from "../../circuit/points.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf } from "../editOf.ts";
import { itemChanges } from "../itemChanges.ts";
import { pageOf, sizeRefusal } from "../pageFields.ts";
import { bendsOf } from "../setBends.ts";
import { placing } from "../standOnPage.ts";
import { pageWith } from "../wireEnds.ts";

/**
 * Gives a page another size. Refuses `page-unknown`, `page-size`, `already-so`, and `off-the-page` or `bend-off-page` where
 * something that stands on it would not lie on it any more.
 */
export function resizePage(bench: Bench, id: string, widthMm: Millimetres, heightMm: Millimetres): Outcome<Edit> {
  const { circuit } = bench;
  const page = pageOf(circuit, id);
  if (!page.ok) return page;
  const refusal = sizeRefusal(widthMm, heightMm);
  if (refusal) return { ok: false, refusal };
  const now = { ...page.value, widthMm, heightMm };
  const changes = itemChanges("pages", page.value, now);
  if (changes.length === 0) return alreadySo(page.value.title);
  const resized: Circuit = { ...circuit, pages: circuit.pages.map((each) => (each === page.value ? now : each)) };
  const off = firstOff(resized, id);
  return off.ok ? editOf(bench, WIRING_NAMES.resizePage(page.value.title), changes) : off;
}

function firstOff(circuit: Circuit, page: string): Outcome<unknown> {
  for (const [id, place] of Object.entries(circuit.placement.parts)) {
    const part = partAt(circuit, id);
    const placed = part && place.page === page ? placing(circuit, part, place) : null;
    if (placed && !placed.ok) return placed;
  }
  for (const { id, from, to } of circuit.wires) {
    const bends = circuit.placement.wires[id];
    const kept = bends && pageWith(circuit, [from, to])?.id === page ? bendsOf(circuit, [from, to], bends) : null;
    if (kept && !kept.ok) return kept;
  }
  return { ok: true, value: null };
}
