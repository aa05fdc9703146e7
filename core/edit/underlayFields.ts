import { type Outcome, ok, type Refusal, refuse } from "../base/outcome.ts";
import type { Millimetres } from "../base/units.ts";
import type { Circuit, Page, Underlay } from "../circuit/circuit.ts";
import { cutOf, isInPicture, LEAST_AREA, type Lying, underlayAt } from "../circuit/underlays.ts";
import { boxAround, eachCorner, isUnfolded, type Quad } from "../drawing/projection.ts";
import type { Bench } from "./bench.ts";
import type { Edit } from "./edit.ts";
import { alreadySo, editOf } from "./editOf.ts";

/** Most printed pages under one page, as a circuit file takes them. */
export const MOST_UNDERLAYS = 40;
/** How far off a page a corner may lie, as a circuit file takes it. */
const MOST_OFF: Millimetres = 20_000;
/** Corners are kept to hundredths of a millimetre, and a cut to hundredths of a pixel. */
const STEPS = 100;

/** The printed page of this id, or the refusal `underlay-unknown`. */
export function lyingOf(circuit: Circuit, id: string): Outcome<Lying> {
  const lying = underlayAt(circuit, id);
  return lying ? ok(lying) : refuse("underlay-unknown", { underlay: id });
}

/** The same where it may be moved; refuses `underlay-locked` besides. */
export function looseOf(circuit: Circuit, id: string): Outcome<Lying> {
  const lying = lyingOf(circuit, id);
  if (!lying.ok || !lying.value.underlay.isLocked) return lying;
  return refuse("underlay-locked", { title: lying.value.underlay.title });
}

/** Corners as they are kept. */
export function rounded(quad: Quad): Quad {
  const step = (value: number): number => Math.round(value * STEPS) / STEPS + 0;
  return eachCorner(quad, ([x, y]) => [step(x), step(y)]);
}

/**
 * Why a printed page cannot lie so: `corners-fold`, `corners-far`, `underlay-off-page` where nothing of it would be seen,
 * `spot-off-picture` for a cut beyond the picture. Null where it can.
 */
export function lieRefusal(page: Page, underlay: Underlay): Refusal | null {
  const { corners, title } = underlay;
  if (!isUnfolded(corners, LEAST_AREA.corners)) return refuse("corners-fold").refusal;
  const cut = cutOf(underlay);
  if (!isUnfolded(cut, LEAST_AREA.cut)) return refuse("corners-fold").refusal;
  if (!cut.every((corner) => isInPicture(underlay, corner))) return refuse("spot-off-picture").refusal;
  if (corners.flat().some((value) => Math.abs(value) > MOST_OFF))
    return refuse("corners-far", { most: MOST_OFF }).refusal;
  const { left, top, right, bottom } = boxAround(corners);
  const isSeen = right > 0 && bottom > 0 && left < page.widthMm && top < page.heightMm;
  return isSeen ? null : refuse("underlay-off-page", { title }).refusal;
}

/** An edit that lays a printed page another way; refuses as `lieRefusal` does, and `already-so`. */
export function lieEdit(bench: Bench, { page, underlay }: Lying, name: string, next: Underlay): Outcome<Edit> {
  const kept: Underlay = {
    ...next,
    corners: rounded(next.corners),
    ...(next.cut && { cut: rounded(next.cut) }),
  };
  const refusal = lieRefusal(page, kept);
  return refusal ? { ok: false, refusal } : underlayEdit(bench, { page, underlay }, name, kept);
}

/** An edit that puts another one in a printed page's place; refuses `already-so` where nothing is another. */
export function underlayEdit(bench: Bench, { page, underlay }: Lying, name: string, next: Underlay): Outcome<Edit> {
  if (isSame(underlay, next)) return alreadySo(underlay.title);
  const value = page.underlays!.map((each) => (each === underlay ? next : each));
  return editOf(bench, name, [{ change: "item", list: "pages", id: page.id, field: "underlays", value }]);
}

function isSame(one: Underlay, other: Underlay): boolean {
  const fields = [...new Set([...Object.keys(one), ...Object.keys(other)])] as readonly (keyof Underlay)[];
  return fields.every((field) => JSON.stringify(one[field]) === JSON.stringify(other[field]));
}
