import { useEffect, useMemo, useRef } from "react";
import type { Scene } from "../../core/circuit/circuit.ts";
import { setUp } from "../../core/edit/commands/setUp.ts";
import { type Play, passed, paused, played, scrubbed, stepped, timeOf } from "../../core/lesson/play.ts";
import { secondsOf } from "../../core/lesson/scene.ts";
import { useAppStore } from "../state/AppContext.tsx";

/** How often time is told to the scenes while they play, ms. */
const TICK_MS = 250;

interface Shown {
  readonly scenes: readonly Scene[];
  /** Where they are in it: the list of scenes moves it too. */
  readonly play: Play;
  readonly setPlay: (play: Play) => void;
}

/** Plays the scenes, steps through them, and goes to any moment of them. All of it is undone as one. */
export function ScenePlayer({ scenes, play, setPlay }: Shown) {
  const { dispatch } = useAppStore();
  const lengths = useMemo(() => scenes.map(secondsOf), [scenes]);
  const now = useRef(play);
  now.current = play;

  const show = (next: Play, isAnew = next.at !== now.current.at): void => {
    const scene = scenes[next.at];
    now.current = next;
    setPlay(next);
    if (scene && isAnew) dispatch({ do: "make", command: (bench) => setUp(bench, scene.condition), group: "scenes" });
  };
  const latest = useRef(show);
  latest.current = show;
  const { isPlaying } = play;
  useEffect(() => {
    if (!isPlaying) return;
    const timer = setInterval(() => latest.current(passed(now.current, TICK_MS / 1_000, lengths)), TICK_MS);
    return () => clearInterval(timer);
  }, [isPlaying, lengths]);

  const step = (by: number) => (): void => show(stepped(now.current, by, lengths), true);
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out as this row is
    <div className="scene-player" role="group" aria-label="Play the scenes">
      <button type="button" className="button is-low" disabled={play.at === 0} onClick={step(-1)}>
        Back
      </button>
      <button
        type="button"
        className="button is-low"
        onClick={() => (isPlaying ? show(paused(play)) : show(played(play, lengths), true))}
      >
        {isPlaying ? "Pause" : "Play"}
      </button>
      <button type="button" className="button is-low" disabled={play.at >= scenes.length - 1} onClick={step(1)}>
        Next
      </button>
      <input
        type="range"
        min={0}
        max={lengths.reduce((sum, length) => sum + length, 0)}
        step={0.5}
        value={timeOf(play, lengths)}
        aria-label="Time in the scenes"
        aria-valuetext={`Scene ${play.at + 1}: ${scenes[play.at]?.label ?? ""}`}
        onChange={(event) => show(scrubbed(play, Number(event.target.value), lengths))}
      />
    </div>
  );
}
