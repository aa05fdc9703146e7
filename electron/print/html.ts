import type { Drawing } from "../../core/drawing/mark.ts";
import { lengthText } from "../../core/drawing/pathText.ts";
import { escaped, type FontAddresses, fontFaces, svgOf, TYPE_STYLE } from "../../core/drawing/svg.ts";
import { type Paper, type Placing, type PrintPalette, placingOn } from "../../core/paper/placing.ts";

/** How a printable page is made. */
export interface HtmlOptions {
  readonly paper: Paper;
  readonly palette: PrintPalette;
  readonly title: string;
  readonly fonts?: FontAddresses;
}

/** A hair less than the page, so that rounding never makes a browser print an empty page after each sheet. */
const ROUNDING_MM = 0.2;

/** The sheets as one page of HTML that prints a sheet to a page. It holds no scripts and asks for nothing from outside. */
export function htmlOf(sheets: readonly Drawing[], options: HtmlOptions): string {
  const { title, paper, palette, fonts } = options;
  const sections = sheets.map((sheet) => {
    const placing = placingOn(sheet, paper);
    return `<section class="${shapeOf(placing)}" style="${placeStyle(placing)}">\n${inked(sheet, palette)}</section>`;
  });
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; font-src data:">
<title>${escaped(title)}</title>
<style>
${fontFaces(fonts)}
${TYPE_STYLE}
${pageRules(sheets.map((sheet) => placingOn(sheet, paper)))}
html { background: #fff; }
body { margin: 0; }
section { position: relative; overflow: hidden; break-after: page; break-inside: avoid; }
section:last-child { break-after: auto; }
section > svg { position: absolute; left: var(--left); top: var(--top); transform: scale(var(--scale)); transform-origin: 0 0; }
@media screen {
  html { background: #e7eae8; }
  section { background: #fff; margin: 6mm auto; box-shadow: 0 0 0 0.2mm #b3bcb8; }
}
</style>
</head>
<body>
${sections.join("\n")}
</body>
</html>
`;
}

function placeStyle({ left, top, scale }: Placing): string {
  return `--left: ${lengthText(left)}mm; --top: ${lengthText(top)}mm; --scale: ${lengthText(scale)}`;
}

function inked(sheet: Drawing, palette: PrintPalette): string {
  return svgOf(sheet, { palette, inPage: true });
}

function shapeOf({ pageWidth, pageHeight }: Placing): "upright" | "across" {
  return pageWidth > pageHeight ? "across" : "upright";
}

function pageRules(placings: readonly Placing[]): string {
  const rules = new Map(
    placings.map((placing) => {
      const shape = shapeOf(placing);
      const size = `${placing.pageWidth}mm ${placing.pageHeight}mm`;
      const height = placing.pageHeight - ROUNDING_MM;
      return [
        shape,
        `@page ${shape} { size: ${size}; margin: 0; }\n` +
          `.${shape} { page: ${shape}; width: ${placing.pageWidth}mm; height: ${height}mm; }`,
      ];
    }),
  );
  return [...rules.values()].join("\n");
}
