import { type KeyboardEvent, useRef } from "react";
import type { CircuitControl } from "../../core/circuit/points.ts";
import { bound } from "../../core/edit/keys/ownKeys.ts";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { benchOf } from "../state/state.ts";
import { isHeld, positionNow } from "../state/views.ts";
import { controlTitle } from "../words/condition.ts";
import { Segment } from "./Segment.tsx";
import { asOnTheHandle } from "./segments.ts";

/** One control as a row of its positions. Arrow keys go along it, Enter sets, Space holds. */
export function ControlSegments({ control }: { readonly control: CircuitControl }) {
  const { getState } = useAppStore();
  const row = useRef<HTMLDivElement>(null);
  const now = useApp((state) => positionNow(state, control));
  const held = useApp((state) => isHeld(state, control.key));
  const name = useApp((state) => {
    const bench = benchOf(state);
    return bench ? controlTitle(bench.circuit, control) : "";
  });
  const label = control.control.label ?? control.part.label ?? "";
  const positions = asOnTheHandle(control.control.positions);

  const walk = (event: KeyboardEvent): void => {
    const key = bound("strip", event, getState().settings.keys);
    const step = key === "strip-next" ? 1 : key === "strip-previous" ? -1 : undefined;
    const buttons = [...(row.current?.querySelectorAll("button") ?? [])];
    const at = buttons.indexOf(document.activeElement as HTMLButtonElement);
    if (step === undefined || at < 0) return;
    event.preventDefault();
    buttons[(at + step + buttons.length) % buttons.length]?.focus();
  };

  return (
    <div className="control" data-key={control.key}>
      <div className="control-name">
        <b>{control.part.id}</b>
        <span>{label}</span>
      </div>
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out as this row is */}
      <div className="segments" role="group" aria-label={`${name} ${label}`.trim()} ref={row} onKeyDown={walk}>
        {positions.map((position) => (
          <Segment
            key={position.name}
            control={control.key}
            position={position}
            isRest={position.name === control.rest}
            isNow={position.name === now}
            isHeld={held}
          />
        ))}
      </div>
    </div>
  );
}
