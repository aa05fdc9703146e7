import { Fragment, useMemo } from "react";
import type { LineMark, Mark } from "../../core/drawing/mark.ts";
import type { Paint } from "../../core/drawing/paint.ts";
import { paintsOf } from "../../core/drawing/paintMark.ts";
import { lengthText, pathText } from "../../core/drawing/pathText.ts";
import { millimetresOf } from "../../core/drawing/scale.ts";
import { SHEET_FAMILY } from "../../core/drawing/svg.ts";
import { useApp } from "../state/AppContext.tsx";
import type { SymbolPicture } from "./symbolPicture.ts";

interface Shown {
  readonly picture: SymbolPicture;
  /** What is seen, in words. */
  readonly words: string;
}

/** Most pixels for a millimetre of the sheet: half as large again as on a drawing at 100 %, and some more. */
const MOST_SCALE = 6.4;

/** The symbol of a part in ink; a blade that lies elsewhere than before turns there. */
export function PartPicture({ picture, words }: Shown) {
  const box = picture.box.map(millimetresOf);
  return (
    <svg
      className="part-picture"
      viewBox={box.map(lengthText).join(" ")}
      style={{ maxWidth: (box[2] ?? 0) * MOST_SCALE, maxHeight: (box[3] ?? 0) * MOST_SCALE }}
      fontFamily={`${SHEET_FAMILY}, Liberation Sans Narrow, sans-serif`}
      fill="none"
      role="img"
      aria-label={words}
    >
      <Marks marks={picture.under} />
      {bladesByPivot(picture.blades).map(([key, blade]) => (
        <Blade key={key} blade={blade} />
      ))}
      <Marks marks={picture.over} />
    </svg>
  );
}

/** A blade keeps its key while its pivot stays, so that it turns and does not jump. */
function bladesByPivot(blades: readonly LineMark[]): readonly (readonly [string, LineMark])[] {
  const counts = new Map<string, number>();
  return blades.map((blade) => {
    const pivot = `${blade.spots[0]!.x} ${blade.spots[0]!.y}`;
    const count = counts.get(pivot) ?? 0;
    counts.set(pivot, count + 1);
    return [`${pivot} ${count}`, blade];
  });
}

function Blade({ blade }: { readonly blade: LineMark }) {
  const palette = useApp((state) => state.theme);
  const paints = useMemo(() => paintsOf(blade, palette), [blade, palette]);
  return paints.map((paint, index) =>
    paint.paint === "lines" ? (
      <path key={index} className="part-blade" style={{ d: `path("${pathText(paint)}")` }} {...lookOf(paint)} />
    ) : null,
  );
}

function Marks({ marks }: { readonly marks: readonly Mark[] }) {
  const palette = useApp((state) => state.theme);
  const paints = useMemo(() => marks.flatMap((mark) => paintsOf(mark, palette)), [marks, palette]);
  return paints.map((paint, index) => (
    <Fragment key={index}>
      <Painted paint={paint} />
    </Fragment>
  ));
}

function Painted({ paint }: { readonly paint: Paint }) {
  switch (paint.paint) {
    case "words": {
      const { at, size, weight, anchor, colour, text } = paint;
      return (
        <text x={at.x} y={at.y} fontSize={size} fontWeight={weight} textAnchor={anchor} fill={colour}>
          {text}
        </text>
      );
    }
    case "circle":
      return <circle cx={paint.at.x} cy={paint.at.y} r={paint.radius} {...lookOf(paint)} />;
    case "box": {
      const { at, width, height, corner } = paint;
      return <rect x={at.x} y={at.y} width={width} height={height} rx={corner} {...lookOf(paint)} />;
    }
    default:
      return <path d={pathText(paint)} {...lookOf(paint)} />;
  }
}

function lookOf({ fill, pen }: Exclude<Paint, { paint: "words" }>) {
  return {
    ...(fill !== undefined && { fill }),
    ...(pen && {
      stroke: pen.colour,
      strokeWidth: pen.width,
      strokeLinecap: pen.cap,
      ...(pen.dash && { strokeDasharray: pen.dash.join(" ") }),
    }),
  };
}
