import type { Element, Law, Network } from "../../core/solve/element.ts";

/** A network to try the solver on, and the elements in it that stand for contacts. */
export interface RandomNetwork {
  readonly network: Network;
  readonly contacts: readonly number[];
}

/** A stream of numbers from 0 to 1, the same for the same seed (a 32-bit mixing generator). */
export function stream(seed: number): () => number {
  let state = (seed + 1) * 0x9e3779b9;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/**
 * A network that a vehicle might have, or a wild one that no vehicle has: batteries, contacts, wires of 1 to 100
 * milliohms, lamps, motors, diodes either way round, regulated sources, loads in series, shorts, floating parts.
 */
export function randomNetwork(seed: number): RandomNetwork {
  const draw = drawing(seed);
  const batteryVolts = draw.oneOf([12.6, 12.6, 25.2]);
  draw.source(1, 0, batteryVolts, draw.spread(0.002, 0.03));
  if (draw.happens(0.3)) draw.add({ law: "joint" }, draw.node(), 0);
  if (seed % 3 === 2) wild(draw, batteryVolts);
  else harness(draw, batteryVolts);
  return { network: { nodeCount: draw.count(), elements: draw.elements }, contacts: draw.contacts };
}

/** A harness of about this many nodes. A branch is fed and grounded near the last ones or at the battery's own posts. */
export function harnessOf(nodes: number, seed: number): RandomNetwork {
  const draw = drawing(seed);
  draw.source(1, 0, 12.6, 0.01);
  const main = Array.from({ length: 8 }, () => {
    const bus = draw.node();
    draw.wire(1, bus);
    return bus;
  });
  const feeds = [...main];
  const grounds = [0];
  while (draw.count() < nodes) {
    const nearFeeds = draw.happens(0.3) ? [...main] : feeds.slice(-6);
    const nearGrounds = [0, ...grounds.slice(-4)];
    const known = [nearFeeds.length, nearGrounds.length];
    branch(draw, nearFeeds, nearGrounds, 12.6);
    feeds.push(...nearFeeds.slice(known[0]));
    grounds.push(...nearGrounds.slice(known[1]));
  }
  return { network: { nodeCount: draw.count(), elements: draw.elements }, contacts: draw.contacts };
}

// ---------------------------------------------------------------- shapes of network

function harness(draw: Drawing, volts: number): void {
  const feeds = [1];
  const grounds = [0];
  if (draw.happens(0.4)) {
    const post = draw.node();
    draw.wire(1, post);
    draw.add(
      { law: "regulated", volts: volts * 1.12, ohms: draw.spread(0.005, 0.1), maxAmps: draw.spread(5, 120) },
      post,
      0,
    );
  }
  if (draw.happens(0.25)) {
    const second = draw.node();
    draw.source(second, 0, volts * draw.between(0.3, 1.05), draw.spread(0.002, 0.5));
    draw.contact(second, 1);
    feeds.push(second);
  }
  if (draw.happens(0.15)) {
    const top = draw.node();
    draw.source(top, 1, volts, 0.01);
    feeds.push(top);
  }
  const branches = 1 + draw.upTo(8);
  for (let k = 0; k < branches; k++) branch(draw, feeds, grounds, volts);
  if (draw.happens(0.2)) island(draw, volts);
  if (draw.happens(0.2)) draw.wire(draw.anyNode(), 0);
  if (draw.happens(0.2)) draw.add(draw.diode(), draw.anyNode(), draw.anyNode());
}

/** Feed, contact, load, ground, with what a harness hangs on them. */
function branch(draw: Drawing, feeds: number[], grounds: number[], volts: number): void {
  const bus = draw.node();
  const feed = draw.oneOf(feeds);
  const kind = draw.upTo(6);
  if (kind === 0) {
    // two feeds joined by diodes
    draw.add(draw.diode(), feed, bus);
    draw.add(draw.diode(), draw.oneOf(feeds), bus);
  } else if (kind === 1) {
    const fuse = draw.node();
    draw.wire(feed, fuse);
    draw.contact(fuse, bus);
  } else {
    draw.contact(feed, bus);
  }
  if (draw.happens(0.5)) feeds.push(bus);
  let top = draw.node();
  draw.wire(bus, top);
  const bottom = draw.node();
  const inSeries = draw.happens(0.25) ? 2 + draw.upTo(2) : 1;
  for (let k = 1; k < inSeries; k++) {
    const next = draw.node();
    draw.add(draw.load(volts), top, next);
    top = next;
  }
  for (let k = 1 + draw.upTo(3); k > 0; k--) draw.add(draw.load(volts), top, bottom);
  if (draw.happens(0.3)) draw.add(draw.diode(), bottom, top);
  if (draw.happens(0.15)) draw.add({ law: "resistor", ohms: 1e7 }, bus, 0);
  if (draw.happens(0.2)) {
    const end = draw.node();
    draw.add(draw.load(volts), bus, end);
  }
  const ground = draw.oneOf(grounds);
  if (draw.happens(0.3)) draw.contact(bottom, ground);
  else draw.wire(bottom, ground);
  if (draw.happens(0.3)) grounds.push(bottom);
}

/** A part joined to nothing, or through a contact or a diode only. */
function island(draw: Drawing, volts: number): void {
  const a = draw.node();
  const b = draw.node();
  if (draw.happens(0.5)) draw.source(a, b, volts, 0.01);
  draw.add(draw.load(volts), a, b);
  const link = draw.upTo(3);
  if (link === 0) draw.contact(a, draw.anyNode());
  else if (link === 1) draw.add(draw.diode(), a, draw.anyNode());
}

/** Anything between any two of a few nodes. */
function wild(draw: Drawing, volts: number): void {
  const nodes = 2 + draw.upTo(12);
  for (let k = 0; k < nodes; k++) draw.node();
  const elements = nodes + draw.upTo(2 * nodes);
  for (let k = 0; k < elements; k++) {
    const a = draw.anyNode();
    const b = draw.anyNode();
    const kind = draw.upTo(10);
    if (kind < 2) draw.wire(a, b);
    else if (kind < 4) draw.contact(a, b);
    else if (kind < 7) draw.add(draw.load(volts), a, b);
    else if (kind < 9) draw.add(draw.diode(), a, b);
    else if (draw.happens(0.5)) draw.source(a, b, draw.between(0, volts), draw.spread(0.002, 1));
    else
      draw.add(
        { law: "regulated", volts: draw.between(3, 28), ohms: draw.spread(0.002, 1), maxAmps: draw.spread(0.1, 100) },
        a,
        b,
      );
  }
}

// ---------------------------------------------------------------- drawing lots

type Drawing = ReturnType<typeof drawing>;

function drawing(seed: number) {
  const next = stream(seed);
  const elements: Element[] = [];
  const contacts: number[] = [];
  let nodes = 2;
  const between = (low: number, high: number): number => low + (high - low) * next();
  /** Evenly over the powers of ten. */
  const spread = (low: number, high: number): number => low * (high / low) ** next();
  const upTo = (count: number): number => Math.floor(next() * count);
  const happens = (share: number): boolean => next() < share;
  const oneOf = <T>(list: readonly T[]): T => list[upTo(list.length)]!;
  const add = (law: Law, a: number, b: number): void => {
    elements.push({ ...law, a, b });
  };
  const load = (volts: number): Law => {
    const kind = upTo(8);
    if (kind < 3) return { law: "lamp", ratedVolts: volts, ratedAmps: spread(0.1, 6) };
    if (kind < 5) return motor(volts, spread(0.3, 8));
    if (kind === 5) return motor(volts, spread(30, 150));
    return { law: "resistor", ohms: spread(0.2, 5000) };
  };
  const motor = (volts: number, freeAmps: number): Law => {
    const ohms = volts / (freeAmps * between(4, 12));
    return {
      law: "motor",
      ohms,
      frictionAmps: freeAmps * between(0, 0.9),
      speedOhms: volts / (freeAmps * between(0.2, 1)),
    };
  };
  return {
    elements,
    contacts,
    between,
    spread,
    upTo,
    happens,
    oneOf,
    add,
    load,
    node: () => nodes++,
    count: () => nodes,
    anyNode: () => upTo(nodes),
    wire: (a: number, b: number) => add({ law: "resistor", ohms: spread(0.001, 0.1) }, a, b),
    contact: (a: number, b: number) => {
      contacts.push(elements.length);
      add({ law: "resistor", ohms: happens(0.6) ? 0.005 : Number.POSITIVE_INFINITY }, a, b);
    },
    source: (a: number, b: number, volts: number, ohms: number) => add({ law: "source", volts, ohms }, a, b),
    diode: (): Law => ({ law: "diode", saturationAmps: spread(1e-14, 1e-6), emissionVolts: between(0.0259, 0.047) }),
  };
}
