import { expect, test } from "vitest";
import type { Circuit, Condition } from "../../core/circuit/circuit.ts";
import { controlsOf } from "../../core/circuit/points.ts";
import { sheetOf } from "../../core/circuit/sheet.ts";
import { possibleFaults } from "../../core/diagnose/possible.ts";
import { type Live, liveOf } from "../../core/live/live.ts";
import { type Lots, lotsOf } from "../lots.ts";
import { sample } from "../samples/onTheBench.ts";
import { unknownPage } from "./unknownPage.ts";

const STEPS = 16;
/** All words, no codes, hardly any word. */
const ZOOMS = [1, 0.6, 0.3];

// A sheet that follows a throw is made from the one before; whatever came before, it is the sheet that is made from nothing.
test.each(["1-roof-vents", "6-truck-trailer"])("%s: a sheet does not show what was thrown before it", (name) => {
  const circuit = sample(name);
  const lots = lotsOf(6);
  let condition: Condition = {};
  let page = circuit.pages[0]!.id;
  for (let step = 0; step < STEPS; step++) {
    condition = thrown(circuit, condition, lots);
    const faults = lots.happens(0.2) ? lots.oneOf(possibleFaults(circuit)).faults : [];
    const live = liveOf(circuit, condition, faults);
    // Now and then another page, so that most drawings follow one that differs little.
    if (lots.happens(0.2)) page = lots.oneOf(circuit.pages).id;
    for (const zoom of ZOOMS) {
      const fresh = unknownPage(circuit, page);
      const expected = marksOf(fresh.circuit, fresh.page, live, zoom);
      expect(marksOf(circuit, page, live, zoom), `step ${step} at ${zoom}`).toEqual(expected);
    }
  }
});

function thrown(circuit: Circuit, condition: Condition, lots: Lots): Condition {
  const { key, control } = lots.oneOf(controlsOf(circuit));
  const plug = lots.oneOf(circuit.connectors).id;
  return {
    ...condition,
    set: { ...condition.set, [key]: lots.oneOf(control.positions).name },
    apart: lots.happens(0.2) ? [plug] : [],
  };
}

function marksOf(circuit: Circuit, page: string, live: Live, zoom: number) {
  const sheet = sheetOf({ circuit, page, live, zoom });
  if (!sheet.ok) throw new Error(sheet.refusal.code);
  return sheet.value.marks;
}
