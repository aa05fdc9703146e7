import type { PartId } from "../base/ids.ts";
import { type Outcome, ok, refuse } from "../base/outcome.ts";
import type { Circuit, PartPlace } from "../circuit/circuit.ts";
import type { Bounds } from "../drawing/measure.ts";
import type { Part } from "../parts/kind.ts";
import { bendsFollowing, type Move } from "./bendsFollowing.ts";
import type { Change } from "./change.ts";
import { hidingRefusal, pageName, placeOf, placing, shapeAt } from "./standOnPage.ts";

/** A part with its place and the outline of its symbol there, in grid units. */
export interface Standing {
  readonly part: Part;
  readonly place: PartPlace;
  readonly outline: Bounds;
}

/** Parts that are changed together, each once, in the order given, and the box around them all. */
export interface Together {
  readonly parts: readonly Standing[];
  readonly box: Bounds;
}

/**
 * Parts that stand on one page. Refuses `nothing-chosen`, `part-unknown`, `not-placed`, `pages-several`, and
 * `parts-few` where there are fewer than so many.
 */
export function together(circuit: Circuit, ids: readonly PartId[], least: number): Outcome<Together> {
  const parts: Standing[] = [];
  for (const id of new Set(ids)) {
    const found = placeOf(circuit, id);
    if (!found.ok) return found;
    parts.push({ ...found.value, outline: shapeAt(circuit, found.value.part, found.value.place).outline });
  }
  if (parts.length === 0) return refuse("nothing-chosen");
  if (parts.length < least) return refuse("parts-few", { least, count: parts.length });
  const pages = [...new Set(parts.map(({ place }) => place.page))];
  if (pages.length > 1)
    return refuse("pages-several", { pages: pages.map((page) => pageName(circuit, page)).join(", ") });
  return ok({ parts, box: boxAround(parts.map(({ outline }) => outline)) });
}

/** The smallest box around some boxes. */
export function boxAround(boxes: readonly Bounds[]): Bounds {
  return {
    left: Math.min(...boxes.map(({ left }) => left)),
    top: Math.min(...boxes.map(({ top }) => top)),
    right: Math.max(...boxes.map(({ right }) => right)),
    bottom: Math.max(...boxes.map(({ bottom }) => bottom)),
  };
}

/** Changes that put parts in new places, without what follows for their wires. Refuses as `placing` does. */
export function placingAll(circuit: Circuit, moves: readonly Pick<Move, "part" | "to">[]): Outcome<readonly Change[]> {
  const changes: Change[] = [];
  for (const { part, to } of moves) {
    const placed = placing(circuit, part, to);
    if (!placed.ok) return placed;
    changes.push(placed.value);
  }
  return ok(changes);
}

/**
 * Changes that move parts on their pages, and the bends of their wires with them. Refuses as `placing` does, and
 * `part-hidden`.
 */
export function movingAll(circuit: Circuit, moves: readonly Move[]): Outcome<readonly Change[]> {
  const refusal = hidingRefusal(circuit, moves);
  if (refusal) return { ok: false, refusal };
  const placed = placingAll(circuit, moves);
  return placed.ok ? ok([...placed.value, ...bendsFollowing(circuit, moves)]) : placed;
}
