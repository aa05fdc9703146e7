import type { ReactNode } from "react";

/** A button of the bar: its words, and what it does; null where there is nothing to go to. */
interface PlayAct {
  readonly words: string;
  readonly act: (() => void) | null;
}

interface Shown {
  readonly className: string;
  /** What is played, as "Play the scenes". */
  readonly label: string;
  readonly back: PlayAct;
  readonly next: PlayAct;
  readonly isPlaying: boolean;
  readonly onPlay: () => void;
  /** The slider from 0 to `most`, and what it says of where it stands. */
  readonly slider: {
    readonly label: string;
    readonly said: string;
    readonly at: number;
    readonly most: number;
    readonly step: number;
    readonly onChange: (at: number) => void;
  };
  /** What stands behind the slider. */
  readonly children?: ReactNode;
}

/** Back, play or pause, next, and a slider to any moment: of scenes, and of a learner's route. */
export function PlayBar({ className, label, back, next, isPlaying, onPlay, slider, children }: Shown) {
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out as this row is
    <div className={className} role="group" aria-label={label}>
      <Act {...back} />
      <Act words={isPlaying ? "Pause" : "Play"} act={onPlay} />
      <Act {...next} />
      <input
        type="range"
        min={0}
        max={slider.most}
        step={slider.step}
        value={slider.at}
        aria-label={slider.label}
        aria-valuetext={slider.said}
        onChange={(event) => slider.onChange(Number(event.target.value))}
      />
      {children}
    </div>
  );
}

function Act({ words, act }: PlayAct) {
  return (
    <button type="button" className="button is-low" disabled={act === null} onClick={act ?? undefined}>
      {words}
    </button>
  );
}
