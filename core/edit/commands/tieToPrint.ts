import { type Outcome, refuse } from "../../base/outcome.ts";
import { PRINTED_NAMES } from "../../base/words/printed.ts";
import { isInPicture } from "../../circuit/underlays.ts";
import type { Printed } from "../../parts/kind.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf, nameOfAll } from "../editOf.ts";
import { tiedOf } from "../tying.ts";
import { lyingOf } from "../underlayFields.ts";

/**
 * Ties a part or wire to the spot of a printed page that it was redrawn from, in whole pixels of its picture. Refuses
 * `thing-unknown`, `underlay-unknown`, `spot-off-picture` and `already-so`.
 */
export function tieToPrint(bench: Bench, id: string, { underlay, x, y }: Printed): Outcome<Edit> {
  const thing = tiedOf(bench.circuit, id);
  if (!thing.ok) return thing;
  const lying = lyingOf(bench.circuit, underlay);
  if (!lying.ok) return lying;
  if (!isInPicture(lying.value.underlay, [x, y])) return refuse("spot-off-picture");
  const value: Printed = { underlay, x: Math.round(x), y: Math.round(y) };
  const { list, printed: was } = thing.value;
  const what = nameOfAll(bench.circuit, [id]);
  if (was && was.underlay === underlay && was.x === value.x && was.y === value.y) return alreadySo(what);
  const name = PRINTED_NAMES.tie(what, lying.value.underlay.title);
  return editOf(bench, name, [{ change: "item", list, id, field: "printed", value }]);
}
