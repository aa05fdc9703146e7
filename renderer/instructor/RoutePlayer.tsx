import { type ReactNode, useEffect, useRef } from "react";
import { type Play, passed, paused, played, scrubbed, stepped } from "../../core/lesson/play.ts";
import { PlayBar } from "../panels/PlayBar.tsx";

/** How often time is told to a route while it plays, ms. */
const TICK_MS = 250;

interface Shown {
  /** Moves of the route; before the first of them stands the vehicle untouched. */
  readonly count: number;
  readonly play: Play;
  readonly lengths: readonly number[];
  readonly setPlay: (play: Play) => void;
  /** What is said of the move that is shown. */
  readonly children: ReactNode;
}

/** Plays a route, steps through it, and goes to any of its moves. */
export function RoutePlayer({ count, play, lengths, setPlay, children }: Shown) {
  const now = useRef(play);
  now.current = play;
  const { isPlaying } = play;
  useEffect(() => {
    if (!isPlaying) return;
    const timer = setInterval(() => setPlay(passed(now.current, TICK_MS / 1_000, lengths)), TICK_MS);
    return () => clearInterval(timer);
  }, [isPlaying, lengths, setPlay]);
  const step = (by: number) => (): void => setPlay(stepped(play, by, lengths));
  const length = lengths[0] ?? 1;
  return (
    <PlayBar
      className="route-player"
      label="Play the route"
      back={{ words: "Back a move", act: play.at === 0 ? null : step(-1) }}
      next={{ words: "Next move", act: play.at >= count ? null : step(1) }}
      isPlaying={isPlaying}
      onPlay={() => setPlay(isPlaying ? paused(play) : played(play, lengths))}
      slider={{
        label: "Move shown",
        said: `${play.at} of ${count}`,
        at: play.at,
        most: count,
        step: 1,
        onChange: (at) => setPlay(scrubbed({ ...play, isPlaying: false }, at * length, lengths)),
      }}
    >
      <span className="small route-count">
        {play.at} of {count}
      </span>
      <div className="route-said">{children}</div>
    </PlayBar>
  );
}
