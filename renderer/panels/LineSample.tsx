import { WIRE_STATES, type WireState } from "../../core/base/states.ts";
import type { Mark } from "../../core/drawing/mark.ts";
import { gridUnitsOf } from "../../core/drawing/scale.ts";
import { MarkSvg } from "./MarkSvg.tsx";

const LENGTH_MM = 8;

const SAMPLES = Object.fromEntries(
  WIRE_STATES.map((state): [WireState, readonly Mark[]] => [
    state,
    [
      {
        mark: "line",
        spots: [
          { x: 0, y: 0 },
          { x: gridUnitsOf(LENGTH_MM), y: 0 },
        ],
        role: `wire-${state}`,
      },
    ],
  ]),
) as Readonly<Record<WireState, readonly Mark[]>>;

/** A short piece of wire in this state, as the sheet draws it at 100 %. */
export function LineSample({ state }: { readonly state: WireState }) {
  return (
    <MarkSvg marks={SAMPLES[state]} box={[0, -1.6, LENGTH_MM, 3.2]} width={30} height={12} className="line-sample" />
  );
}
