import { type FormEvent, useState } from "react";
import { sentence } from "../../core/base/words.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { plantFault } from "../../core/edit/commands/plantFault.ts";
import { canComeAndGo, faultText, parseFault, targetOf } from "../../core/live/fault.ts";
import { useApp } from "../state/AppContext.tsx";
import { useMake } from "../state/useMake.ts";
import { modesOf } from "../words/fault.ts";
import { Icon } from "./Icon.tsx";
import { TargetField } from "./TargetField.tsx";
import { Toggle } from "./Toggle.tsx";

/** Puts a fault in: on what, how it fails, and by how much where that counts. Starts at what is chosen on the drawing. */
export function FaultEntry({ circuit }: { readonly circuit: Circuit }) {
  const make = useMake();
  const chosen = useApp((state) => state.open?.chosen?.id ?? "");
  const [typed, setTyped] = useState<string | null>(null);
  const target = typed ?? (modesOf(circuit, chosen).length > 0 ? chosen : "");
  const modes = modesOf(circuit, target);
  const [mode, setMode] = useState("");
  const [value, setValue] = useState("");
  const [trouble, setTrouble] = useState<string | null>(null);
  const known = modes.find((each) => each.mode === mode) ?? modes[0];
  const isCrossed = known?.mode === "crossed";
  const [pattern, setPattern] = useState<string | null>(null);
  const place = targetOf(circuit, target);
  const mayComeAndGo = place !== null && known !== undefined && canComeAndGo(circuit, place, known);

  const plant = (event: FormEvent): void => {
    event.preventDefault();
    if (!known) {
      setTrouble("Name a part, a wire or a pin first, such as S6, W13 or X6-6.");
      return;
    }
    if (pattern !== null && !/^\d{1,6}$/.test(pattern.trim())) {
      setTrouble("A pattern has a whole number, such as 5.");
      return;
    }
    const needsValue = known.value !== undefined || isCrossed;
    const amount = value.trim() === "" ? String(known.value?.usual[0] ?? "") : value.trim();
    const coming = mayComeAndGo && pattern !== null ? `~${pattern.trim()}` : "";
    const fault = parseFault(circuit, `${target}:${known.mode}${needsValue ? `=${amount}` : ""}${coming}`);
    if (!fault.ok) {
      setTrouble(sentence(fault.refusal));
      return;
    }
    make((bench) => plantFault(bench, faultText(fault.value)));
    setTyped("");
    setMode("");
    setValue("");
    setPattern(null);
    setTrouble(null);
  };
  return (
    <form className="fault-entry" onSubmit={plant}>
      <h3>Put a fault in</h3>
      <TargetField
        circuit={circuit}
        value={target}
        onChange={(next) => {
          setTyped(next);
          setMode("");
          setTrouble(null);
        }}
      />
      {modes.length > 0 && (
        <label className="field">
          <span className="unseen">How it fails</span>
          <select value={known?.mode} onChange={(event) => setMode(event.target.value)}>
            {modes.map((each) => (
              <option key={each.mode} value={each.mode}>
                {each.title}
              </option>
            ))}
          </select>
        </label>
      )}
      {(known?.value || isCrossed) && (
        <label className="field">
          <input
            value={value}
            placeholder={isCrossed ? "the other wire, such as W9" : String(known?.value?.usual[0] ?? "")}
            aria-label={isCrossed ? "The other wire" : `How much, in ${known?.value?.unit}`}
            onChange={(event) => setValue(event.target.value)}
          />
          <span className="unit">{known?.value?.unit}</span>
        </label>
      )}
      {mayComeAndGo && (
        <div className="fault-pattern">
          <Toggle words="Comes and goes" isOn={pattern !== null} onChange={(on) => setPattern(on ? "1" : null)} />
          {pattern !== null && (
            <label className="field">
              <span className="unit">pattern</span>
              <input
                value={pattern}
                inputMode="numeric"
                aria-label="Number of its pattern: the same number, the same pattern"
                onChange={(event) => setPattern(event.target.value)}
              />
            </label>
          )}
        </div>
      )}
      {trouble !== null && (
        <p className="error" role="alert">
          <Icon name="note" size={16} />
          <span>
            <b>Not put in.</b> {trouble}
          </span>
        </p>
      )}
      <button type="submit" className="button">
        Put in
      </button>
    </form>
  );
}
