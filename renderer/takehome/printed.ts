import { sheetOf } from "../../core/circuit/sheet.ts";
import { svgOf } from "../../core/drawing/svg.ts";
import { liveNow } from "../../core/edit/liveNow.ts";
import { build, typed } from "./build.ts";
import type { Desk } from "./desk.ts";
import { svgElement } from "./drawing.ts";

/** What goes on paper in place of the page: the sheet that is shown, as it stands, and the captions of all scenes. */
export function printed(desk: () => Desk): HTMLElement {
  const element = build("div", { class: "printed" });
  const fill = (): void => {
    const { bench, page } = desk();
    const sheet = sheetOf({ circuit: bench.circuit, page, live: liveNow(bench).shown });
    const captions = bench.circuit.scenes.map(({ label, caption = "" }) =>
      build("li", {}, build("b", {}, typed(label)), caption === "" ? null : build("p", {}, typed(caption))),
    );
    element.replaceChildren(
      ...(sheet.ok ? [svgElement(svgOf(sheet.value, { palette: "light", inPage: true }))] : []),
      ...(captions.length > 0 ? [build("h2", {}, "Scenes"), build("ol", {}, ...captions)] : []),
    );
  };
  window.addEventListener("beforeprint", fill);
  window.addEventListener("afterprint", () => element.replaceChildren());
  return element;
}
