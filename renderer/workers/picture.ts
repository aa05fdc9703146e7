import type { Circuit, Condition } from "../../core/circuit/circuit.ts";
import { sheetOf } from "../../core/circuit/sheet.ts";
import type { Drawing, Mark } from "../../core/drawing/mark.ts";
import { type Bounds, boundsOf } from "../../core/drawing/measure.ts";
import { svgOf } from "../../core/drawing/svg.ts";
import { liveOf } from "../../core/live/live.ts";
import { kindOf } from "../../core/parts/catalogue.ts";

/** A circuit as a small picture of itself at work, SVG in either look; empty where nothing of it stands on a page. */
export interface Picture {
  readonly light: string;
  readonly dark: string;
}

/** Width to height of a picture. */
const SHAPE = 7 / 4;
/** What is drawn, with its room round it. */
const ROOM = 1.1;

/** The picture of a circuit: its busiest page, as its first function check has it. */
export function pictureOf(circuit: Circuit): Picture {
  const page = busiestPage(circuit);
  const live = liveOf(circuit, atWork(circuit));
  const sheet = page === undefined ? null : sheetOf({ circuit, page, live, framed: false });
  const drawing = sheet?.ok ? trimmed(sheet.value) : null;
  return {
    light: drawing ? inPixels(svgOf(drawing, { palette: "light", inPage: true })) : "",
    dark: drawing ? inPixels(svgOf(drawing, { palette: "dark", inPage: true })) : "",
  };
}

/** The first function check shows the circuit doing what it is for. */
function atWork(circuit: Circuit): Condition {
  return circuit.checks.find(({ expect }) => expect !== "off")?.condition ?? {};
}

/** The page on which most loads stand. */
function busiestPage(circuit: Circuit): string | undefined {
  const loadsOn = (page: string): number =>
    circuit.parts.filter(({ id, kind }) => circuit.placement.parts[id]?.page === page && kindOf(kind)?.role === "load")
      .length;
  return [...circuit.pages].sort((one, other) => loadsOn(other.id) - loadsOn(one.id))[0]?.id;
}

/** What is smaller than this share of the width of a picture would be less than half a pixel of the widest shown. */
const DUST = 1 / 400;

/** Lines and symbols alone, cut to what is drawn: type, glyphs and all that is too small would be dust at this size. */
function trimmed({ marks }: Drawing): Drawing {
  const shown = marks.filter(isLarge);
  const bounds = shown.map(boundsOf).reduce<Bounds | null>(around, null);
  if (!bounds) return { width: 7, height: 4, marks: [] };
  const width = Math.max(bounds.right - bounds.left, (bounds.bottom - bounds.top) * SHAPE) * ROOM;
  const height = width / SHAPE;
  const dx = (width - bounds.right - bounds.left) / 2;
  const dy = (height - bounds.bottom - bounds.top) / 2;
  const isSeen = ({ left, top, right, bottom }: Bounds) => Math.max(right - left, bottom - top) > width * DUST;
  return { width, height, marks: shown.filter((mark) => isSeen(boundsOf(mark))).map((mark) => shifted(mark, dx, dy)) };
}

function isLarge(mark: Mark): boolean {
  if (mark.mark === "text" || mark.mark === "swatch") return false;
  return !mark.role.startsWith("glyph-") && !["chevron", "paper", "link"].includes(mark.role);
}

function around(all: Bounds | null, one: Bounds): Bounds {
  if (!all) return one;
  return {
    left: Math.min(all.left, one.left),
    top: Math.min(all.top, one.top),
    right: Math.max(all.right, one.right),
    bottom: Math.max(all.bottom, one.bottom),
  };
}

/** Elsewhere, and of nothing: a tile is no place to ask what something is. */
function shifted({ of: _, ...mark }: Mark, dx: number, dy: number): Mark {
  if (mark.mark === "line") return { ...mark, spots: mark.spots.map(({ x, y }) => ({ x: x + dx, y: y + dy })) };
  return { ...mark, at: { x: mark.at.x + dx, y: mark.at.y + dy } };
}

/** Pixels for each millimetre of a line's width and dashes; the style sheet keeps lines from scaling with the picture. */
const LINE_PIXELS = 1.9;

function inPixels(svg: string): string {
  const pixels = (millimetres: string): string => (Number(millimetres) * LINE_PIXELS).toFixed(2);
  return svg
    .replace(/ stroke-width="([\d.]+)"/g, (_, width: string) => ` stroke-width="${pixels(width)}"`)
    .replace(/ stroke-dasharray="([\d. ]+)"/g, (_, dash: string) => {
      return ` stroke-dasharray="${dash.split(" ").map(pixels).join(" ")}"`;
    });
}
