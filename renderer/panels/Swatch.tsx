import { useMemo } from "react";
import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Mark } from "../../core/drawing/mark.ts";
import { gridUnitsOf } from "../../core/drawing/scale.ts";
import { parseColour } from "../../core/trade/colours.ts";
import { MarkSvg } from "./MarkSvg.tsx";

const WIDTH_MM = 5.8;
const HEIGHT_MM = 2.65;

/** The sample of an insulation; nothing where the code names no colour. The code always stands beside it. */
export function Swatch({
  code,
  set,
  width = 22,
  height = 10,
}: {
  readonly code: string;
  readonly set: Circuit["colourCodes"];
  readonly width?: number;
  readonly height?: number;
}) {
  const marks = useMemo(() => swatchMarks(code, set), [code, set]);
  if (!marks) return null;
  return <MarkSvg marks={marks} box={[0, 0, WIDTH_MM, HEIGHT_MM]} width={width} height={height} className="swatch" />;
}

function swatchMarks(code: string, set: Circuit["colourCodes"]): readonly Mark[] | null {
  if (set === "free") return null;
  const colour = parseColour(code, set);
  if (!colour.ok) return null;
  const { base, stripes } = colour.value;
  const [width, height] = [gridUnitsOf(WIDTH_MM), gridUnitsOf(HEIGHT_MM)];
  return [{ mark: "swatch", at: { x: 0, y: 0 }, width, height, base, stripes }];
}
