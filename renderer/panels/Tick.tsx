import { Icon } from "./Icon.tsx";

interface Shown {
  readonly isOn: boolean;
  /** Its name where no label stands round it. */
  readonly name?: string;
  readonly onChange: (on: boolean) => void;
}

/** A box to tick. */
export function Tick({ isOn, name, onChange }: Shown) {
  return (
    <span className={isOn ? "tick is-on" : "tick"}>
      <input type="checkbox" checked={isOn} aria-label={name} onChange={(event) => onChange(event.target.checked)} />
      {isOn && <Icon name="tick" size={16} />}
    </span>
  );
}
