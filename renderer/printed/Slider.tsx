import { useRef } from "react";

interface Shown {
  readonly label: string;
  /** What it is a slider of, for those who do not see where it stands. */
  readonly of: string;
  /** Percent. */
  readonly value: number;
  readonly min: number;
  readonly max: number;
  /** Called while it slides; all of one gesture carries one group. */
  readonly slide: (value: number, group: string) => void;
}

let gestures = 0;

/** A share that is slid; one press, from going down to letting go, is one step to undo. */
export function Slider({ label, of, value, min, max, slide }: Shown) {
  const group = useRef<string | null>(null);
  const begin = (): void => {
    group.current ??= `slide ${++gestures}`;
  };
  const end = (): void => {
    group.current = null;
  };
  return (
    <label className="slider small">
      <span>{label}</span>
      <input
        type="range"
        aria-label={`${label} of ${of}`}
        min={min}
        max={max}
        step={5}
        value={value}
        onPointerDown={begin}
        onPointerUp={end}
        onKeyDown={begin}
        onKeyUp={end}
        onBlur={end}
        onChange={(event) => {
          begin();
          slide(Number(event.target.value), group.current!);
        }}
      />
      <span className="figures">{value}&nbsp;%</span>
    </label>
  );
}
