import type { Circuit, Wire } from "../../core/circuit/circuit.ts";
import { recolourWires } from "../../core/edit/commands/recolourWires.ts";
import { resizeWires } from "../../core/edit/commands/resizeWires.ts";
import { ValueField } from "../panels/ValueField.tsx";

/** Colours and size of several wires: colours one after another in the order of the wires, or one for all. */
export function WiresValues({ circuit, wires: ids }: { readonly circuit: Circuit; readonly wires: readonly string[] }) {
  const wires = ids.flatMap((id) => circuit.wires.find((wire) => wire.id === id) ?? []);
  const isColoured = wires.some(({ colour }) => colour !== undefined);
  const sizes = new Set(wires.map(({ mm2 }) => mm2));
  const [size] = sizes;
  return (
    <div className="values">
      <ValueField
        label="Colours"
        value={isColoured ? listed(wires) : ""}
        usual="GY OG - BK, in order"
        change={(typed) => (bench) => recolourWires(bench, ids, typed)}
      />
      <ValueField
        label="Size of all"
        value={sizes.size === 1 && size !== undefined ? `${size}` : ""}
        usual={sizes.size === 1 ? "not known" : "several"}
        unit="mm²"
        change={(typed) => (bench) => resizeWires(bench, ids, typed)}
      />
    </div>
  );
}

/** Their colours as they are typed; commas part them where a code has a space in it. */
function listed(wires: readonly Wire[]): string {
  const colours = wires.map(({ colour = "-" }) => colour);
  return colours.join(colours.some((colour) => colour.includes(" ")) ? ", " : " ");
}
