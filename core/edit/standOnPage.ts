import type { PartId } from "../base/ids.ts";
import { type Outcome, ok, type Refusal, refuse } from "../base/outcome.ts";
import type { Circuit, PartPlace } from "../circuit/circuit.ts";
import { boxesOn, hides } from "../circuit/overlap.ts";
import { type PlacedShape, placeSymbol } from "../circuit/placeSymbol.ts";
import { restPose } from "../circuit/sheetPose.ts";
import { gridUnitsOf } from "../drawing/scale.ts";
import { kindOf } from "../parts/catalogue.ts";
import type { Part } from "../parts/kind.ts";
import { viewOf } from "../parts/view.ts";
import type { Change } from "./change.ts";

/** A part and where it stands, or the refusal `part-unknown` or `not-placed`. */
export function placeOf(circuit: Circuit, id: PartId): Outcome<{ readonly part: Part; readonly place: PartPlace }> {
  const part = circuit.parts.find((candidate) => candidate.id === id);
  if (!part) return refuse("part-unknown", { part: id });
  const place = circuit.placement.parts[id];
  return place ? ok({ part, place }) : refuse("not-placed", { part: id });
}

/** The symbol of a part as it would stand in a place, at rest. */
export function shapeAt(circuit: Circuit, part: Part, place: PartPlace): PlacedShape {
  const kind = kindOf(part.kind)!;
  const view = viewOf(kind, part, circuit.nominalVolts);
  return placeSymbol(kind.symbol(view, restPose(kind, view), "iec"), place);
}

/** A page as a sentence names it: its title in quotes, or its id where it has none. */
export function pageName({ pages }: Circuit, id: string): string {
  const title = pages.find((page) => page.id === id)?.title ?? "";
  return title === "" ? id : `"${title}"`;
}

/** The change that puts a part in a place. Refuses `page-unknown`, and `off-the-page` where it would not lie on it whole. */
export function placing(circuit: Circuit, part: Part, place: PartPlace): Outcome<Change> {
  const page = circuit.pages.find(({ id }) => id === place.page);
  if (!page) return refuse("page-unknown", { page: place.page });
  const { left, top, right, bottom } = shapeAt(circuit, part, place).outline;
  const isOn = left >= 0 && top >= 0 && right <= gridUnitsOf(page.widthMm) && bottom <= gridUnitsOf(page.heightMm);
  if (!isOn) return refuse("off-the-page", { part: part.id, page: pageName(circuit, page.id) });
  return ok({ change: "entry", record: "places", key: part.id, value: place });
}

/** `part-hidden` where a part would lie just over another one, those that move with it left out; null where it may stand. */
export function hidingRefusal(
  circuit: Circuit,
  moves: readonly { readonly part: Part; readonly to: PartPlace }[],
): Refusal | null {
  const moving = new Set(moves.map(({ part }) => part.id));
  const going = moves.map(({ part, to }) => ({ id: part.id, page: to.page, box: shapeAt(circuit, part, to).outline }));
  for (const [index, { id, page, box }] of going.entries()) {
    const staying = boxesOn(circuit, page).filter((other) => !moving.has(other.id));
    const others = [...staying, ...going.slice(index + 1).filter((other) => other.page === page)];
    const hidden = others.find((other) => hides(box, other.box));
    if (hidden) return refuse("part-hidden", { part: id, other: hidden.id }).refusal;
  }
  return null;
}
