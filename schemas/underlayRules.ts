import { type Refusal, refuse } from "../core/base/outcome.ts";
import type { Circuit, Underlay } from "../core/circuit/circuit.ts";
import { isInPicture, LEAST_AREA, underlayAt } from "../core/circuit/underlays.ts";
import { isUnfolded } from "../core/drawing/projection.ts";
import type { Printed } from "../core/parts/kind.ts";
import { LIMITS } from "./limits.ts";
import { twice } from "./partRules.ts";

/**
 * What is wrong with the printed pages of a circuit and with what is tied to them: an id used twice, corners that fold, a
 * cut or a spot off the picture, a tie to none. Null where all is well.
 */
export function underlayRefusal(circuit: Circuit): Refusal | null {
  const ids = circuit.pages.flatMap(({ underlays = [] }) => underlays.map(({ id }) => id));
  const again = twice(ids, "pages", "printed page");
  if (again) return again;
  for (const [index, { underlays = [] }] of circuit.pages.entries()) {
    for (const [place, underlay] of underlays.entries()) {
      const refusal = shapeRefusal(underlay, `pages[${index}].underlays[${place}]`);
      if (refusal) return refusal;
    }
  }
  for (const list of ["parts", "wires"] as const) {
    for (const [index, { printed }] of circuit[list].entries()) {
      const refusal = printed ? tieRefusal(circuit, printed, `${list}[${index}].printed`) : null;
      if (refusal) return refusal;
    }
  }
  return null;
}

function shapeRefusal(underlay: Underlay, path: string): Refusal | null {
  const { image, cut, corners } = underlay;
  if (image.widthPx * image.heightPx > LIMITS.picturePixels) {
    return refuse("picture-pixels", { path: `${path}.image`, most: LIMITS.picturePixels / 1_000_000 }).refusal;
  }
  if (!isUnfolded(corners, LEAST_AREA.corners)) return refuse("corners-fold", { path: `${path}.corners` }).refusal;
  if (!cut) return null;
  if (!isUnfolded(cut, LEAST_AREA.cut)) return refuse("corners-fold", { path: `${path}.cut` }).refusal;
  return cut.every((corner) => isInPicture(underlay, corner))
    ? null
    : refuse("spot-off-picture", { path: `${path}.cut` }).refusal;
}

function tieRefusal(circuit: Circuit, { underlay: id, x, y }: Printed, path: string): Refusal | null {
  const lying = underlayAt(circuit, id);
  if (!lying) return refuse("underlay-unknown", { path: `${path}.underlay`, underlay: id }).refusal;
  return isInPicture(lying.underlay, [x, y]) ? null : refuse("spot-off-picture", { path }).refusal;
}
