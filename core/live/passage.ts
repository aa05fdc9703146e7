import { remember } from "../base/memo.ts";
import type { Ohms } from "../base/units.ts";
import type { Law } from "../solve/element.ts";
import type { CircuitNetwork } from "./network.ts";

/**
 * A network as doors between nodes, for walking: those of node n are numbers start[n] to start[n + 1] - 1. Arrays per
 * door: element, other, fromA; per element: the rest.
 */
export interface Doors {
  readonly start: Int32Array;
  readonly element: Int32Array;
  readonly other: Int32Array;
  /** 1 where the door leaves from the element's end a. */
  readonly fromA: Uint8Array;
  readonly isFirm: Uint8Array;
  readonly isDiode: Uint8Array;
  readonly isSource: Uint8Array;
  readonly isContact: Uint8Array;
  readonly addedOhms: Float64Array;
  /** Ohms a path takes for passing through: of loads at their rated point. */
  readonly pathOhms: Float64Array;
  readonly sources: readonly number[];
}

/** The doors of a network. Meters have none: they change no state. */
export const doorsOf = remember(({ elements, nodeCount }: CircuitNetwork): Doors => {
  const count = elements.length;
  const start = new Int32Array(nodeCount + 1);
  for (const { element, isMeter } of elements) {
    if (isMeter) continue;
    start[element.a + 1]!++;
    start[element.b + 1]!++;
  }
  for (let node = 0; node < nodeCount; node++) start[node + 1]! += start[node]!;
  const fill = start.slice();
  const element = new Int32Array(start[nodeCount]!);
  const other = new Int32Array(start[nodeCount]!);
  const fromA = new Uint8Array(start[nodeCount]!);
  elements.forEach((placed, index) => {
    if (placed.isMeter) return;
    const { a, b } = placed.element;
    const at = fill[a]!++;
    element[at] = index;
    other[at] = b;
    fromA[at] = 1;
    const back = fill[b]!++;
    element[back] = index;
    other[back] = a;
  });
  const flag = (test: (index: number) => boolean) =>
    Uint8Array.from({ length: count }, (_, index) => (test(index) ? 1 : 0));
  const passes = (index: number) => elements[index]!.passes;
  const isSource = flag((index) => passes(index) === "source");
  return {
    start,
    element,
    other,
    fromA,
    isFirm: flag((index) => ["conductor", "contact", "diode"].includes(passes(index))),
    isDiode: flag((index) => elements[index]!.element.law === "diode"),
    isSource,
    isContact: flag((index) => passes(index) === "contact"),
    addedOhms: Float64Array.from(elements, (placed) => placed.addedOhms),
    pathOhms: Float64Array.from(elements, (placed) => pathOhms(placed.element)),
    sources: [...isSource.keys()].filter((index) => isSource[index] === 1),
  };
});

function pathOhms(law: Law): Ohms {
  switch (law.law) {
    case "resistor":
    case "motor":
      return law.ohms;
    case "lamp":
      return law.ratedVolts / law.ratedAmps;
    default:
      return 0;
  }
}
