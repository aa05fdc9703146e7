import { useId } from "react";
import { capital } from "../../core/base/capital.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { changeSetting } from "../../core/edit/commands/changeSetting.ts";
import { flipPart } from "../../core/edit/commands/flipPart.ts";
import { relabelPart } from "../../core/edit/commands/relabelPart.ts";
import { turnPart } from "../../core/edit/commands/turnPart.ts";
import { kindOf } from "../../core/parts/catalogue.ts";
import type { Part, SettingSpec } from "../../core/parts/kind.ts";
import { useMake } from "../state/useMake.ts";
import { unitSign } from "../words/figures.ts";
import { ValueField } from "./ValueField.tsx";

interface Shown {
  readonly circuit: Circuit;
  readonly part: Part;
}

/** Label, values and place of a part, to be changed. */
export function PartValues({ circuit, part }: Shown) {
  const make = useMake();
  const kind = kindOf(part.kind);
  const { id } = part;
  return (
    <div className="values">
      <ValueField
        label="Label"
        value={part.label ?? ""}
        usual={kind?.title}
        change={(typed) => (bench) => relabelPart(bench, id, typed)}
      />
      {kind?.settings.map((spec) => (
        <SettingField key={spec.name} circuit={circuit} part={part} spec={spec} />
      ))}
      {circuit.placement.parts[id] && (
        <div className="value-acts">
          <button
            type="button"
            className="button is-low"
            onClick={() => make((bench) => turnPart(bench, id, "clockwise"))}
          >
            Turn
          </button>
          <button type="button" className="button is-low" onClick={() => make((bench) => flipPart(bench, id))}>
            Flip
          </button>
        </div>
      )}
    </div>
  );
}

function SettingField({ circuit, part, spec }: Shown & { readonly spec: SettingSpec }) {
  const make = useMake();
  const id = useId();
  const { value } = spec;
  const label = capital(spec.label);
  const now = part.settings?.[spec.name];
  const change = (typed: string) => (bench: Parameters<typeof changeSetting>[0]) =>
    changeSetting(bench, part.id, spec.name, typed);
  if (value.type === "number" || value.type === "word") {
    const usual = value.type === "number" ? String(value.usual(circuit.nominalVolts)) : value.usual;
    return (
      <ValueField
        label={label}
        value={now === undefined ? "" : String(now)}
        usual={usual}
        unit={unitSign(spec.unit)}
        change={change}
      />
    );
  }
  const choices = value.type === "choice" ? value.choices : ["yes", "no"];
  const word = value.type === "choice" ? String(now ?? value.usual) : (now ?? value.usual) ? "yes" : "no";
  return (
    <div className="value">
      <label className="value-label small" htmlFor={id}>
        {label}
      </label>
      <span className="field">
        <select id={id} value={word} onChange={(event) => make(change(event.target.value))}>
          {choices.map((choice) => (
            <option key={choice} value={choice}>
              {choice.replaceAll("-", " ")}
            </option>
          ))}
        </select>
      </span>
    </div>
  );
}
