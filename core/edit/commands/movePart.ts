import type { PartId } from "../../base/ids.ts";
import { type Outcome, refuse } from "../../base/outcome.ts";
import type { GridUnits } from "../../base/units.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import type { PartPlace } from "../../circuit/circuit.ts";
import type { Bench } from "../bench.ts";
import { bendsDropped, bendsFollowing } from "../bendsFollowing.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf, nameOf } from "../editOf.ts";
import { hidingRefusal, placing } from "../standOnPage.ts";

/** Where a part goes: the top left of its outline, on its own page unless another is named. */
export interface Goal {
  readonly x: GridUnits;
  readonly y: GridUnits;
  readonly page?: string;
}

/**
 * Moves a part on its page or to another, or places one that stands nowhere yet; its wires follow. Refuses `part-unknown`,
 * `not-placed` where no page is known, `page-unknown`, `off-the-page`, `part-hidden` and `already-so`.
 */
export function movePart(bench: Bench, id: PartId, { x, y, page }: Goal): Outcome<Edit> {
  const { circuit } = bench;
  const part = circuit.parts.find((candidate) => candidate.id === id);
  if (!part) return refuse("part-unknown", { part: id });
  const from = circuit.placement.parts[id];
  const onPage = page ?? from?.page;
  if (onPage === undefined) return refuse("not-placed", { part: id });
  const to: PartPlace = { ...from, page: onPage, x: Math.round(x), y: Math.round(y) };
  if (from && from.page === to.page && from.x === to.x && from.y === to.y) return alreadySo(nameOf(circuit, id));
  const placed = placing(circuit, part, to);
  if (!placed.ok) return placed;
  const refusal = hidingRefusal(circuit, [{ part, to }]);
  if (refusal) return { ok: false, refusal };
  const staysOnPage = from?.page === to.page;
  const bends = staysOnPage ? bendsFollowing(circuit, [{ part, from, to }]) : bendsDropped(circuit, part);
  return editOf(bench, EDIT_NAMES.movePart(nameOf(circuit, id)), [placed.value, ...bends]);
}
