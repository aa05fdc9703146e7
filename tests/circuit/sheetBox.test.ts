import { describe, expect, test } from "vitest";
import { sheetOf } from "../../core/circuit/sheet.ts";
import { sheetBox } from "../../core/circuit/sheetBox.ts";
import { boundsOfAll } from "../../core/drawing/measure.ts";
import { gridCircuit } from "../bench/window/gridCircuit.ts";
import { VENT } from "./ventFixture.ts";

describe("the box round a page at rest", () => {
  const grid = gridCircuit(40);
  const loose = { ...grid, parts: grid.parts.filter(({ id }) => id !== "E2") };
  test.each([0.1, 0.25, 0.42, 0.48, 1])("is that of its drawing at a zoom of %s", (zoom) => {
    for (const circuit of [VENT, grid, loose])
      for (const { id: page } of circuit.pages)
        for (const look of ["iec", "na"] as const) {
          const sheet = sheetOf({ circuit, page, look, framed: false, zoom });
          const box = sheetBox({ circuit, page, look, zoom });
          expect(box.ok && box.value).toEqual(sheet.ok && boundsOfAll(sheet.value.marks));
        }
  });

  test("is none where nothing stands, and refused for a page that is not there", () => {
    const empty = { ...grid, parts: [], wires: [] };
    expect(sheetBox({ circuit: empty, page: "p1", look: "iec", zoom: 0.2 })).toEqual({ ok: true, value: undefined });
    const refused = sheetBox({ circuit: grid, page: "p9", look: "iec", zoom: 0.2 });
    expect(!refused.ok && refused.refusal.code).toBe("page-unknown");
  });
});
