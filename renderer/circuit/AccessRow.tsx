import { useState } from "react";
import { parseAmount } from "../../core/base/amount.ts";
import type { AccessGroup, Circuit } from "../../core/circuit/circuit.ts";
import { changeAccess } from "../../core/edit/commands/changeAccess.ts";
import { removeAccess } from "../../core/edit/commands/removeAccess.ts";
import { Trouble } from "../editor/Trouble.tsx";
import { useAsked } from "../editor/useAsk.ts";
import { Choice } from "../panels/Choice.tsx";
import { Icon } from "../panels/Icon.tsx";
import { Toggle } from "../panels/Toggle.tsx";
import { ValueField } from "../panels/ValueField.tsx";
import type { Command } from "../state/action.ts";
import { counted, minutesText } from "../words/figures.ts";
import { CautionList } from "./CautionList.tsx";
import { PhotoField } from "./PhotoField.tsx";

interface Shown {
  readonly circuit: Circuit;
  readonly group: AccessGroup;
}

/** One access group, folded: what comes off and the minutes of it; unfolded, all that can be said of it. */
export function AccessRow({ circuit, group }: Shown) {
  const { id, label, minutes, hands = 1 } = group;
  const [isOpen, setOpen] = useState(false);
  const behind = Object.values(circuit.reach).filter(({ access }) => access === id).length;
  return (
    <li className="circuit-row">
      <details className="access" onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
        <summary>
          <Icon name="down" size={16} />
          <b>{label}</b>
          <span className="small figures">
            {minutesText(minutes)}
            {hands === 2 && ", two hands"}
          </span>
        </summary>
        <AccessFields circuit={circuit} group={group} behind={behind} isOpen={isOpen} />
      </details>
    </li>
  );
}

interface Fields extends Shown {
  /** How many places are reached through it. */
  readonly behind: number;
  readonly isOpen: boolean;
}

function AccessFields({ circuit, group, behind, isOpen }: Fields) {
  const { ask, trouble } = useAsked();
  const { id, label, minutes, hands = 1, after = [], cautions = [] } = group;
  const others = circuit.access.filter((each) => each.id !== id);
  const order = (other: string, on: boolean): readonly string[] =>
    on ? [...after, other] : after.filter((each) => each !== other);
  return (
    <div className="access-fields">
      <ValueField
        label="What comes off"
        value={label}
        change={(typed) => (bench) => changeAccess(bench, id, { label: typed })}
      />
      <ValueField label="Minutes" value={String(minutes)} unit="min" change={(typed) => minutesTyped(id, typed)} />
      <Choice
        title="Hands"
        now={hands}
        choices={[
          [1, "1"],
          [2, "2"],
        ]}
        onChoose={(value) => ask((bench) => changeAccess(bench, id, { hands: value === 2 ? 2 : 1 }))}
      />
      {others.length > 0 && (
        <fieldset className="setting">
          <legend className="small">Comes off before it</legend>
          <div className="access-order">
            {others.map((other) => (
              <Toggle
                key={other.id}
                words={other.label}
                isOn={after.includes(other.id)}
                onChange={(on) => ask((bench) => changeAccess(bench, id, { after: order(other.id, on) }))}
              />
            ))}
          </div>
        </fieldset>
      )}
      <Trouble words={trouble} />
      <div className="setting">
        <span className="small">Cautions</span>
        <CautionList
          of={label}
          cautions={cautions}
          change={(next) => (bench) => changeAccess(bench, id, { cautions: next })}
        />
      </div>
      {/* A long list of folded places need not have all its photos read. */}
      {isOpen && <PhotoField group={group} />}
      <div className="value-acts">
        <button type="button" className="button is-low" onClick={() => ask((bench) => removeAccess(bench, id))}>
          Remove
        </button>
        <span className="small">
          {behind === 0
            ? "Nothing is reached through it."
            : `${counted(behind, "place is", "places are")} reached through it and would say nothing of it.`}
        </span>
      </div>
    </div>
  );
}

/** Minutes of a group as typed. Refuses a wrong amount, and as `changeAccess` does. */
function minutesTyped(id: string, typed: string): Command {
  return (bench) => {
    const minutes = parseAmount(typed, "min");
    return minutes.ok ? changeAccess(bench, id, { minutes: minutes.value }) : minutes;
  };
}
