// The yardstick of a throw: one konva layer with every wire as a plain line, set up as konva advises for speed.
globalThis.showWires = ({ width, height, scale, wires }) => {
  const stage = new Konva.Stage({ container: "stage", width, height, listening: false });
  const layer = new Konva.Layer({ listening: false, scaleX: scale, scaleY: scale });
  for (const points of wires) {
    const stroke = "#006AD1";
    layer.add(new Konva.Line({ points, stroke, strokeWidth: 2 / scale, listening: false, perfectDrawEnabled: false }));
  }
  stage.add(layer);
  document.querySelector("#redraw").addEventListener("click", () => layer.batchDraw());
};
