import type { Position } from "../../core/parts/kind.ts";
import type { Wiring } from "./wiring.ts";

/** A point to feed from, and where to book what is drawn. */
export type Feed = ReturnType<Wiring["feed"]>;

/** Draws 1 to 4 loads side by side behind a point, and their ground. */
export function loads(on: Wiring, { point, book }: Feed): void {
  const { draft, lots } = on;
  const count = lots.weighted({ 1: 45, 2: 30, 3: 15, 4: 10 });
  const bottom = on.ground();
  if (count === "1") {
    const { ends, amps } = load(on);
    on.run(point, ends[0]);
    on.run(ends[1], bottom);
    book(amps);
    return;
  }
  const feed = draft.splice();
  const back = draft.splice();
  on.run(point, draft.leg(feed));
  on.run(draft.leg(back), bottom);
  for (let k = Number(count); k > 0; k--) {
    const { ends, amps } = load(on);
    on.run(draft.leg(feed), ends[0]);
    draft.wire(ends[1], lots.happens(0.85) ? draft.leg(back) : on.ground(), on.gauge());
    book(amps);
  }
}

/** A load: its two ends and the amps to reckon with. */
function load(on: Wiring): { readonly ends: readonly [string, string]; readonly amps: number } {
  const { draft, lots } = on;
  const volts = draft.nominalVolts;
  const bent = on.isLinear ? 0 : 1;
  const name = lots.weighted({
    lamp: 40 * bent,
    motor: 16 * bent,
    led: 5 * bent,
    "two-filament-lamp": 4 * bent,
    heater: 10,
    horn: 8,
    solenoid: 9,
    resistor: 5,
  });
  const watts = lots.oneOf([5, 10, 21, 21, 35, 55, 60]);
  const amps = (lots.between(1, 8) * 12) / volts;
  const settings = {
    lamp: { watts },
    motor: { amps, stall: amps * lots.between(3, 6), friction: lots.between(0.1, 0.9) },
    led: {},
    "two-filament-lamp": {},
    heater: { watts: lots.between(20, 150) },
    horn: { amps },
    solenoid: { ohms: volts / lots.between(0.3, 3) },
    resistor: { ohms: lots.spread(2, 2000) },
  }[name];
  const id = draft.add(name, settings);
  if (lots.happens(0.3)) draft.plug(id);
  const drawn = {
    lamp: watts / volts,
    motor: amps,
    led: 0.02,
    "two-filament-lamp": 3,
    heater: 150 / volts,
    horn: amps,
    solenoid: 3,
    resistor: 6,
  }[name];
  if (name === "led") return { ends: [`${id}.A`, `${id}.K`], amps: drawn };
  if (name === "two-filament-lamp") return { ends: [`${id}.${lots.oneOf(["2", "3"])}`, `${id}.1`], amps: drawn };
  return { ends: [`${id}.1`, `${id}.2`], amps: drawn };
}

// ---------------------------------------------------------------- switches

/** A switch of one pole, by lot of several sorts: the terminals it joins when thrown. */
export function pole(on: Wiring): readonly [string, string] {
  const { draft, lots } = on;
  const sort = lots.weighted({
    latching: 40,
    springing: 15,
    button: 12,
    "change-over": 12,
    closed: 8,
    pressure: 7,
    heat: 6,
  });
  const joined: Position["joins"] = [["1", "2"]];
  const positions: readonly Position[] = (
    {
      latching: [
        { name: "off", joins: [] },
        { name: "on", joins: joined },
      ],
      springing: [
        { name: "off", joins: [] },
        { name: "on", joins: joined },
        { name: "flash", joins: joined, springsBackTo: "off" },
      ],
      "change-over": [
        { name: "up", joins: [["1", "3"]] },
        { name: "down", joins: joined },
      ],
      closed: [
        { name: "shut", joins: joined },
        { name: "ajar", joins: [] },
      ],
      button: [],
      pressure: [],
      heat: [],
    } satisfies Record<typeof sort, readonly Position[]>
  )[sort];
  const kind =
    { button: "push-button", pressure: "pressure-switch", heat: "temperature-switch" }[sort as string] ?? "switch";
  const id = draft.add(kind, {}, positions.length > 0 ? { positions } : {});
  if (lots.happens(0.4)) draft.plug(id);
  return [`${id}.1`, `${id}.2`];
}
