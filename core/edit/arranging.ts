import type { PartId } from "../base/ids.ts";
import { type Outcome, ok, refuse } from "../base/outcome.ts";
import type { Share } from "../base/units.ts";
import type { ArrangeAnswer, ArrangeQuestion, Places } from "../circuit/arrange.ts";
import { answeredPlaces, arrangeRoom, presentPlaces } from "../circuit/arrangePlaces.ts";
import { HOT, polished, WARM } from "../circuit/arrangePolish.ts";
import { refined } from "../circuit/arrangeRefine.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { sheetArea } from "../circuit/sheetArea.ts";
import { sheetPage } from "../circuit/sheetPage.ts";
import { overlaps } from "../circuit/sheetRoom.ts";
import { compareTidiness, sumOf, type Tidiness, tidinessOf } from "../circuit/tidiness.ts";
import type { Bench } from "./bench.ts";
import { type ArrangedPlaces, arrangeParts } from "./commands/arrangeParts.ts";
import { apply } from "./edit.ts";

/** What is arranged: all of a page, what is chosen, or what lies on other parts or off the room for the drawing. */
export type ArrangeWhat = "page" | "chosen" | "crowded";

/**
 * The parts of a page that arranging may move; those pinned stay. Refuses `nothing-to-arrange` where there are none, and
 * `all-pinned` where all of them are pinned.
 */
export function partsToArrange(
  circuit: Circuit,
  page: string,
  what: ArrangeWhat,
  chosen: readonly PartId[],
): Outcome<readonly PartId[]> {
  const wanted = what === "crowded" ? crowdedParts(circuit, page) : standingOn(circuit, page);
  const asked = what === "chosen" ? wanted.filter((id) => chosen.includes(id)) : wanted;
  if (asked.length === 0) return refuse("nothing-to-arrange");
  const free = asked.filter((id) => circuit.placement.parts[id]?.pinned !== true);
  return free.length === 0 ? refuse("all-pinned") : ok(free);
}

function standingOn(circuit: Circuit, page: string): readonly PartId[] {
  return sheetPage(circuit, page, "iec").parts.map(({ part }) => part.id);
}

/** Parts that lie on a part drawn before them, or reach out of the room for the drawing, as pasted ones often do. */
export function crowdedParts(circuit: Circuit, id: string): readonly PartId[] {
  const page = circuit.pages.find((each) => each.id === id);
  if (!page) return [];
  const { drawing } = sheetArea(page);
  const boxes = sheetPage(circuit, id, "iec").parts.map(({ part, placed, rest }) => {
    return { id: part.id, box: placed(rest).outline };
  });
  return boxes.flatMap(({ id: part, box }, index) => {
    const isOut =
      box.left < drawing.left || box.top < drawing.top || box.right > drawing.right || box.bottom > drawing.bottom;
    return isOut || boxes.slice(0, index).some((other) => overlaps(other.box, box)) ? [part] : [];
  });
}

/** A layout held against the drawing as it stands. */
export interface Compared {
  readonly before: Tidiness;
  readonly after: Tidiness;
  /** True where fewer wires are broken, or as many and fewer crossings and bends together. */
  readonly isBetter: boolean;
}

/** The figures of a page before and after parts come to new places. Refuses as `arrangeParts` does. */
export function comparedWith(bench: Bench, page: string, places: ArrangedPlaces): Outcome<Compared> {
  const edit = arrangeParts(bench, places);
  if (!edit.ok) return edit;
  const applied = apply(bench, edit.value);
  if (!applied.ok) return applied;
  const before = tidinessOf(bench.circuit, page);
  const after = tidinessOf(applied.value.bench.circuit, page);
  const isLess = after.broken < before.broken || sumOf(after) < sumOf(before);
  return ok({ before, after, isBetter: isLess && compareTidiness(after, before) < 0 });
}

/** One try at a layout: where the parts came to stand, and how the page compares with how it was. */
export interface Attempt {
  readonly places: ArrangedPlaces;
  readonly compared: Compared;
}

/**
 * A layout straightened, set on the page and measured as it would be drawn; without an answer, the page as it stands
 * straightened. Null where the page has no room for the parts, or nothing came to stand anywhere else. `effort` is the
 * share of the usual tries.
 */
export function attemptFrom(
  bench: Bench,
  question: ArrangeQuestion,
  answer: ArrangeAnswer | null,
  effort: Share = 1,
): Attempt | null {
  const page = bench.circuit.pages.find(({ id }) => id === question.page);
  if (!page) return null;
  const room = arrangeRoom(bench.circuit, page, question);
  const laid = answer ? answeredPlaces(question, answer, room) : presentPlaces(question, room);
  if (!laid) return null;
  const seeds = seedsFor(question);
  // What a person or the library has laid is mostly right and is only warmed; what was thrown about is melted down.
  const from = (seed: number, heat: number) => polished(question, laid, room, seed, heat, effort);
  const warm = seeds.map((seed) => from(seed, answer && seed % 2 === 0 ? HOT : WARM));
  const hot = answer ? [] : seeds.map((seed) => from(seed, HOT));
  // Parts that were only cleared of each other are never the tidiest, and their wires take longest to lay.
  const all = answer ? [...warm, laid] : [...warm, ...hot];
  return bestOf(all.flatMap((places) => (places ? attemptAt(bench, page.id, places) : [])));
}

function attemptAt(bench: Bench, page: string, places: Places): readonly Attempt[] {
  const all = Object.fromEntries(places);
  const compared = comparedWith(bench, page, all);
  return compared.ok ? [{ places: all, compared: compared.value }] : [];
}

/** A page of so many parts times wires is straightened as long as one can be waited for; smaller ones several times. */
const ONE_TURN = 800;
const MOST_TURNS = 4;

/** The same seeds each time: the same page gives the same layout. */
function seedsFor({ nodes, edges }: ArrangeQuestion): readonly number[] {
  const free = nodes.filter(({ isFixed }) => !isFixed).length;
  const turns = Math.min(MOST_TURNS, Math.max(1, Math.floor(ONE_TURN / Math.max(1, free * edges.length))));
  return Array.from({ length: turns }, (_, index) => index + 1);
}

/** How often all wires of a page are laid anew to make its best layout better. */
const LAYINGS = 80;
/** What a unit of wire weighs beside a bend, and a wire without a way. */
const LENGTH = 0.005;
const BROKEN = 1000;

/**
 * The best attempt made better by laying its wires again and again; where that is no better than the page as it stands,
 * the same is tried from there. Null where nothing came to stand anywhere else. `effort` as in `attemptFrom`.
 */
export function refinedAttempt(
  bench: Bench,
  question: ArrangeQuestion,
  best: Attempt | null,
  effort: Share = 1,
): Attempt | null {
  const page = bench.circuit.pages.find(({ id }) => id === question.page);
  if (!page) return best;
  const room = arrangeRoom(bench.circuit, page, question);
  const price = (places: Places): number => {
    const compared = comparedWith(bench, page.id, Object.fromEntries(places));
    const tidiness = compared.ok ? compared.value.after : tidinessOf(bench.circuit, page.id);
    return BROKEN * tidiness.broken + sumOf(tidiness) + LENGTH * tidiness.length;
  };
  const from = (places: Places): readonly Attempt[] =>
    attemptAt(bench, page.id, refined(question, places, room, price, effort * LAYINGS));
  const better = best ? bestOf([best, ...from(new Map(Object.entries(best.places)))]) : null;
  if (better?.compared.isBetter) return better;
  const standing = question.nodes.flatMap(({ id, place, isFixed }) => (isFixed ? [] : [[id, place] as const]));
  return bestOf([...(better ? [better] : []), ...from(new Map(standing))]);
}

/** The tidiest of some attempts; null where there are none. */
export function bestOf(attempts: readonly Attempt[]): Attempt | null {
  const ranked = [...attempts].sort((a, b) => compareTidiness(a.compared.after, b.compared.after));
  return ranked[0] ?? null;
}
