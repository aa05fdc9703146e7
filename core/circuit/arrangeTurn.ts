import type { Side } from "../parts/kind.ts";
import type { PartPlace } from "./circuit.ts";
import type { PlacedShape } from "./placeSymbol.ts";

/** How a part stands: quarter turns, and mirrored or not. */
export type Turned = Required<Pick<PartPlace, "turn" | "flip">>;

/** What a part is turned by: its symbol in each turn, and where its terminals are wanted. */
export interface Turning {
  readonly now: Turned;
  shape(turned: Turned): PlacedShape;
  /** How much higher the far ends of a terminal's wires belong than the part; below 0, lower; null where it has none. */
  pull(terminal: string): number | null;
  /** A part that only joins is read alike in every turn. */
  readonly joinsOnly: boolean;
  /** A part that is read upright only. */
  readonly isUpright: boolean;
}

/** What a terminal on a side gains where it is wanted up; one that leads to a feed may be left where it cannot be up. */
const UP: Readonly<Record<Side, number>> = { up: 1, down: -1, left: 0.35, right: -0.35 };
/** A part is only turned where that gains more than this for each of its wired terminals. */
const WORTH = 0.2;
/** Parts with more wired terminals than this are read by their shape and keep it, */
const TURNABLE = 2;
/** but may be mirrored up to so many; beyond, the order of their terminals is what a reader knows them by. */
const MIRRORED = 6;

const TURNS = [0, 90, 180, 270] as const;

/**
 * The turns that a part may have, the best first: feed side up, or left where it lies. Words inside an outline keep it
 * from being stood on end; a part of many terminals that does more than join keeps its turn.
 */
export function turnsFor(turning: Turning): readonly [Turned, ...Turned[]] {
  const { now, joinsOnly } = turning;
  const wired = Object.keys(turning.shape(now).terminals).filter((terminal) => turning.pull(terminal) !== null);
  if (wired.length === 0) return [now];
  if (wired.length > TURNABLE && !joinsOnly) {
    return wired.length > MIRRORED ? [now] : [now, { ...now, flip: !now.flip }];
  }
  const score = (turned: Turned): number => {
    const { terminals } = turning.shape(turned);
    const gains = wired.map((terminal) => Math.sign(turning.pull(terminal)!) * UP[terminals[terminal]!.side]);
    return gains.reduce((sum, gain) => sum + gain, 0);
  };
  const hasWords = hasWordsInside(turning.shape(now));
  const others = othersThan(now, hasWords, joinsOnly);
  const ranked = [now, ...others].map((turned, index) => {
    return { turned, score: score(turned) - (index === 0 ? 0 : WORTH * wired.length) };
  });
  ranked.sort((a, b) => b.score - a.score);
  const [best, ...rest] = ranked;
  // Lying is allowed to what could be upright, head down never; a battery, ground or lone end has one way to stand.
  const isStrict = turning.isUpright || (wired.length === 1 && !hasWords);
  const least = wired.length > TURNABLE || hasWords ? Number.NEGATIVE_INFINITY : isStrict ? best!.score - WORTH : 0;
  // As a person has turned it, it may stay.
  const allowed = rest.filter(({ turned, score: each }) => each > least || (turned === now && !isStrict));
  return [best!.turned, ...allowed.map(({ turned }) => turned)];
}

function othersThan({ turn, flip }: Turned, hasWords: boolean, joinsOnly: boolean): readonly Turned[] {
  const turns = hasWords ? [turn] : TURNS;
  const flips = joinsOnly ? [false, true] : [flip];
  const all = turns.flatMap((to) => flips.map((mirrored): Turned => ({ turn: to, flip: mirrored })));
  return all.filter((each) => each.turn !== turn || each.flip !== flip);
}

/** A body with words in it, such as a page link or a panel, is as wide as they are. */
function hasWordsInside({ outline, marks }: PlacedShape): boolean {
  const { left, right, top, bottom } = outline;
  return marks.some(
    (mark) =>
      mark.mark === "text" &&
      mark.text.length > 2 &&
      mark.at.x > left &&
      mark.at.x < right &&
      mark.at.y > top &&
      mark.at.y < bottom,
  );
}
