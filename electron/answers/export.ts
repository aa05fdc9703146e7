import { ok } from "../../core/base/outcome.ts";
import { svgOf } from "../../core/drawing/svg.ts";
import { sheetAsk } from "../../schemas/calls/print.ts";
import { fileNameOf } from "../fileName.ts";
import { embeddedFonts } from "../print/fonts.ts";
import { printTitle } from "../print/printTitle.ts";
import { sheetsFor } from "../print/sheets.ts";
import { takeHomePage, takeHomeParts } from "../print/takeHome.ts";
import type { AnswersOf } from "./host.ts";

/** What is answered where files are made to hand on. */
export const EXPORT_ANSWERS: AnswersOf<"export.takeHome" | "export.svg"> = {
  "export.takeHome": async ({ circuit }, host) => {
    const parts = await takeHomeParts(host.takeHome);
    if (!parts.ok) return parts;
    return ok({ html: takeHomePage(circuit, parts.value), name: fileNameOf(circuit.title, "html") });
  },

  "export.svg": async ({ circuit, palette, ...shown }) => {
    const ask = sheetAsk.parse({ what: "sheet", ...shown });
    const sheets = sheetsFor(circuit, ask, "a4");
    if (!sheets.ok) return sheets;
    const svg = svgOf(sheets.value[0]!, { palette, fonts: await embeddedFonts() });
    return ok({ svg, name: fileNameOf(printTitle(circuit, ask), "svg") });
  },
};
