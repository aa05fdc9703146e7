import { type Outcome, refuse } from "../../base/outcome.ts";
import type { GridUnits } from "../../base/units.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import type { PartPlace } from "../../circuit/circuit.ts";
import { kindOf } from "../../parts/catalogue.ts";
import type { Settings } from "../../parts/kind.ts";
import type { Bench } from "../bench.ts";
import type { Edit } from "../edit.ts";
import { editOf, goingOn, lowerCase } from "../editOf.ts";
import { nextId, takenIds } from "../ids.ts";
import { firstFace, firstPart, settingsRefusal } from "../newPart.ts";
import { hidingRefusal, placing } from "../standOnPage.ts";
import { labelOf } from "./relabelPart.ts";

/** What may be said of a part before it is drawn. */
export interface FirstWords {
  readonly turn?: 0 | 90 | 180 | 270;
  readonly flip?: boolean;
  readonly settings?: Settings;
  readonly label?: string;
}

/** The designator that the next part of a kind gets, S7 after S6; null where there is no such kind. */
export function nextDesignator({ circuit }: Bench, kind: string): string | null {
  const known = kindOf(kind);
  return known ? nextId(known.letter, takenIds(circuit)) : null;
}

/**
 * Draws a part of a kind with its top left in a place of a page, under the next free designator; an in-line joint gets its
 * face too. Refuses `kind-unknown`, settings that the kind does not take, `label-long`, `page-unknown`, `off-the-page` and
 * `part-hidden`.
 */
export function addPart(
  bench: Bench,
  kindName: string,
  page: string,
  x: GridUnits,
  y: GridUnits,
  { turn = 0, flip = false, settings = {}, label = "" }: FirstWords = {},
): Outcome<Edit> {
  const { circuit } = bench;
  const kind = kindOf(kindName);
  if (!kind) return refuse("kind-unknown", { kind: kindName });
  const id = nextId(kind.letter, takenIds(circuit));
  const refusal = settingsRefusal(kind, id, settings);
  if (refusal) return { ok: false, refusal };
  const words = labelOf(label);
  if (!words.ok) return words;
  const part = { ...firstPart(kind, id, settings), ...(words.value !== "" && { label: words.value }) };
  const place: PartPlace = {
    page,
    x: Math.round(x),
    y: Math.round(y),
    ...(turn !== 0 && { turn }),
    ...(flip && { flip }),
  };
  const placed = placing(circuit, part, place);
  if (!placed.ok) return placed;
  const hiding = hidingRefusal(circuit, [{ part, to: place }]);
  if (hiding) return { ok: false, refusal: hiding };
  const face = firstFace(kind, part);
  return editOf(bench, EDIT_NAMES.addPart(`${lowerCase(kind.title)} ${id}`), [
    goingOn(bench),
    { change: "add", list: "parts", at: circuit.parts.length, item: part },
    ...(face ? [{ change: "add", list: "connectors", at: circuit.connectors.length, item: face } as const] : []),
    placed.value,
  ]);
}
