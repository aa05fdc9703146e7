import type { Position } from "../../core/parts/kind.ts";
import { loads, pole } from "./loads.ts";
import type { Wiring } from "./wiring.ts";

/** A way to go on drawing, and how often it is taken. */
export interface Branch {
  readonly weight: number;
  readonly draw: (on: Wiring) => void;
}

/** The branches a harness is drawn from; a linear one has no lamps, motors, diodes or electronics. */
export function branches(isLinear: boolean): Readonly<Record<string, Branch>> {
  return {
    switched: { weight: 30, draw: switched },
    relayed: { weight: 24, draw: relayed },
    latched: { weight: 5, draw: latched },
    alwaysOn: { weight: 5, draw: (on) => loads(on, on.feed()) },
    stub: { weight: 5, draw: stub },
    metered: { weight: 3, draw: metered },
    sensed: { weight: 5, draw: sensed },
    ...(isLinear
      ? {}
      : {
          reversedBySwitch: { weight: 6, draw: reversedBySwitch },
          reversedByRelays: { weight: 5, draw: reversedByRelays },
          eitherFeed: { weight: 6, draw: eitherFeed },
          decided: { weight: 4, draw: decided },
        }),
  };
}

/** A fused feed, switched on its way to the loads. */
function switched(on: Wiring): void {
  const feed = on.feed();
  const [near, far] = pole(on);
  on.run(feed.point, near);
  loads(on, { ...feed, point: far });
}

/** A relay whose coil is switched on its feed side or on its ground side. */
function switchedRelay(on: Wiring, form: "make" | "change-over" | "break"): string {
  const { draft, lots } = on;
  const suppression = on.isLinear ? "none" : lots.oneOf(["none", "none", "resistor", "diode"]);
  const id = draft.add("relay", { form, ...(suppression !== "none" && { suppression }) });
  if (!on.isLinear && suppression === "none" && lots.happens(0.15)) {
    const diode = draft.add("diode");
    draft.wire(`${diode}.K`, `${id}.86`, on.gauge());
    draft.wire(`${diode}.A`, `${id}.85`, on.gauge());
  }
  const [near, far] = pole(on);
  const feed = (): string => {
    if (lots.happens(0.4)) return on.keyed();
    const { point, book } = on.feed();
    book(0.3);
    return point;
  };
  if (lots.happens(0.5)) {
    on.run(feed(), near);
    on.run(far, `${id}.86`);
    on.run(`${id}.85`, on.ground());
  } else {
    on.run(feed(), `${id}.86`);
    on.run(`${id}.85`, near);
    on.run(far, on.ground());
  }
  return id;
}

function relayed(on: Wiring): void {
  const form = on.lots.oneOf(["make", "make", "make", "change-over", "break"] as const);
  const id = switchedRelay(on, form);
  const feed = on.feed();
  on.run(feed.point, `${id}.30`);
  loads(on, { ...feed, point: `${id}.${form === "break" ? "87a" : "87"}` });
  if (form === "change-over" && on.lots.happens(0.6)) loads(on, { ...feed, point: `${id}.87a` });
}

/** A relay that holds itself once its button was pressed, until another button lets it go. */
function latched(on: Wiring): void {
  const { draft } = on;
  const feed = on.feed();
  const bus = draft.splice();
  on.run(feed.point, draft.leg(bus));
  const start = draft.add("push-button");
  const stop = draft.add("push-button", { contact: "normally closed" });
  const relay = draft.add("relay", {});
  const held = draft.splice();
  on.run(draft.leg(bus), `${start}.1`);
  on.run(draft.leg(bus), `${relay}.30`);
  on.run(`${start}.2`, draft.leg(held));
  on.run(`${relay}.87`, draft.leg(held));
  draft.wire(draft.leg(held), `${relay}.86`, on.gauge());
  on.run(`${relay}.85`, `${stop}.1`);
  on.run(`${stop}.2`, on.ground());
  feed.book(0.3);
  loads(on, { ...feed, point: draft.leg(held) });
}

// ---------------------------------------------------------------- motors both ways, two feeds

const BOTH_WAYS: readonly Position[] = [
  {
    name: "rest",
    joins: [
      ["3", "1"],
      ["3", "2"],
    ],
  },
  {
    name: "up",
    joins: [
      ["6", "1"],
      ["3", "2"],
    ],
    springsBackTo: "rest",
  },
  {
    name: "down",
    joins: [
      ["3", "1"],
      ["6", "2"],
    ],
    springsBackTo: "rest",
  },
];

function motorOf(on: Wiring): { readonly id: string; readonly amps: number } {
  const amps = (on.lots.between(1, 6) * 12) / on.draft.nominalVolts;
  return { id: on.draft.add("motor", { amps, stall: 4 * amps, cutOut: on.lots.happens(0.3) }), amps };
}

function reversedBySwitch(on: Wiring): void {
  const feed = on.feed();
  const control = on.draft.add("switch", {}, { terminals: ["6", "3", "1", "2"], positions: BOTH_WAYS });
  const { id, amps } = motorOf(on);
  on.run(feed.point, `${control}.6`);
  on.run(`${control}.3`, on.ground());
  on.run(`${control}.1`, `${id}.1`);
  on.run(`${control}.2`, `${id}.2`);
  feed.book(amps);
}

function reversedByRelays(on: Wiring): void {
  const { draft } = on;
  const feed = on.feed();
  const bus = draft.splice();
  on.run(feed.point, draft.leg(bus));
  const { id, amps } = motorOf(on);
  for (const terminal of ["1", "2"]) {
    const relay = switchedRelay(on, "change-over");
    on.run(draft.leg(bus), `${relay}.87`);
    on.run(`${relay}.87a`, on.ground());
    on.run(`${relay}.30`, `${id}.${terminal}`);
  }
  feed.book(amps);
}

/** Loads fed from either of two switches, each through its diode. */
function eitherFeed(on: Wiring): void {
  const { draft, lots } = on;
  const joined = draft.splice();
  const feeds = [on.feed(), on.feed()];
  for (const feed of feeds) {
    const diode = draft.add("diode", { type: lots.oneOf(["silicon", "schottky", "rectifier"]) });
    const [near, far] = pole(on);
    on.run(feed.point, near);
    on.run(far, `${diode}.A`);
    on.run(`${diode}.K`, draft.leg(joined));
  }
  const book = (amps: number): void => {
    for (const feed of feeds) feed.book(amps);
  };
  loads(on, { point: draft.leg(joined), book });
}

/** A control module that sees a switch and drives a load. */
function decided(on: Wiring): void {
  const { draft, lots } = on;
  const feed = on.feed();
  const isHigh = lots.happens(0.5);
  const wanted = isHigh ? "high" : "low";
  const unit = draft.add(
    "module",
    {},
    {
      pins: { "30": "supply", "31": "ground", "1": "input", "2": "drives-high" },
      table: [{ when: { "1": wanted }, joins: [["30", "2"]] }],
    },
  );
  draft.plug(unit);
  const bus = draft.splice();
  on.run(feed.point, draft.leg(bus));
  on.run(draft.leg(bus), `${unit}.30`);
  on.run(`${unit}.31`, on.ground());
  const [near, far] = pole(on);
  on.run(isHigh ? draft.leg(bus) : on.ground(), near);
  on.run(far, `${unit}.1`);
  loads(on, { ...feed, point: `${unit}.2` });
}

// ---------------------------------------------------------------- small things

/** A wire that ends nowhere, or at a switch that leads nowhere. */
function stub(on: Wiring): void {
  const { point } = on.feed();
  const [near, far] = pole(on);
  on.run(point, near);
  if (on.lots.happens(0.5)) on.run(far, on.draft.leg(on.draft.splice()));
}

/** A gauge of 10 megohm left on a switched wire. */
function metered(on: Wiring): void {
  const { point } = on.feed();
  const [near, far] = pole(on);
  const meter = on.draft.add("resistor", { ohms: 1e7 });
  on.run(point, near);
  on.run(far, `${meter}.1`);
  on.run(`${meter}.2`, on.ground());
}

/** A gauge and its sender, or a potentiometer whose wiper is read through 100 kilohm. */
function sensed(on: Wiring): void {
  const { draft, lots } = on;
  const gauge = draft.add("resistor", { ohms: lots.between(60, 300) });
  on.run(on.keyed(), `${gauge}.1`);
  if (lots.happens(0.5)) {
    const sender = draft.add("sender");
    on.run(`${gauge}.2`, `${sender}.1`);
    on.run(`${sender}.2`, on.ground());
    return;
  }
  const track = draft.add("potentiometer");
  const input = draft.add("resistor", { ohms: 1e5 });
  on.run(`${gauge}.2`, `${track}.A`);
  on.run(`${track}.E`, on.ground());
  on.run(`${track}.W`, `${input}.1`);
  on.run(`${input}.2`, on.ground());
}

/** An alternator on the battery, with a charge lamp on the key. */
export function hangAlternator(on: Wiring): void {
  const { draft, lots } = on;
  const id = draft.add("alternator", { amps: lots.between(45, 140) });
  const fuse = draft.add("fuse", { amps: 250, family: "maxi" });
  draft.wire(`${id}.B+`, `${fuse}.1`, { mm2: 25, metres: 0.5 });
  draft.wire(`${fuse}.2`, `${on.battery}.+`, { mm2: 25, metres: 1 });
  const stud = draft.ground("engine");
  draft.wire(`${id}.B-`, stud, { mm2: 16, metres: 0.2 });
  draft.wire(stud, draft.ground("chassis"), { mm2: 25, metres: 0.4 });
  const lamp = draft.add("lamp", { watts: 2 });
  on.run(on.keyed(), `${lamp}.1`);
  on.run(`${lamp}.2`, `${id}.D+`);
}
