import { type Outcome, refuse } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import type { Bench } from "../bench.ts";
import { colourList } from "../colourList.ts";
import { connectorSides, pagesOfPairs, pairsAcross } from "../connectorSides.ts";
import type { Edit } from "../edit.ts";
import { drawWires } from "./drawWires.ts";

/**
 * Draws all wires from one side of a connector to another, place by place as `pairsAcross` says, in the colours typed one
 * after another. Refuses `side-unknown`, `wires-none` where all are there, `pages-several`, and what `colourList` and `drawWires` refuse.
 */
export function wireAcross(bench: Bench, from: string, to: string, colours = ""): Outcome<Edit> {
  const { circuit } = bench;
  const sides = new Map(connectorSides(circuit).map((side) => [side.id, side]));
  const [one, other] = [sides.get(from), sides.get(to)];
  if (!one || !other) return refuse("side-unknown", { side: one ? to : from });
  const pairs = pairsAcross(circuit, one, other);
  if (pairs.length === 0) return refuse("wires-none");
  const pages = pagesOfPairs(circuit, pairs);
  if (pages.length > 1) return refuse("pages-several", { pages: pages.join(", ") });
  const read = colourList(circuit, colours, pairs.length);
  if (!read.ok) return read;
  const drawn = drawWires(
    bench,
    pairs.map((pair, index) => {
      const colour = read.value[index];
      return colour === undefined ? pair : { ...pair, colour };
    }),
  );
  if (!drawn.ok) return drawn;
  return { ...drawn, value: { ...drawn.value, name: WIRING_NAMES.wireAcross(pairs.length, from, to) } };
}
