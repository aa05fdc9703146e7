import { svgOf } from "../../core/drawing/svg.ts";
import { pngOfSvg } from "../../electron/print/png.ts";
import { sheetsFor } from "../../electron/print/sheets.ts";
import { sheetAsk } from "../../schemas/calls/print.ts";
import { pictureHead } from "../../schemas/pictureHead.ts";
import { got, VENTS } from "../edit/given.ts";
import { chromiumProgram } from "./machine.ts";
import { expect, story } from "./story.ts";

story("the terminal's picture is painted by a browser without a window, in the size that was asked for", async () => {
  const [sheet] = got(sheetsFor(VENTS, sheetAsk.parse({ what: "sheet", page: "p2" }), "a4"));
  const svg = svgOf(sheet!, { palette: "light" });
  const [, wide = "", high = ""] = /width="([\d.]+)mm" height="([\d.]+)mm"/.exec(svg) ?? [];
  const png = got(await pngOfSvg(svg, 2, ["no-such-browser", chromiumProgram()!]));
  const { mime, widthPx, heightPx } = got(pictureHead(png));
  const pixels = (mm: string): number => Math.round((2 * 96 * Number(mm)) / 25.4);
  expect([mime, widthPx, heightPx]).toEqual(["image/png", pixels(wide), pixels(high)]);
  // Ink on paper: an empty page would be packed into next to nothing.
  expect(png.byteLength).toBeGreaterThan(50_000);
});
