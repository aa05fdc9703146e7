import type { Mark } from "../drawing/mark.ts";
import { circle, filledBox, line, text } from "../drawing/shapes.ts";
import { doesNothing, type FaultMode, type Kind, type PartView, type SymbolShape } from "./kind.ts";
import { addsOhms, opens } from "./loadFaults.ts";
import { amount } from "./settings.ts";
import { WEIGHTS } from "./weights.ts";

function pitch(view: PartView): number {
  return Math.max(4, Math.round(view.number("pitch")));
}

/** A splice: legs that meet in one hidden node, so that one leg can be open while the others are sound. */
export const splice: Kind = {
  name: "splice",
  title: "Splice",
  words: ["joint", "crimp", "junction", "weld"],
  letter: "SP",
  role: "join",
  settings: [
    amount("legs", "legs", "", 3, [2, 40], "common practice, no source"),
    amount("legOhms", "ohms of a leg", "ohm", 0.0005, [0.00001, 1], "common practice, no source"),
    amount("pitch", "legs apart on the sheet, grid units", "", 4, [4, 60], "the drawing alone"),
  ],
  terminals: (_part, settings) =>
    Array.from({ length: Math.max(2, Math.round(Number(settings.legs))) }, (_, index) => `${index + 1}`),
  controls: () => [],
  model: (view) =>
    view.terminals.map((leg) => ({
      key: `leg-${leg}`,
      a: leg,
      b: "~splice",
      law: { law: "resistor", ohms: view.number("legOhms") },
      passes: "conductor",
    })),
  start: "",
  closed: () => [],
  next: (_view, state) => state,
  doing: doesNothing,
  faults: (view) => view.terminals.flatMap(legFaults),
  symbol: (view) => (view.terminals.length > 4 || pitch(view) > 4 ? capsule(view) : dot(view.terminals)),
  testPoints: (view) => view.terminals.map((terminal) => ({ terminal, touches: "crimp" })),
};

function legFaults(leg: string): readonly FaultMode[] {
  const element = `leg-${leg}`;
  const repair = `make leg ${leg} again`;
  const poor = addsOhms(element, `leg ${leg} poor, ohms added`, WEIGHTS.spliceLeg, [2, 20, 0.3], `${element}-ohms`);
  return [opens(element, `leg ${leg} open`, WEIGHTS.spliceLeg, `${element}-open`, repair), { ...poor, repair }];
}

/** Up to four legs round one dot: the last at the left, the others right, below and above. */
function dot(legs: readonly string[]): SymbolShape {
  const places = [
    { x: 4, y: 2, side: "right" },
    { x: 2, y: 4, side: "down" },
    { x: 2, y: 0, side: "up" },
  ] as const;
  const last = legs.length - 1;
  const at = legs.map((_leg, index) => (index === last ? ({ x: 0, y: 2, side: "left" } as const) : places[index]!));
  const numbers = at.map(({ side }, index) => {
    const beside =
      side === "up" ? [2.4, 0.9] : side === "down" ? [2.4, 3.9] : side === "left" ? [0.2, 1.5] : [3.2, 1.5];
    return text(legs[index]!, beside[0]!, beside[1]!, { role: "text-quiet" });
  });
  return {
    width: 4,
    height: 4,
    terminals: Object.fromEntries(legs.map((leg, index) => [leg, at[index]!])),
    marks: [...at.map(({ x, y }) => line("symbol", 2, 2, x, y)), circle("joint", 2, 2, 0.5, true), ...numbers],
    nameAt: { x: 4.4, y: 3.6, anchor: "start" },
  };
}

/** Stretched over a row of parts: a leg hangs down at every tap, the last one comes in at the left. */
function capsule(view: PartView): SymbolShape {
  const legs = view.terminals.slice(0, -1);
  const last = view.terminals.at(-1)!;
  const xs = legs.map((_leg, index) => 2 + index * pitch(view));
  const width = xs.at(-1)! + 2;
  const body: Mark = filledBox("body", 0, 1, width, 2, 1);
  return {
    width,
    height: 5,
    terminals: {
      ...Object.fromEntries(legs.map((leg, index) => [leg, { x: xs[index]!, y: 5, side: "down" as const }])),
      [last]: { x: 0, y: 2, side: "left" },
    },
    marks: [
      body,
      line("symbol", 0, 2, xs.at(-1)!, 2),
      ...xs.map((x) => line("symbol", x, 2, x, 5)),
      ...xs.map((x) => circle("joint", x, 2, 0.5, true)),
      ...legs.map((leg, index) => text(leg, xs[index]! + 0.45, 4.3, { role: "text-quiet" })),
      text(last, 0.4, 0.7, { role: "text-quiet" }),
    ],
    bar: [
      { x: 0, y: 2 },
      { x: xs.at(-1)!, y: 2 },
    ],
    nameAt: { x: width + 0.6, y: 1.8, anchor: "start" },
  };
}
