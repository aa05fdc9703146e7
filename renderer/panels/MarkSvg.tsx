import { useMemo } from "react";
import type { Mark } from "../../core/drawing/mark.ts";
import type { Paint } from "../../core/drawing/paint.ts";
import { paintsOf } from "../../core/drawing/paintMark.ts";
import { pathText } from "../../core/drawing/pathText.ts";
import { useApp } from "../state/AppContext.tsx";

interface Shown {
  readonly marks: readonly Mark[];
  /** What is seen: left, top, width and height in millimetres. */
  readonly box: readonly [number, number, number, number];
  /** Size on the screen, pixels. */
  readonly width: number;
  readonly height: number;
  readonly className: string;
}

/** A few marks as a small picture in the theme's own palette. Decoration: the words beside it say the same. */
export function MarkSvg({ marks, box, width, height, className }: Shown) {
  const palette = useApp((state) => state.theme);
  const paints = useMemo(() => marks.flatMap((mark) => paintsOf(mark, palette)), [marks, palette]);
  return (
    <svg
      className={className}
      width={width}
      height={height}
      viewBox={box.join(" ")}
      preserveAspectRatio="none"
      fill="none"
      aria-hidden="true"
    >
      {paints.map((paint, index) => (
        <Painted key={index} paint={paint} />
      ))}
    </svg>
  );
}

function Painted({ paint }: { readonly paint: Paint }) {
  if (paint.paint === "words") return null;
  const look = {
    ...(paint.fill !== undefined && { fill: paint.fill }),
    ...(paint.pen && {
      stroke: paint.pen.colour,
      strokeWidth: paint.pen.width,
      strokeLinecap: paint.pen.cap,
      ...(paint.pen.dash && { strokeDasharray: paint.pen.dash.join(" ") }),
    }),
  };
  if (paint.paint === "circle") return <circle cx={paint.at.x} cy={paint.at.y} r={paint.radius} {...look} />;
  if (paint.paint === "box")
    return <rect x={paint.at.x} y={paint.at.y} width={paint.width} height={paint.height} {...look} />;
  return <path d={pathText(paint)} {...look} />;
}
