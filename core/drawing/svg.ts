import { dimmedShare, type Palette, paperColour, type Stroke } from "./ink.ts";
import type { Drawing, Mark, Weight } from "./mark.ts";
import type { Paint, Pen } from "./paint.ts";
import { paintsOf } from "./paintMark.ts";
import { lengthText, pathText } from "./pathText.ts";
import { millimetresOf } from "./scale.ts";

/** The family that every sheet is set in, and what stands in where the font is not to be had. */
export const SHEET_FAMILY = "IBM Plex Sans Condensed";
const FAMILIES = `${SHEET_FAMILY}, Liberation Sans Narrow, Arial Narrow, sans-serif`;

/** How type is set everywhere: even figures, slashed zero, and no kerning, so that measured widths hold. */
export const TYPE_STYLE =
  'text { font-feature-settings: "tnum", "zero"; font-kerning: none; font-variant-ligatures: none; white-space: pre; }';

/** Where the font of each weight is found: an address, or the font itself as a data address. */
export type FontAddresses = Readonly<Record<Weight, string>>;

/** How an SVG is made: its inks, its fonts, and whether it stands in a page that brings them. */
export interface SvgOptions {
  readonly palette: Palette;
  /** Without them the font installed under the family's name is used. */
  readonly fonts?: FontAddresses;
  /** True for a drawing set into a page, which carries TYPE_STYLE and the fonts itself. */
  readonly inPage?: boolean;
  /** True where the paper is not to be painted: what lies under the drawing is seen. */
  readonly isClear?: boolean;
  /** Things drawn in full, all others dimmed; everything in full where absent. What belongs to nothing is never dimmed. */
  readonly full?: ReadonlySet<string>;
  /** How many times as heavy as on paper lines are; 1 where absent. */
  readonly heaviness?: number;
}

/**
 * The drawing as SVG, sized in millimetres, its inner unit the millimetre. The same drawing and options give the same
 * text. Marks that follow each other and belong to the same thing share one titled group.
 */
export function svgOf(drawing: Drawing, options: SvgOptions): string {
  const width = lengthText(millimetresOf(drawing.width));
  const height = lengthText(millimetresOf(drawing.height));
  const { title = "" } = drawing;
  const name = title === "" ? "" : ` aria-label="${escaped(title)}"`;
  const lines = [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}"` +
      ` role="img"${name} fill="none" font-family="${FAMILIES}">`,
  ];
  if (title !== "") lines.push(`  <title>${escaped(title)}</title>`);
  if (!options.inPage) lines.push(`  <style>${fontFaces(options.fonts)}${TYPE_STYLE}</style>`);
  if (!options.isClear)
    lines.push(`  <rect width="${width}" height="${height}" fill="${paperColour(options.palette)}"/>`);
  for (const group of groupsOf(drawing.marks)) lines.push(...groupLines(group, options));
  lines.push("</svg>");
  return `${lines.join("\n")}\n`;
}

/** Rules that load the fonts; empty without addresses. */
export function fontFaces(fonts: Partial<FontAddresses> | undefined): string {
  if (!fonts) return "";
  const rules = Object.entries(fonts).map(
    ([weight, address]) =>
      `@font-face { font-family: "${SHEET_FAMILY}"; font-weight: ${weight}; src: url("${address}"); } `,
  );
  return rules.join("");
}

/** Text made safe inside XML: signs of markup written out, controls and halves of characters replaced. */
export function escaped(text: string): string {
  return text
    .replace(/[\p{Cc}\u2028\u2029]/gu, " ")
    .replace(/[\p{Cs}\uFFFE\uFFFF]/gu, "\uFFFD")
    .replace(/&/g, "&amp;")
    .replace(/</g, "&lt;")
    .replace(/>/g, "&gt;")
    .replace(/"/g, "&quot;");
}

interface Group {
  readonly of: string | undefined;
  readonly marks: readonly Mark[];
}

function groupsOf(marks: readonly Mark[]): readonly Group[] {
  const groups: { of: string | undefined; marks: Mark[] }[] = [];
  for (const mark of marks) {
    const open = groups.at(-1);
    if (open && open.of === mark.of) open.marks.push(mark);
    else groups.push({ of: mark.of, marks: [mark] });
  }
  return groups;
}

/**
 * A stroke drawn heavier: its dashes and the way between the lines of a pair grow with it. Whole lines have round ends, so
 * that no seam is seen where one goes on in another.
 */
function heavier(times: number): (stroke: Stroke) => Stroke {
  return ({ width, dash, offset, cap, ...stroke }) => ({
    ...stroke,
    width: width * times,
    cap: dash ? cap : "round",
    ...(dash && { dash: dash.map((length) => length * times) }),
    ...(offset !== undefined && { offset: offset * times }),
  });
}

function groupLines(group: Group, { palette, full, heaviness = 1 }: SvgOptions): readonly string[] {
  const fit = heaviness === 1 ? undefined : heavier(heaviness);
  const paints = group.marks.flatMap((mark) => paintsOf(mark, palette, fit)).map(element);
  if (group.of === undefined) return paints.map((line) => `  ${line}`);
  const name = escaped(group.of);
  const dim = full === undefined || full.has(group.of) ? "" : ` opacity="${dimmedShare(palette)}"`;
  return [
    `  <g data-of="${name}"${dim}>`,
    `    <title>${name}</title>`,
    ...paints.map((line) => `    ${line}`),
    "  </g>",
  ];
}

function element(paint: Paint): string {
  if (paint.paint === "words") return wordsElement(paint);
  const look = `${paint.fill ? ` fill="${paint.fill}"` : ""}${paint.pen ? penAttributes(paint.pen) : ""}`;
  if (paint.paint === "circle") {
    return `<circle cx="${lengthText(paint.at.x)}" cy="${lengthText(paint.at.y)}" r="${lengthText(paint.radius)}"${look}/>`;
  }
  if (paint.paint === "box") {
    const corner = paint.corner > 0 ? ` rx="${lengthText(paint.corner)}"` : "";
    const size = `width="${lengthText(paint.width)}" height="${lengthText(paint.height)}"`;
    return `<rect x="${lengthText(paint.at.x)}" y="${lengthText(paint.at.y)}" ${size}${corner}${look}/>`;
  }
  return `<path d="${pathText(paint)}"${look}/>`;
}

function penAttributes(pen: Pen): string {
  const round = pen.cap === "round" ? ' stroke-linecap="round" stroke-linejoin="round"' : "";
  const dash = pen.dash ? ` stroke-dasharray="${pen.dash.map(lengthText).join(" ")}"` : "";
  return ` stroke="${pen.colour}" stroke-width="${lengthText(pen.width)}"${round}${dash}`;
}

function wordsElement(words: Extract<Paint, { paint: "words" }>): string {
  const { x, y } = { x: lengthText(words.at.x), y: lengthText(words.at.y) };
  const anchor = words.anchor === "start" ? "" : ` text-anchor="${words.anchor}"`;
  const turn = words.turn === 0 ? "" : ` transform="rotate(${lengthText(words.turn)} ${x} ${y})"`;
  const weight = words.weight === 400 ? "" : ` font-weight="${words.weight}"`;
  const size = ` font-size="${lengthText(words.size)}"`;
  return `<text x="${x}" y="${y}"${size}${weight}${anchor}${turn} fill="${words.colour}">${escaped(words.text)}</text>`;
}
