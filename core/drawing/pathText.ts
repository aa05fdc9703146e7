import type { Millimetres } from "../base/units.ts";
import { arcSweep } from "./measure.ts";
import type { Paint, PaperSpot, Run } from "./paint.ts";

/** A length in millimetres as text: at most three decimals, never `-0`. */
export function lengthText(millimetres: Millimetres): string {
  return String(Math.round(millimetres * 1000) / 1000 + 0);
}

/** The outline of a painted shape as SVG path data, in millimetres. */
export function pathText(paint: Exclude<Paint, { paint: "words" }>): string {
  switch (paint.paint) {
    case "lines":
      return paint.runs.map(runText).join("");
    case "circle":
      return arcText(paint.at, paint.radius, 0, 360);
    case "arc":
      return arcText(paint.at, paint.radius, paint.from, paint.to);
    case "box":
      return boxText(paint);
  }
}

function at(x: Millimetres, y: Millimetres): string {
  return `${lengthText(x)} ${lengthText(y)}`;
}

function runText(run: Run): string {
  const [first, ...others] = run.spots;
  if (!first) return "";
  return `M${at(first.x, first.y)}${others.map((spot) => `L${at(spot.x, spot.y)}`).join("")}${run.closed ? "Z" : ""}`;
}

/** A whole circle is two halves, since an arc to its own start is nothing. */
function arcText(centre: PaperSpot, radius: Millimetres, from: number, to: number): string {
  const sweep = arcSweep(from, to);
  const spot = (degrees: number): string => {
    const radians = (degrees * Math.PI) / 180;
    return at(centre.x + radius * Math.cos(radians), centre.y + radius * Math.sin(radians));
  };
  const r = lengthText(radius);
  const arc = (large: boolean, end: number): string => `A${r} ${r} 0 ${large ? 1 : 0} 1 ${spot(end)}`;
  if (sweep === 360) return `M${spot(from)}${arc(false, from + 180)}${arc(false, from)}Z`;
  return `M${spot(from)}${arc(sweep > 180, to)}`;
}

function boxText(box: Extract<Paint, { paint: "box" }>): string {
  const { x: left, y: top } = box.at;
  const [right, bottom] = [left + box.width, top + box.height];
  if (box.corner <= 0) {
    return `M${at(left, top)}H${lengthText(right)}V${lengthText(bottom)}H${lengthText(left)}Z`;
  }
  const c = box.corner;
  const turn = (x: Millimetres, y: Millimetres): string => `A${lengthText(c)} ${lengthText(c)} 0 0 1 ${at(x, y)}`;
  return [
    `M${at(left + c, top)}H${lengthText(right - c)}${turn(right, top + c)}`,
    `V${lengthText(bottom - c)}${turn(right - c, bottom)}`,
    `H${lengthText(left + c)}${turn(left, bottom - c)}V${lengthText(top + c)}${turn(left + c, top)}Z`,
  ].join("");
}
