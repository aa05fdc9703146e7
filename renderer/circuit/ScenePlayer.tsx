import { useMemo } from "react";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { AT_START, scrubbed, timeOf } from "../../core/lesson/play.ts";
import { secondsOf } from "../../core/lesson/scene.ts";
import { actionOf } from "../class/acts.ts";
import { playNow } from "../class/lesson.ts";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { conditionNow } from "../state/views.ts";

/** Plays the scenes, steps through them, and goes to any moment of them. All of it is undone as one. */
export function ScenePlayer({ circuit }: { readonly circuit: Circuit }) {
  const { dispatch, getState } = useAppStore();
  const { scenes } = circuit;
  const lengths = useMemo(() => scenes.map(secondsOf), [scenes]);
  const last = useApp(({ open }) => open?.lesson.play ?? AT_START);
  const play = playNow(circuit, useApp(conditionNow), last);
  const act = (asked: "class-back" | "class-play" | "class-next") => (): void => {
    const action = actionOf({ act: asked }, getState());
    if (action) dispatch(action);
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out as this row is
    <div className="scene-player" role="group" aria-label="Play the scenes">
      <button type="button" className="button is-low" disabled={play.at === 0} onClick={act("class-back")}>
        Back
      </button>
      <button type="button" className="button is-low" onClick={act("class-play")}>
        {play.isPlaying ? "Pause" : "Play"}
      </button>
      <button
        type="button"
        className="button is-low"
        disabled={play.at >= scenes.length - 1}
        onClick={act("class-next")}
      >
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
        onChange={(event) => dispatch({ do: "play-scenes", play: scrubbed(play, Number(event.target.value), lengths) })}
      />
    </div>
  );
}
