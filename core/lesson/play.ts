import type { Seconds } from "../base/units.ts";

/** Where scenes that are played stand. There is no clock in it: time is given. */
export interface Play {
  /** Which scene is shown, counted from 0. */
  readonly at: number;
  /** How long it has been shown. */
  readonly shown: Seconds;
  readonly isPlaying: boolean;
}

/** Before anything is played: the first scene, standing still. */
export const AT_START: Play = { at: 0, shown: 0, isPlaying: false };

/** Begins to play; at the end of the last scene from the first one. Lengths are those of all scenes, at least one. */
export function played(play: Play, lengths: readonly Seconds[]): Play {
  const isAtEnd = play.at >= lengths.length - 1 && play.shown >= (lengths.at(-1) ?? 0);
  return isAtEnd ? { ...AT_START, isPlaying: true } : { ...play, isPlaying: true };
}

/** Stands still where it is. */
export function paused(play: Play): Play {
  return { ...play, isPlaying: false };
}

/** So many scenes on, or back below 0, from its beginning; stays at the first and the last. Playing or not stays as it is. */
export function stepped(play: Play, by: number, lengths: readonly Seconds[]): Play {
  const at = Math.min(Math.max(play.at + by, 0), Math.max(lengths.length - 1, 0));
  return { ...play, at, shown: 0 };
}

/** At this time from the very beginning, held inside the whole length. */
export function scrubbed(play: Play, to: Seconds, lengths: readonly Seconds[]): Play {
  let left = Math.max(0, to);
  for (const [at, length] of lengths.entries()) {
    if (left < length) return { ...play, at, shown: left };
    left -= length;
  }
  return { ...play, at: Math.max(lengths.length - 1, 0), shown: lengths.at(-1) ?? 0 };
}

/** So many seconds later: the next scene where one is over; stands still at the end of the last. Time never runs back. */
export function passed(play: Play, seconds: Seconds, lengths: readonly Seconds[]): Play {
  if (!play.isPlaying || !(seconds > 0)) return play;
  const next = scrubbed(play, timeOf(play, lengths) + seconds, lengths);
  const isOver = next.at === lengths.length - 1 && next.shown >= lengths[next.at]!;
  return isOver ? paused(next) : next;
}

/** Time from the very beginning. */
export function timeOf({ at, shown }: Play, lengths: readonly Seconds[]): Seconds {
  return lengths.slice(0, at).reduce((sum, length) => sum + length, 0) + shown;
}
