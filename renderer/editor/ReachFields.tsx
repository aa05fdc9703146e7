import { useId, useState } from "react";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { MINUTES } from "../../core/diagnose/testPoint.ts";
import type { Part } from "../../core/parts/kind.ts";
import { Choice } from "../panels/Choice.tsx";
import { ValueField } from "../panels/ValueField.tsx";
import { AccessForm } from "./AccessForm.tsx";
import { behindNew, minutesChanged, reachChanged, reachKey } from "./reaching.ts";
import { Trouble } from "./Trouble.tsx";
import { useAsked } from "./useAsk.ts";

/** What the list of groups says where a new one is wanted; no group has such an id. */
const NEW = "+";

/** How a part is reached: what must come off first, the minutes and hands it takes, and whether it may be probed. */
export function ReachFields({ circuit, part }: { readonly circuit: Circuit; readonly part: Part }) {
  const { ask, trouble } = useAsked();
  const [isNew, setIsNew] = useState(false);
  const id = useId();
  const key = reachKey(circuit, part);
  const { access = "", minutes, hands = 1, doNotProbe = "" } = circuit.reach[key] ?? {};
  const choose = (value: string): void => {
    setIsNew(value === NEW);
    if (value !== NEW) ask(reachChanged(key, "access", value === "" ? undefined : value));
  };
  return (
    <section className="values reach-fields" aria-label="Reach">
      <div className="value">
        <label className="value-label small" htmlFor={id}>
          Reached by{key === part.id ? "" : `, as written of ${key}`}
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
