import type { Millimetres } from "../base/units.ts";
import type { ColourName } from "../trade/colourNames.ts";
import { hatchPaints } from "./hatch.ts";
import { type Palette, paperColour, strokesOf } from "./ink.ts";
import type { SwatchMark } from "./mark.ts";
import { onPaper, type Paint, type PaperSpot, penOf } from "./paint.ts";
import { millimetresOf } from "./scale.ts";

/** Share of the height that a single stripe takes, in the middle. */
export const STRIPE_SHARE = 0.36;

interface Band {
  readonly colour: ColourName;
  readonly at: PaperSpot;
  readonly width: Millimetres;
  readonly height: Millimetres;
}

/**
 * The paints of an insulation swatch: bands of base and stripe one below the other, the base outermost, then the edge.
 * Black ink fills each band with the hatch of its colour.
 */
export function swatchPaints(mark: SwatchMark, palette: Palette): readonly Paint[] {
  const edge = penOf(strokesOf("swatch", palette).strokes[0]!);
  const paper = paperColour(palette);
  const paints = bandsOf(mark).flatMap((band): readonly Paint[] =>
    palette === "black" ? hatchPaints(band, band.colour.hatch, edge.colour, paper) : [colourPaint(band)],
  );
  return [...paints, { paint: "box", at: onPaper(mark.at), ...sizeOf(mark), corner: 0, pen: edge }];
}

function sizeOf(mark: SwatchMark): { readonly width: Millimetres; readonly height: Millimetres } {
  return { width: millimetresOf(mark.width), height: millimetresOf(mark.height) };
}

/** One stripe takes the middle; two or more share the height evenly with the base between them. */
function bandsOf(mark: SwatchMark): readonly Band[] {
  const at = onPaper(mark.at);
  const { width, height } = sizeOf(mark);
  const colours = mark.stripes.flatMap((stripe) => [mark.base, stripe]);
  colours.push(mark.base);
  const stripeShare = mark.stripes.length === 1 ? STRIPE_SHARE : 1 / colours.length;
  const baseShare = (1 - stripeShare * mark.stripes.length) / (mark.stripes.length + 1);
  let top = at.y;
  return colours.map((colour, i) => {
    const band = { colour, at: { x: at.x, y: top }, width, height: height * (i % 2 === 0 ? baseShare : stripeShare) };
    top += band.height;
    return band;
  });
}

function colourPaint(band: Band): Paint {
  return { paint: "box", at: band.at, width: band.width, height: band.height, corner: 0, fill: band.colour.hex };
}
