import { Decimal } from "decimal.js";
import { describe, expect, it } from "vitest";
import type { Element, Network } from "../../core/solve/element.ts";
import { compile } from "../../core/solve/pattern.ts";
import { Solver } from "../../core/solve/solver.ts";

const RUNGS = 1000;
const FEED_VOLTS = 12.6;

/** A ladder of wires fed through `feedOhms`, a leak of a megohm to the reference at every hundredth rung. */
function ladder(wireOhms: (rung: number) => number, feedOhms: number): Network {
  const elements: Element[] = [{ law: "source", a: 1, b: 0, volts: FEED_VOLTS, ohms: feedOhms }];
  for (let rung = 1; rung < RUNGS; rung++)
    elements.push({ law: "resistor", a: rung, b: rung + 1, ohms: wireOhms(rung) });
  for (let rung = 100; rung <= RUNGS; rung += 100) elements.push({ law: "resistor", a: rung, b: 0, ohms: 1e6 });
  return { nodeCount: RUNGS + 1, elements };
}

/** Node volts of the ladder in decimal arithmetic of 60 digits: ohms are folded from the far end, volts divided on the way back. */
function exactVolts({ elements }: Network): readonly Decimal[] {
  const Exact = Decimal.clone({ precision: 60 });
  const siemens = (ohms: number) => new Exact(1).div(new Exact(ohms));
  const leak = new Map<number, Decimal>();
  const wire = new Map<number, Decimal>();
  let feed = new Exact(0);
  for (const element of elements) {
    if (element.law === "source") feed = siemens(element.ohms);
    else if (element.law === "resistor" && element.b === 0) leak.set(element.a, siemens(element.ohms));
    else if (element.law === "resistor") wire.set(element.a, siemens(element.ohms));
  }
  /** Conductance to the reference seen at a rung, looking away from the feed. */
  const beyond: Decimal[] = [];
  for (let rung = RUNGS; rung >= 1; rung--) {
    const own = leak.get(rung) ?? new Exact(0);
    const on = wire.get(rung);
    const next = beyond[rung + 1];
    beyond[rung] = on && next ? own.plus(on.times(next).div(on.plus(next))) : own;
  }
  const volts: Decimal[] = [new Exact(0)];
  volts[1] = feed.times(FEED_VOLTS).div(feed.plus(beyond[1]!));
  for (let rung = 1; rung < RUNGS; rung++) {
    const on = wire.get(rung)!;
    volts[rung + 1] = volts[rung]!.times(on).div(on.plus(beyond[rung + 1]!));
  }
  return volts;
}

function worstRelativeError(network: Network): number {
  const solver = new Solver(compile(network));
  solver.solve();
  const exact = exactVolts(network);
  let worst = 0;
  for (let rung = 1; rung <= RUNGS; rung++) {
    const error = new Decimal(solver.volts(rung)).minus(exact[rung]!).div(exact[rung]!).abs().toNumber();
    worst = Math.max(worst, error);
  }
  return worst;
}

describe("a ladder of 1,000 wires against decimal arithmetic of 60 digits", () => {
  it.each([
    ["0.1 mohm each, fed through 1 Tohm", () => 1e-4, 1e12],
    ["0.1 mohm each, fed through 1 ohm", () => 1e-4, 1],
    ["0.05 to 5 mohm, fed through 1 Gohm", (rung: number) => 5e-5 * (1 + (rung % 100)), 1e9],
  ])("%s is right to 1e-12", (_, wireOhms, feedOhms) => {
    expect(worstRelativeError(ladder(wireOhms, feedOhms))).toBeLessThan(1e-12);
  });
});
