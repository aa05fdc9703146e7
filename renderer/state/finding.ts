import { remember } from "../../core/base/memo.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { pointsOf } from "../../core/circuit/points.ts";
import { kindOf } from "../../core/parts/catalogue.ts";
import { colourWords } from "../words/colour.ts";
import { partTitle } from "../words/part.ts";
import type { Thing } from "./state.ts";

/** One thing that can be found: its name, what it is, and all it is known by. */
export interface Found {
  readonly thing: Thing;
  readonly name: string;
  readonly about: string;
  readonly colour: string | null;
  readonly known: string;
}

/** Everything that can be found in a circuit: parts, wires, connectors' places and open terminals. */
export const findable = remember((circuit: Circuit): readonly Found[] => [
  ...circuit.parts.map((part): Found => {
    const kind = kindOf(part.kind);
    const titles = [
      partTitle(circuit, part),
      ...(part.kind === "page-link" || part.label !== undefined ? [kind?.title] : []),
    ];
    const about = titles.filter((word) => word !== undefined).join(", ");
    return {
      thing: { is: "part", id: part.id },
      name: part.id,
      about,
      colour: null,
      known: kind?.words.join(" ") ?? "",
    };
  }),
  ...circuit.wires.map((wire): Found => {
    const colour = wire.colour ?? null;
    const about = `wire, ${wire.from} to ${wire.to}`;
    const known = colour === null ? "" : `${colour} ${colourWords(colour, circuit.colourCodes)}`;
    return { thing: { is: "wire", id: wire.id }, name: wire.id, about, colour, known };
  }),
  ...pointsOf(circuit).flatMap((point): readonly Found[] => {
    if (point.kind !== "cavity" || point.carries === undefined) return [];
    const about = `place ${point.cavity} of connector ${point.connector.id}, carries ${point.carries}`;
    const thing: Thing = { is: "point", id: point.id };
    return [{ thing, name: point.id, about, colour: null, known: point.connector.label ?? "" }];
  }),
]);

/** The best matches for what was typed, names first; every word typed must be met. Nothing for an empty text. */
export function findIn(circuit: Circuit, typed: string, most: number): readonly Found[] {
  const words = typed
    .trim()
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== "");
  if (words.length === 0) return [];
  const scored = findable(circuit).flatMap((found) => {
    const name = found.name.toLowerCase();
    const all = `${name} ${found.about} ${found.known}`.toLowerCase();
    if (!words.every((word) => all.includes(word))) return [];
    const first = words[0]!;
    const rank = name === first ? 0 : name.startsWith(first) ? 1 : found.about.toLowerCase().includes(first) ? 2 : 3;
    return [{ found, rank }];
  });
  return scored
    .sort((one, other) => one.rank - other.rank)
    .slice(0, most)
    .map(({ found }) => found);
}
