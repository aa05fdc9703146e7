// The yardstick of an opening: a page that is handed the marks of the first picture, and at a click parses the circuit's JSON
// and lays them down once, by the program's own painter. Bundled when it is asked for.
import { painted } from "../../../../renderer/canvas/painted.ts";
import { SheetStage } from "../../../../renderer/canvas/stage.ts";

const nothing = () => undefined;

globalThis.drawOnce = ({ text, marks, view, window }) => {
  const stage = new SheetStage(document.querySelector("#stage"), nothing, nothing, nothing);
  stage.resize(window, devicePixelRatio);
  stage.moveTo(view, window);
  document.querySelector("#draw").addEventListener("click", () => {
    JSON.parse(text);
    stage.sheet.show(painted(marks, "light", view.scale * stage.ratio));
  });
};
