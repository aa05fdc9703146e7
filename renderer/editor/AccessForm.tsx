import { type FormEvent, useState } from "react";
import { LabelledField } from "../panels/LabelledField.tsx";
import type { Command } from "../state/action.ts";
import { Trouble } from "./Trouble.tsx";
import { useAsked } from "./useAsk.ts";

interface Shown {
  readonly className: string;
  /** The edit that makes the group of what was typed. */
  readonly make: (label: string, minutes: string) => Command;
  readonly close: () => void;
}

/** A new access group: what comes off, and the minutes it takes. */
export function AccessForm({ className, make, close }: Shown) {
  const { ask, trouble } = useAsked();
  const [label, setLabel] = useState("");
  const [minutes, setMinutes] = useState("");
  const add = (event: FormEvent): void => {
    event.preventDefault();
    if (ask(make(label, minutes)) === null) close();
  };
  return (
    <form className={className} onSubmit={add}>
      <LabelledField label="What comes off" value={label} usual="Door trim off, 4 clips" isFirst onChange={setLabel} />
      <LabelledField label="Minutes for it" value={minutes} usual="0" unit="min" typed="number" onChange={setMinutes} />
      <Trouble words={trouble} />
      <div className="value-acts">
        <button type="submit" className="button is-low">
          Add
        </button>
        <button type="button" className="button is-low is-quiet" onClick={close}>
          Leave it
        </button>
      </div>
    </form>
  );
}
