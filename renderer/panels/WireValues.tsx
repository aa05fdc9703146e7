import type { Circuit, Wire } from "../../core/circuit/circuit.ts";
import { changeLength } from "../../core/edit/commands/changeLength.ts";
import { changeOhms } from "../../core/edit/commands/changeOhms.ts";
import { recolourWire } from "../../core/edit/commands/recolourWire.ts";
import { resizeWire } from "../../core/edit/commands/resizeWire.ts";
import { ColourField } from "../draw/ColourField.tsx";
import { ValueField } from "./ValueField.tsx";

/** Colour, size, length and measured ohms of a wire, to be changed. */
export function WireValues({ circuit, wire }: { readonly circuit: Circuit; readonly wire: Wire }) {
  const { id, colour = "", mm2, metres, ohms } = wire;
  return (
    <div className="values">
      <ColourField
        label="Colour"
        value={colour}
        codes={circuit.colourCodes}
        change={(typed) => (bench) => recolourWire(bench, id, typed)}
      />
      <ValueField
        label="Size"
        value={text(mm2)}
        usual="1.5, or AWG 18"
        unit="mm²"
        change={(typed) => (bench) => resizeWire(bench, id, typed)}
      />
      <ValueField
        label="Length"
        value={text(metres)}
        usual="not known"
        unit="m"
        change={(typed) => (bench) => changeLength(bench, id, typed)}
      />
      <ValueField
        label="Measured ohms"
        value={text(ohms)}
        usual="as computed"
        unit="Ω"
        change={(typed) => (bench) => changeOhms(bench, id, typed)}
      />
    </div>
  );
}

function text(value: number | null | undefined): string {
  return value === undefined || value === null ? "" : String(value);
}
