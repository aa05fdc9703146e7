import type { PartId, PointId } from "../../core/base/ids.ts";
import { remember } from "../../core/base/memo.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import type { TerminalSpot } from "../../core/circuit/placeSymbol.ts";
import { terminalPoint, wireSideOf } from "../../core/circuit/points.ts";
import { sheetPage } from "../../core/circuit/sheetPage.ts";
import type { Mark } from "../../core/drawing/mark.ts";
import { type Bounds, boundsOfAll } from "../../core/drawing/measure.ts";
import type { Kind, Look, Part, PartView } from "../../core/parts/kind.ts";

/** A part on its page: where it stands, and the box round its symbol at rest without its words. */
export interface StandingPart {
  readonly part: Part;
  readonly kind: Kind;
  readonly view: PartView;
  readonly box: Bounds;
}

/** What stands on one page, whatever is thrown. */
export interface Standing {
  readonly parts: ReadonlyMap<PartId, StandingPart>;
  /** Every placed terminal by the point that stands for it: the cavity that carries it, or the terminal itself. */
  readonly points: ReadonlyMap<PointId, TerminalSpot>;
  /** The same, by the terminal's own name too. */
  readonly spots: ReadonlyMap<PointId, TerminalSpot>;
}

const pagesOf = remember((_circuit: Circuit) => new Map<string, Standing>());

/** The parts and points of a page, remembered for each circuit. */
export function standingOn(circuit: Circuit, page: string, look: Look): Standing {
  const pages = pagesOf(circuit);
  const known = pages.get(`${look} ${page}`);
  if (known) return known;
  const standing = stand(circuit, page, look);
  pages.set(`${look} ${page}`, standing);
  return standing;
}

function stand(circuit: Circuit, page: string, look: Look): Standing {
  const drawn = sheetPage(circuit, page, look);
  const parts = new Map<PartId, StandingPart>();
  const points = new Map<PointId, TerminalSpot>();
  for (const { part, kind, view, rest, placed } of drawn.parts) {
    const { marks, outline, terminals } = placed(rest);
    parts.set(part.id, { part, kind, view, box: boundsOfAll(marks.filter(isDrawn)) ?? outline });
    for (const terminal of Object.keys(terminals)) {
      const point = wireSideOf(circuit, terminalPoint(part, terminal));
      points.set(point, drawn.spots.get(point)!);
    }
  }
  return { parts, points, spots: drawn.spots };
}

function isDrawn(mark: Mark): boolean {
  return mark.mark !== "text";
}
