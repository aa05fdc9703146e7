import { type Outcome, refuse } from "../../base/outcome.ts";
import { WIRING_NAMES } from "../../base/words/wiring.ts";
import type { AccessGroup, Picture } from "../../circuit/circuit.ts";
import { PHOTO_SIDE } from "../../circuit/pictures.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf } from "../editOf.ts";
import { itemChanges } from "../itemChanges.ts";

/**
 * Gives an access group its one photo, or takes it away with null. Refuses `access-unknown`, `photo-side` for a picture that
 * was not brought down to size, and `already-so`.
 */
export function photoAccess(bench: Bench, id: string, photo: Picture | null): Outcome<Edit> {
  const was = bench.circuit.access.find((group) => group.id === id);
  if (!was) return refuse("access-unknown", { access: id });
  if (photo && Math.max(photo.widthPx, photo.heightPx) > PHOTO_SIDE) return refuse("photo-side", { most: PHOTO_SIDE });
  const { photo: _, ...without } = was;
  const now: AccessGroup = photo ? { ...without, photo } : without;
  const changes = itemChanges("access", was, now);
  if (changes.length === 0) return alreadySo(was.label);
  return editOf(bench, photo ? WIRING_NAMES.photoAccess(was.label) : WIRING_NAMES.unphotoAccess(was.label), changes);
}
