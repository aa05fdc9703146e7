import { type ReactNode, useEffect, useRef } from "react";
import { type Play, passed, paused, played, scrubbed, stepped } from "../../core/lesson/play.ts";

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
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out as this row is
    <div className="route-player" role="group" aria-label="Play the route">
      <button type="button" className="button is-low" disabled={play.at === 0} onClick={step(-1)}>
        Back a move
      </button>
      <button
        type="button"
        className="button is-low"
        onClick={() => setPlay(isPlaying ? paused(play) : played(play, lengths))}
      >
        {isPlaying ? "Pause" : "Play"}
      </button>
      <button type="button" className="button is-low" disabled={play.at >= count} onClick={step(1)}>
        Next move
      </button>
      <input
        type="range"
        min={0}
        max={count}
        step={1}
        value={play.at}
        aria-label="Move shown"
        aria-valuetext={`${play.at} of ${count}`}
        onChange={(event) =>
          setPlay(scrubbed({ ...play, isPlaying: false }, Number(event.target.value) * length, lengths))
        }
      />
      <span className="small route-count">
        {play.at} of {count}
      </span>
      <div className="route-said">{children}</div>
    </div>
  );
}
