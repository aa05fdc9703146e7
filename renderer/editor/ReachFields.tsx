import { useId, useState } from "react";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { MINUTES } from "../../core/diagnose/testPoint.ts";
import { Choice } from "../panels/Choice.tsx";
import { ValueField } from "../panels/ValueField.tsx";
import { AccessForm } from "./AccessForm.tsx";
import { behindNew, minutesChanged, reachChanged } from "./reaching.ts";
import { Trouble } from "./Trouble.tsx";
import { useAsked } from "./useAsk.ts";

/** What the list of groups says where a new one is wanted; no group has such an id. */
const NEW = "+";

interface Shown {
  readonly circuit: Circuit;
  /** What the reach is written under: a part or a connector. */
  readonly at: string;
  /** What it is said of. */
  readonly of: string;
}

/** How a thing is reached: where it is, what must come off first, minutes and hands, and whether it may be probed. */
export function ReachFields({ circuit, at: key, of }: Shown) {
  const { ask, trouble } = useAsked();
  const [isNew, setIsNew] = useState(false);
  const id = useId();
  const { where = "", access = "", minutes, hands = 1, doNotProbe = "" } = circuit.reach[key] ?? {};
  const choose = (value: string): void => {
    setIsNew(value === NEW);
    if (value !== NEW) ask(reachChanged(key, "access", value === "" ? undefined : value));
  };
  return (
    <section className="values reach-fields" aria-label={`Reach of ${of}`}>
      <ValueField
        label="Where it is"
        value={where}
        usual="such as behind the left kick panel"
        change={(typed) => reachChanged(key, "where", typed.trim() === "" ? undefined : typed)}
      />
      <div className="value">
        <label className="value-label small" htmlFor={id}>
          Reached by{key === of ? "" : `, as written of ${key}`}
        </label>
        <span className="field">
          <select id={id} value={isNew ? NEW : access} onChange={({ target }) => choose(target.value)}>
            <option value="">nothing in the way</option>
            {circuit.access.map((group) => (
              <option key={group.id} value={group.id}>
                {group.label}
              </option>
            ))}
            <option value={NEW}>New…</option>
          </select>
        </span>
      </div>
      {isNew && (
        <AccessForm
          className="new-access"
          make={(label, minutes) => behindNew(key, label, minutes)}
          close={() => setIsNew(false)}
        />
      )}
      <div className="value-pair">
        <ValueField
          label="Minutes"
          value={minutes === undefined ? "" : String(minutes)}
          usual={String(MINUTES.probe)}
          unit="min"
          change={(typed) => minutesChanged(key, typed)}
        />
        <Choice
          title="Hands"
          now={hands}
          choices={[
            [1, "1"],
            [2, "2"],
          ]}
          onChoose={(value) => ask(reachChanged(key, "hands", value === 1 ? undefined : 2))}
        />
      </div>
      <ValueField
        label="Do not probe"
        value={doNotProbe}
        usual="may be probed; a reason forbids it"
        change={(typed) => reachChanged(key, "doNotProbe", typed.trim() === "" ? undefined : typed)}
      />
      <Trouble words={trouble} />
    </section>
  );
}
