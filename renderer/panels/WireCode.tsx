import type { Circuit } from "../../core/circuit/circuit.ts";
import { Swatch } from "./Swatch.tsx";

/** Swatch and code of an insulation, together on one line. */
export function WireCode({ code, set }: { readonly code: string; readonly set: Circuit["colourCodes"] }) {
  return (
    <span className="wire-code">
      <Swatch code={code} set={set} />
      {code}
    </span>
  );
}
