import { passed } from "../../core/lesson/play.ts";
import { secondsOf } from "../../core/lesson/scene.ts";
import type { AppStore, Reaction } from "../state/store.ts";

/** How often time is told to the scenes while they play, ms. */
const TICK_MS = 250;

/** Lets time pass for the scenes as long as they are played. `every` runs something so often, and gives what ends that. */
export function playingReaction(every: (run: () => void, ms: number) => () => void): Reaction {
  let end: (() => void) | null = null;
  const tick = ({ getState, dispatch }: AppStore): void => {
    const { open } = getState();
    if (!open) return;
    const lengths = open.desk.bench.circuit.scenes.map(secondsOf);
    dispatch({ do: "play-scenes", play: passed(open.lesson.play, TICK_MS / 1_000, lengths) });
  };
  return (_action, { open }, _before, store) => {
    const isPlaying = open?.lesson.play.isPlaying === true;
    if (isPlaying === (end !== null)) return;
    end?.();
    end = isPlaying ? every(() => tick(store), TICK_MS) : null;
  };
}
