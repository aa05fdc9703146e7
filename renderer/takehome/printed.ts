import type { Millimetres } from "../../core/base/units.ts";
import { sheetOf } from "../../core/circuit/sheet.ts";
import { svgOf } from "../../core/drawing/svg.ts";
import { liveNow } from "../../core/edit/liveNow.ts";
import { build, typed } from "./build.ts";
import type { Desk } from "./desk.ts";
import { svgElement } from "./drawing.ts";

/** Width of a sheet that lies across A4 or Letter, between margins of 10 mm. */
const PAPER_MM: Millimetres = 259;

/** What goes on paper in place of the page: the sheet that is shown, as it stands, and the captions of all scenes. */
export function printed(desk: () => Desk): HTMLElement {
  const element = build("div", { class: "printed" });
  const fill = (): void => {
    const { bench, page } = desk();
    const widthMm = bench.circuit.pages.find(({ id }) => id === page)?.widthMm ?? PAPER_MM;
    // Words are set as large as the paper they come out on needs them.
    const printScale = Math.min(1, PAPER_MM / widthMm);
    const sheet = sheetOf({ circuit: bench.circuit, page, live: liveNow(bench).shown, printScale });
    const captions = bench.circuit.scenes.map(({ label, caption = "" }) =>
      build("li", {}, build("b", {}, typed(label)), caption === "" ? null : build("p", {}, typed(caption))),
    );
    element.replaceChildren(
      ...(sheet.ok
        ? [build("div", { class: "across" }, svgElement(svgOf(sheet.value, { palette: "light", inPage: true })))]
        : []),
      build("h2", {}, typed(bench.circuit.title)),
      ...(captions.length > 0 ? [build("h3", {}, "Scenes"), build("ol", {}, ...captions)] : []),
    );
  };
  window.addEventListener("beforeprint", fill);
  window.addEventListener("afterprint", () => element.replaceChildren());
  return element;
}
