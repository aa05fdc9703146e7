import { useMemo } from "react";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { AT_START, scrubbed, timeOf } from "../../core/lesson/play.ts";
import { secondsOf } from "../../core/lesson/scene.ts";
import { actionOf } from "../class/acts.ts";
import { playNow } from "../class/lesson.ts";
import { PlayBar } from "../panels/PlayBar.tsx";
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
    <PlayBar
      className="scene-player"
      label="Play the scenes"
      back={{ words: "Back", act: play.at === 0 ? null : act("class-back") }}
      next={{ words: "Next", act: play.at >= scenes.length - 1 ? null : act("class-next") }}
      isPlaying={play.isPlaying}
      onPlay={act("class-play")}
      slider={{
        label: "Time in the scenes",
        said: `Scene ${play.at + 1}: ${scenes[play.at]?.label ?? ""}`,
        at: timeOf(play, lengths),
        most: lengths.reduce((sum, length) => sum + length, 0),
        step: 0.5,
        onChange: (time) => dispatch({ do: "play-scenes", play: scrubbed(play, time, lengths) }),
      }}
    />
  );
}
