import type { Circuit, Picture } from "./circuit.ts";
import { underlaysOf } from "./underlays.ts";

/** Longer side of the photo of a place, in pixels: enough to find a clip by, and a phone's photograph comes to a tenth. */
export const PHOTO_SIDE = 1_600;

/** A picture that a circuit shows, with the name of what it belongs to. */
export interface Shown {
  readonly image: Picture;
  readonly title: string;
}

/** Every picture that a circuit shows, its printed pages first, then photos of places; one shown twice comes twice. */
export function picturesShown(circuit: Circuit): readonly Shown[] {
  const printed = underlaysOf(circuit).map(({ underlay: { image, title } }) => ({ image, title }));
  const photos = circuit.access.flatMap(({ photo, label }) => (photo ? [{ image: photo, title: label }] : []));
  return [...printed, ...photos];
}
