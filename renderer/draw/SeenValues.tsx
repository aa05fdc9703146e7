import type { Circuit, Wire } from "../../core/circuit/circuit.ts";
import { ownerOf } from "../../core/circuit/seen.ts";
import { noteSeen } from "../../core/edit/commands/noteSeen.ts";
import { Toggle } from "../panels/Toggle.tsx";
import { ValueField } from "../panels/ValueField.tsx";
import { useMake } from "../state/useMake.ts";
import { ColourField } from "./ColourField.tsx";

/** Whether a wire was seen on the vehicle, and what of it is not as printed: its colour, or the place of an end. */
export function SeenValues({ circuit, wire }: { readonly circuit: Circuit; readonly wire: Wire }) {
  const make = useMake();
  const { id, colour, from, to, seen } = wire;
  return (
    <div className="values">
      <Toggle
        words="Seen on the vehicle"
        isOn={seen !== undefined}
        onChange={(on) => make((bench) => noteSeen(bench, [id], on ? {} : null))}
      />
      {seen && (
        <>
          <ColourField
            label="Colour seen"
            value={seen.colour ?? ""}
            usual={colour === undefined ? "none printed" : `${colour}, as printed`}
            codes={circuit.colourCodes}
            change={(typed) => (bench) => noteSeen(bench, [id], { colour: typed })}
          />
          <ValueField
            label={`End at ${from}`}
            value={seen.from === undefined ? "" : `${ownerOf(from)}${seen.from}`}
            usual="as printed"
            change={(typed) => (bench) => noteSeen(bench, [id], { from: typed })}
          />
          <ValueField
            label={`End at ${to}`}
            value={seen.to === undefined ? "" : `${ownerOf(to)}${seen.to}`}
            usual="as printed"
            change={(typed) => (bench) => noteSeen(bench, [id], { to: typed })}
          />
        </>
      )}
    </div>
  );
}
