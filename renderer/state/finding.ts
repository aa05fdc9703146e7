import type { PointId } from "../../core/base/ids.ts";
import { remember } from "../../core/base/memo.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { isInLine, type Point, pointsOf, wireSideOf } from "../../core/circuit/points.ts";
import { reachOf } from "../../core/diagnose/testPoint.ts";
import { kindOf } from "../../core/parts/catalogue.ts";
import { colourWords } from "../words/colour.ts";
import { counted } from "../words/figures.ts";
import { partTitle } from "../words/part.ts";
import { pageOf } from "./places.ts";
import type { Thing } from "./state.ts";

/** One thing that can be found: its name, what it is and where, and all it is known by. */
export interface Found {
  readonly thing: Thing;
  readonly name: string;
  readonly about: string;
  readonly colour: string | null;
  readonly known: string;
}

/** What was found, best first, and how many there are beyond those. */
export interface Hits {
  readonly hits: readonly Found[];
  readonly more: number;
}

/** Everything that can be found in a circuit: parts, connectors, wires, places of connectors and open terminals. */
export const findable = remember((circuit: Circuit): readonly Found[] => [
  ...circuit.parts.map((part): Found => {
    const kind = kindOf(part.kind);
    const titles = [
      partTitle(circuit, part),
      ...(part.kind === "page-link" || part.label !== undefined ? [kind?.title] : []),
      ...placeWords(circuit, part.id),
    ];
    const known = kind?.words.join(" ") ?? "";
    return { thing: { is: "part", id: part.id }, name: part.id, about: inWords(titles), colour: null, known };
  }),
  ...circuit.connectors.flatMap(({ id, label, rows }): readonly Found[] => {
    const places = rows.flat().filter((cavity) => cavity !== "");
    const first = pointsOf(circuit).find((point) => point.kind === "cavity" && point.connector.id === id);
    // An in-line joint is found as the part that it is.
    if (!first || circuit.parts.some((part) => part.id === id && isInLine(part))) return [];
    const about = inWords([label, `connector of ${counted(places.length, "place")}`, ...placeWords(circuit, id)]);
    return [{ thing: { is: "point", id: shownFor(first) }, name: id, about, colour: null, known: "plug" }];
  }),
  ...circuit.wires.map((wire): Found => {
    const colour = wire.colour ?? null;
    const about = `wire, ${wire.from} to ${wire.to}`;
    const known = colour === null ? "no colour" : `${colour} ${colourWords(colour, circuit.colourCodes)}`;
    return { thing: { is: "wire", id: wire.id }, name: wire.id, about, colour, known };
  }),
  ...pointsOf(circuit).flatMap((point): readonly Found[] => {
    const about = pointAbout(circuit, point);
    if (about === null) return [];
    const words = inWords([about, ...placeWords(circuit, point.id)]);
    const known = point.kind === "cavity" ? (point.connector.label ?? "") : "";
    return [{ thing: { is: "point", id: shownFor(point) }, name: point.id, about: words, colour: null, known }];
  }),
]);

/** What a point is; null for a terminal that is reached at its place in a plug. */
function pointAbout(circuit: Circuit, point: Point): string | null {
  if (point.kind === "cavity")
    return `place ${point.cavity} of connector ${point.connector.id}, carries ${point.carries ?? "nothing"}`;
  return wireSideOf(circuit, point.id) === point.id ? `terminal of ${point.part.id}` : null;
}

/** The point that is shown for another: an empty place is drawn nowhere, so one beside it in its connector stands for it. */
function shownFor(point: Point): PointId {
  if (point.kind === "terminal" || point.carries !== undefined) return point.id;
  const [first] = Object.keys(point.connector.cavities ?? {});
  return first === undefined ? point.id : `${point.connector.id}-${first}`;
}

/** Where a thing is on the vehicle, and what must come off first. */
function placeWords(circuit: Circuit, id: string): readonly string[] {
  const { where, access } = circuit.reach[id] ?? reachOf(circuit, id);
  const group = circuit.access.find((each) => each.id === access);
  return [where, group?.label].filter((words) => words !== undefined);
}

function inWords(words: readonly (string | undefined)[]): string {
  return [...new Set(words.filter((each) => each !== undefined && each !== ""))].join(", ");
}

/** Number and title of the page on which something is found; null in a circuit of one page. */
export function foundOn(circuit: Circuit, { thing }: Found, inSight: string): string | null {
  if (circuit.pages.length < 2) return null;
  const page = pageOf(circuit, thing, inSight);
  const at = circuit.pages.findIndex(({ id }) => id === page);
  return at < 0 ? "on no page" : `page\u00A0${at + 1}`;
}

/** Whether something is known by every word typed, wherever in its words. */
export function isMet(found: Found, typed: readonly string[]): boolean {
  return typed.every((word) => rankOf(found, word) !== null);
}

/** The words of a typed text, in small letters. */
export function typedWords(typed: string): readonly string[] {
  return typed
    .trim()
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== "");
}

/** The best matches for what was typed, names first; every word typed must be met. Nothing for an empty text. */
export function findIn(circuit: Circuit, typed: string, most: number): Hits {
  const words = typedWords(typed);
  if (words.length === 0) return { hits: [], more: 0 };
  const scored = findable(circuit).flatMap((found) => {
    const ranks = words.map((word) => rankOf(found, word));
    return ranks.includes(null) ? [] : [{ found, rank: Math.max(...ranks.map(Number)) }];
  });
  const hits = scored.sort((one, other) => one.rank - other.rank).map(({ found }) => found);
  return { hits: hits.slice(0, most), more: Math.max(0, hits.length - most) };
}

/** How well a word names something, 0 best: its name, a code or word of it, the beginning of one, a piece; null not at all. */
function rankOf({ name, about, known, colour }: Found, word: string): number | null {
  const called = name.toLowerCase();
  if (called === word) return 0;
  if (called.startsWith(word) || colour?.toLowerCase() === word) return 1;
  const all = ` ${called} ${about} ${known} `.toLowerCase();
  if (all.includes(word)) {
    const at = all.split(/[\s,/]+/);
    return at.includes(word) ? 2 : at.some((each) => each.startsWith(word)) ? 3 : 4;
  }
  // Two colours that are typed as one code, in words or the other way round.
  const pieces = word.split("/").filter((piece) => piece !== "");
  const isColours = colour !== null && pieces.length > 1;
  return isColours &&
    pieces.every((piece) =>
      known
        .toLowerCase()
        .split(/[\s/]+/)
        .includes(piece),
    )
    ? 5
    : null;
}
