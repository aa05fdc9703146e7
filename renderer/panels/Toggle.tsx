import { Tick } from "./Tick.tsx";

interface Shown {
  readonly words: string;
  readonly about?: string | undefined;
  readonly isOn: boolean;
  readonly onChange: (on: boolean) => void;
}

/** A tick with its words. */
export function Toggle({ words, about, isOn, onChange }: Shown) {
  return (
    // biome-ignore lint/a11y/noLabelWithoutControl: the box is inside
    <label className="toggle">
      <Tick isOn={isOn} onChange={onChange} />
      <b className="together">{words}</b>
      {about !== undefined && <span className="small">{about}</span>}
    </label>
  );
}
