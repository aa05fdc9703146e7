import { describe, expect, test } from "vitest";
import type { Circuit, Condition } from "../../core/circuit/circuit.ts";
import { Rig } from "../../core/live/rig.ts";
import { moveTo, reach } from "../../core/live/settle.ts";
import { build, cell, table } from "./build.ts";

/** Every pair of terminals of a part that is joined in a condition, `1-4`; a contact has well under an ohm. */
function continuity(circuit: Circuit, part: string, condition: Condition): ReadonlySet<string> {
  const rig = new Rig(circuit);
  reach(rig, condition);
  const terminals = [...rig.network.parts.get(part)!.view.terminals];
  const node = (terminal: string): number => rig.network.nodes.get(`${part}.${terminal}`)!;
  return new Set(
    terminals.flatMap((a, index) =>
      terminals.slice(index + 1).flatMap((b) => (rig.solver.ohmsBetween(node(a), node(b)) < 1 ? [`${a}-${b}`] : [])),
    ),
  );
}

/** Pairs that a list of joins makes, those through a third terminal too, in the order of the terminals. */
function closure(text: string, terminals: readonly string[]): ReadonlySet<string> {
  const joins = text
    .split(" ")
    .filter(Boolean)
    .map((pair) => pair.split("-"));
  const groups = terminals.map((terminal) => new Set([terminal]));
  for (const [a = "", b = ""] of joins) {
    const [one, other] = [a, b].map((each) => groups[terminals.indexOf(each)]!);
    for (const each of other!) {
      one!.add(each);
      groups[terminals.indexOf(each)] = one!;
    }
  }
  return new Set(
    terminals.flatMap((a, index) =>
      terminals.slice(index + 1).flatMap((b) => (groups[index]!.has(b) ? [`${a}-${b}`] : [])),
    ),
  );
}

describe("continuity tables", () => {
  const POWER_TERMINALS = Array.from({ length: 24 }, (_, index) => `${index + 1}`);
  // TM 9-4940-549-14&P, power selector switch test; its first position is missing and stands here as all open.
  const POWER = {
    first: "",
    generator: "1-4 5-8 9-12 13-16 17-20 21-24",
    city: "1-3 5-7 9-11 13-15 17-19 21-23",
    emergency: "1-2 5-6 9-10 13-14 17-18 21-22",
  };

  test.each(Object.entries(POWER))("TM 9-4940-549-14&P power selector at %s joins %s and nothing else", (S1, joins) => {
    const circuit = build("Power selector", 24, { S1: table(POWER, POWER_TERMINALS) }, []);
    expect(continuity(circuit, "S1", { set: { S1 } })).toEqual(closure(joins, POWER_TERMINALS));
  });

  const KEY_TERMINALS = ["19", "30", "50", "AC"];
  // Jacobsen 600 service manual, page 10G-14
  const KEY = { off: "", run: "30-AC", glow: "30-AC 30-19", "!start": "30-AC 30-19 30-50" };

  test.each(Object.entries(KEY))("Jacobsen 600 key switch at %s joins %s and nothing else", (position, joins) => {
    const circuit = build("Key switch", 12, { S1: table(KEY, KEY_TERMINALS) }, []);
    expect(continuity(circuit, "S1", { set: { S1: position.replace("!", "") } })).toEqual(
      closure(joins, KEY_TERMINALS),
    );
  });
});

// A relay here has one pole: one of several is drawn as several side by side, whose coils together are the coil.

/** Closed contacts of relays drawn side by side. While they are fed, their coil shows the ohms of the battery. */
function contactsOf(circuit: Circuit, relays: readonly string[], S1: string, coil: string): readonly string[] {
  return relays.flatMap((part) => [...continuity(circuit, part, { set: { S1 } })].filter((pair) => pair !== coil));
}

describe("relay of TM 9-6115-643-24, paragraph 2.59.2: three change-over poles, coil A-B 427.5 to 522.5 ohm", () => {
  const pole = (common: string, rest: string, make: string) =>
    ["relay", { form: "change-over", coilOhms: 3 * 475 }, { terminals: ["A", "B", common, make, rest] }] as const;
  const circuit = build(
    "Three-pole relay",
    24,
    {
      G1: ["battery"],
      K1: pole("7", "1", "4"),
      K2: pole("8", "2", "5"),
      K3: pole("9", "3", "6"),
      S1: table({ off: "", on: "1-2" }),
    },
    ["G1.+ S1.1", "S1.2 K1.A K2.A K3.A", "G1.- K1.B K2.B K3.B"],
  );
  const joined = (S1: string) => contactsOf(circuit, ["K1", "K2", "K3"], S1, "A-B");

  test("at rest 7-1, 8-2 and 9-3 are closed, 7-4, 8-5 and 9-6 open", () =>
    expect(joined("off")).toEqual(["7-1", "8-2", "9-3"]));

  test("pulled in it is the other way round", () => expect(joined("on")).toEqual(["7-4", "8-5", "9-6"]));

  test("the coil measures 427.5 to 522.5 ohm", () => {
    const rig = new Rig(circuit);
    reach(rig, {});
    const ohms = rig.solver.ohmsBetween(rig.network.nodes.get("K1.A")!, rig.network.nodes.get("K1.B")!);
    expect(ohms).toBeGreaterThan(427.5);
    expect(ohms).toBeLessThan(522.5);
  });
});

describe("relay of TM 5-6115-332-14, page 4-59: coil 3-6 for 24 V, two poles", () => {
  const circuit = build(
    "Two-pole relay",
    24,
    {
      G1: ["battery"],
      K1: ["relay", { form: "change-over", coilOhms: 640 }, { terminals: ["3", "6", "2", "8", "4"] }],
      K2: ["relay", { form: "change-over", coilOhms: 640 }, { terminals: ["3", "6", "7", "1", "5"] }],
      S1: table({ off: "", on: "1-2" }),
    },
    ["G1.+ S1.1", "S1.2 K1.3 K2.3", "G1.- K1.6 K2.6"],
  );
  const joined = (S1: string) => contactsOf(circuit, ["K1", "K2"], S1, "3-6");

  test("at rest 2-4 and 7-5 are closed", () => expect(joined("off")).toEqual(["2-4", "7-5"]));

  test("on, 2-8 and 7-1 are closed, 2-4 and 7-5 open", () => expect(joined("on")).toEqual(["2-8", "7-1"]));
});

// ---------------------------------------------------------------- pull-in, hold and drop-out

/**
 * A relay on a supply that a selector takes from one battery or another. Each is volts, or volts and ohms in series: a
 * battery has 2 V at least, so that 1 V is 2 V behind as many ohms as the coil has. Its contact carries 10 A at 24 V.
 */
function onSupplies(
  relay: Readonly<Record<string, number>>,
  supplies: Readonly<Record<string, readonly [number, number?]>>,
): Circuit {
  const names = Object.keys(supplies);
  const cells = Object.fromEntries(names.map((name, index) => [`G${index + 2}`, cell(supplies[name]![0])]));
  const selector = table({ off: "", ...Object.fromEntries(names.map((name) => [name, `common-${name}`])) }, [
    "common",
    ...names,
  ]);
  const parts = {
    G1: cell(24),
    ...cells,
    S1: selector,
    K1: ["relay", relay],
    R1: ["resistor", { ohms: 2.4 }],
  } as const;
  return build("Relay on several supplies", 24, parts, [
    "S1.common K1.86",
    `K1.85 G1.- ${Object.keys(cells)
      .map((id) => `${id}.-`)
      .join(" ")}`,
    ...names.map((name, index) => `G${index + 2}.+ (${supplies[name]![1] ?? 0}) S1.${name}`),
    "G1.+ K1.30",
    "K1.87 R1.1",
    "R1.2 G1.-",
  ]);
}

/** Rig after the selector went through these positions one after the other. */
function after(circuit: Circuit, ...positions: readonly string[]): Rig {
  const rig = new Rig(circuit);
  reach(rig, {});
  for (const S1 of positions) moveTo(rig, { set: { S1 } });
  return rig;
}

const stateAfter = (circuit: Circuit, ...positions: readonly string[]) => after(circuit, ...positions).states.get("K1");

/** Ohms across the coil of a relay that nothing feeds. */
function coilOhms(circuit: Circuit): number {
  const { network, solver } = after(circuit);
  return solver.ohmsBetween(network.nodes.get("K1.86")!, network.nodes.get("K1.85")!);
}

describe("26.5 V relay of TM 5-6115-400-35, table 8", () => {
  const circuit = onSupplies(
    { coilOhms: 300, pullInVolts: 17, dropOutVolts: 5 },
    { v26: [26.5], v18: [18], v16: [16], v10: [10], v1: [2, 300] },
  );

  test("pulls in by 18 V", () =>
    expect([stateAfter(circuit, "v18"), stateAfter(circuit, "v16")]).toEqual(["pulled-in", "released"]));

  test("holds down to 10 V, and does not pull in there", () =>
    expect([stateAfter(circuit, "v26", "v10"), stateAfter(circuit, "v10")]).toEqual(["pulled-in", "released"]));

  test("has dropped by 1 V", () => expect(stateAfter(circuit, "v26", "v10", "v1")).toBe("released"));

  test("its contact loses at most 100 mV at 10 A", () => {
    const { network, solver } = after(circuit, "v26");
    const contact = network.parts.get("K1")!.elements.get("30-87")!;
    expect(solver.amps(contact)).toBeCloseTo(10, 1);
    expect(solver.voltsAcross(contact)).toBeLessThanOrEqual(0.1);
  });
});

describe("crank relay of TM 5-6115-400-35, table 8", () => {
  const circuit = onSupplies(
    { coilOhms: 26.5 / 0.35, pullInVolts: 17, dropOutVolts: 5 },
    { v29: [29], v26: [26.5], v18: [18], v7: [7.1], v1: [2.8, 26.5 / 0.35] },
  );

  test("pulls in from 18 to 29 V", () =>
    expect(["v18", "v26", "v29"].map((volts) => stateAfter(circuit, volts))).toEqual(Array(3).fill("pulled-in")));

  test("drops out at 7 V or up to 5.5 V below", () =>
    expect([stateAfter(circuit, "v26", "v7"), stateAfter(circuit, "v26", "v1")]).toEqual(["pulled-in", "released"]));

  test("its coil draws 0.35 A", () => {
    const { network, solver } = after(circuit, "v26");
    expect(solver.amps(network.parts.get("K1")!.elements.get("coil")!)).toBeCloseTo(0.35, 3);
  });
});

describe("relays of TM 5-3805-262-20, page css_496", () => {
  const cab = onSupplies({ coilOhms: 60, pullInVolts: 17 }, { v18: [18], v24: [24] });
  const starter = onSupplies({ coilOhms: 30, pullInVolts: 18 }, { v24: [24] });

  test("cab relay: coil 50 to 70 ohm, closes at 18 to 24 V", () => {
    expect(coilOhms(cab)).toBeGreaterThan(50);
    expect(coilOhms(cab)).toBeLessThan(70);
    expect(["v18", "v24"].map((volts) => stateAfter(cab, volts))).toEqual(["pulled-in", "pulled-in"]);
  });

  test("starter relay: coil 20 to 40 ohm, closes at 24 V", () => {
    expect(coilOhms(starter)).toBeGreaterThan(20);
    expect(coilOhms(starter)).toBeLessThan(40);
    expect(stateAfter(starter, "v24")).toBe("pulled-in");
  });
});
