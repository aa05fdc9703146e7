import type { PointId } from "../../core/base/ids.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { pointsOf, wireSideOf } from "../../core/circuit/points.ts";
import { stepsFrom } from "../../core/live/walk.ts";
import { pageOf, partOfPoint } from "../state/places.ts";
import type { Thing } from "../state/state.ts";
import { colourWords } from "../words/colour.ts";
import type { Shown } from "./shown.ts";
import { walked } from "./walking.ts";

/** Which way a wire is followed: towards the return, or towards the feed. */
export type Along = "onward" | "back";

/** One step of following: where it leads, null for no farther, and what is told of it. */
export interface Followed {
  readonly to: Thing | null;
  readonly said: string;
}

type Now = Pick<Shown, "circuit" | "live" | "selection">;

const TOWARDS: Readonly<Record<Along, string>> = { onward: "Towards the return", back: "Towards the feed" };

/** The next step from what is chosen; null where nothing is chosen from which one could go. */
export function followed(now: Now, way: Along): Followed | null {
  const { circuit, live, selection } = now;
  const from = selection?.is === "part" ? lastPoint(now, selection.id, way) : selection;
  if (!from) return null;
  const to = walked({ circuit, live, selection: from }, way);
  if (!to) return { to, said: `Nothing farther ${TOWARDS[way].toLowerCase()} from ${from.id}.` };
  const means = [meansOf(circuit, from, to.id), pageWords(circuit, from, to)].filter((words) => words !== "");
  return { to, said: `${[TOWARDS[way], ...means].join(", ")}: ${to.id}.` };
}

/** The point of a part from which one leaves it this way; its first where every way leads through it. */
function lastPoint({ circuit, live }: Now, part: string, way: Along): Thing | null {
  const own = pointsOf(circuit)
    .map(({ id }) => wireSideOf(circuit, id))
    .filter((id) => partOfPoint(circuit, id) === part);
  const leaves = (point: PointId): boolean => {
    const [next] = stepsFrom(circuit, live, point)[way];
    return next !== undefined && partOfPoint(circuit, next) !== part;
  };
  const id = own.find(leaves) ?? own[0];
  return id === undefined ? null : { is: "point", id };
}

/** By what one comes to a point: a wire with its colour, a part, a page link. */
function meansOf(circuit: Circuit, from: Thing, to: PointId): string {
  if (from.is === "wire") return "";
  const wire = circuit.wires.find(({ from: one, to: other }) => {
    const ends = [one, other].map((end) => wireSideOf(circuit, end));
    return ends.includes(from.id) && ends.includes(to);
  });
  if (wire) {
    const colour = wire.colour === undefined ? "" : colourWords(wire.colour, circuit.colourCodes);
    return `along ${wire.id}${colour === "" ? "" : ` ${colour}`}`;
  }
  const [here, there] = [from.id, to].map((point) => partOfPoint(circuit, point));
  if (here !== undefined && here === there) return `through ${here}`;
  const link = circuit.parts.find(({ id, kind }) => id === here && kind === "page-link");
  return link ? `by the page link ${String(link.settings?.name ?? link.id)}` : "";
}

/** The page that a step leads over to; empty where it stays on one. */
function pageWords(circuit: Circuit, from: Thing, to: Thing): string {
  const here = pageOf(circuit, from, "");
  const there = pageOf(circuit, to, here ?? "");
  const at = circuit.pages.findIndex(({ id }) => id === there);
  return here === there || at < 0 ? "" : `over to page\u00A0${at + 1} ${circuit.pages[at]!.title}`.trim();
}
