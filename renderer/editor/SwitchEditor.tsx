import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Control, Part } from "../../core/parts/kind.ts";
import { ContinuityTable } from "./ContinuityTable.tsx";
import { ControlTabs } from "./ControlTabs.tsx";
import { TableText } from "./TableText.tsx";

interface Shown {
  readonly circuit: Circuit;
  readonly part: Part;
  readonly controls: readonly Control[];
  /** Place of the control whose table is shown. */
  readonly at: number;
  readonly onTurn: (at: number) => void;
  /** Shows the part in a position of this control; null as it stands. */
  readonly onShow: (position: string | null) => void;
}

/** The continuity table of a switch; of a panel, one control of it at a time. */
export function SwitchEditor({ circuit, part, controls, at, onTurn, onShow }: Shown) {
  const control = controls[at]!;
  return (
    <section aria-label="Continuity table">
      <h3>Continuity table</h3>
      <p className="small">Which terminals are joined in each position.</p>
      {part.controls && <ControlTabs part={part} controls={controls} at={at} onShow={onTurn} />}
      <ContinuityTable
        key={`${part.id} ${control.name}`}
        circuit={circuit}
        part={part}
        control={control}
        onShow={onShow}
      />
      <TableText key={part.id} part={part} />
    </section>
  );
}
