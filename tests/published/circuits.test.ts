import { describe, expect, test } from "vitest";
import { formatCircuit, readCircuit } from "../../schemas/circuit.ts";
import { tried } from "./build.ts";
import {
  BACKUP_LAMPS,
  CHARGE_LAMP,
  HORN,
  MAIN_LIGHT_SWITCH,
  REVERSING_ALARM,
  SHARED_FILAMENT,
  STARTING,
  TRAILER_SIGNALS,
  VEHICLES,
} from "./vehicles.ts";

test.each(VEHICLES)("$title is a circuit file that reads back", (circuit) => {
  expect(readCircuit(formatCircuit(circuit))).toEqual({ ok: true, value: circuit });
});

describe("backup lamps with blackout lock-out: TM 9-2320-273-20, paragraph 2-47", () => {
  test.each([
    ["off", "normal", "not reverse", null, false],
    ["off", "normal", "reverse", null, false],
    ["off", "blackout", "reverse", null, false],
    ["run", "normal", "not reverse", false, false],
    ["run", "normal", "reverse", false, true],
    ["run", "blackout", "reverse", true, false],
  ])("run %s, lamps %s, gear %s: K7 %s, backup lamps %s", (S1, S2, S3, relay, lamps) => {
    const { isOn } = tried(BACKUP_LAMPS, { set: { S1, S2, S3 } });
    if (relay !== null) expect(isOn("K7")).toBe(relay);
    expect([isOn("E1"), isOn("E2")]).toEqual([lamps, lamps]);
  });

  // What follows from the table.
  test.each(["K7:coil-open", "F2:stays-out"])("with %s they light in blackout too", (fault) => {
    expect(tried(BACKUP_LAMPS, { set: { S1: "run", S2: "blackout", S3: "reverse" } }, [fault]).isOn("E1")).toBe(true);
  });

  test("with K7's contact open they never light", () => {
    const { isOn } = tried(BACKUP_LAMPS, { set: { S1: "run", S3: "reverse" } }, ["K7:stuck-open-30-87a"]);
    expect([isOn("E1"), isOn("E2")]).toEqual([false, false]);
  });
});

describe("turn signals with 24 V trailer relays: TM 9-2320-273-20, before paragraph 2-47", () => {
  const lit = (set: Record<string, string>, faults: readonly string[] = []) => {
    const { isOn, doing } = tried(TRAILER_SIGNALS, { set }, faults);
    return {
      flashes: doing("K1") === "flashing",
      truck: ["E1", "E2", "E3", "E4"].map(isOn),
      relays: ["K2", "K3"].map(isOn),
      trailer: ["E5", "E6"].map(isOn),
    };
  };

  test("left pulls K2 in and gives 24 V at the left of the receptacle only", () => {
    expect(lit({ S2: "left" })).toEqual({
      flashes: true,
      truck: [true, true, false, false],
      relays: [true, false],
      trailer: [true, false],
    });
    const { volts } = tried(TRAILER_SIGNALS, { set: { S2: "left" } });
    expect(volts("K2.87")).toBeGreaterThan(23.5);
    expect(volts("K3.87")).toBeLessThan(0.01);
  });

  test("right is its mirror", () => {
    expect(lit({ S2: "right" })).toEqual({
      flashes: true,
      truck: [false, false, true, true],
      relays: [false, true],
      trailer: [false, true],
    });
  });

  test("hazard pulls both relays in and flashes everything", () => {
    expect(lit({ S3: "hazard" })).toEqual({
      flashes: true,
      truck: [true, true, true, true],
      relays: [true, true],
      trailer: [true, true],
    });
  });

  test.each([{ S2: "left" }, { S3: "hazard" }])("blackout leaves no turn signal and no hazard: %o", (thrown) => {
    expect(lit({ S1: "blackout", ...thrown })).toMatchObject({
      flashes: false,
      truck: [false, false, false, false],
      trailer: [false, false],
    });
  });

  test("with CB-7 open the truck flashes and the trailer is dead", () => {
    expect(lit({ S3: "hazard" }, ["F7:stays-out"])).toMatchObject({
      flashes: true,
      truck: [true, true, true, true],
      trailer: [false, false],
    });
  });

  test("with CB-2 open both are dead", () => {
    expect(lit({ S3: "hazard" }, ["F2:stays-out"])).toMatchObject({
      flashes: false,
      truck: [false, false, false, false],
      trailer: [false, false],
    });
  });

  test("the mid tap is a 12 V feed and the top a 24 V feed; neither is a clash", () => {
    const { state, volts, live } = tried(TRAILER_SIGNALS, { set: { S2: "left" } });
    expect([state("G1.+"), state("G2.-"), state("F2.2"), state("G2.+"), state("K2.87")]).toEqual(
      Array(5).fill("powered"),
    );
    expect(volts("F2.2")).toBeLessThan(13);
    expect(volts("F7.2")).toBeGreaterThan(24);
    expect([...live.points.values()].some((point) => point.state === "clash")).toBe(false);
  });
});

describe("24 V start on a 12 V truck: TM 9-2320-273-20, paragraph 5-8", () => {
  test.each([
    ["off", "released", "neutral", false, false, false],
    ["off", "pressed", "neutral", false, false, false],
    ["run", "released", "neutral", true, false, false],
    ["run", "pressed", "in gear", true, false, false],
    ["run", "pressed", "neutral", true, true, true],
  ])("run %s, start %s, selector %s: fuel valve %s, starter relay %s, motor %s", (S1, S2, S3, valve, relay, motor) => {
    const { isOn, volts } = tried(STARTING, { set: { S1, S3, S2 } });
    expect([isOn("Y1"), isOn("K1"), isOn("M1")]).toEqual([valve, relay, motor]);
    if (motor) expect(volts("M1.1")).toBeGreaterThan(18);
    else expect(volts("M1.1")).toBeLessThan(0.01);
  });
});

describe("horn with relay: TM 9-8000, paragraph 17-11; order of tests: NAVEDTRA 14050, chapter 4", () => {
  test("ignition on, button open: SW stands at the supply through the coil, H at zero", () => {
    const { volts, state, isOn } = tried(HORN, { set: { S1: "on" } });
    expect(volts("K1.85")).toBeGreaterThan(12.5);
    expect(state("K1.85")).toBe("powered-through-load");
    expect(volts("K1.87")).toBeLessThan(0.01);
    expect(isOn("H1")).toBe(false);
  });

  test("pressed: SW at zero, H at the supply", () => {
    const { volts, isOn } = tried(HORN, { set: { S1: "on", S2: "pressed" } });
    expect(volts("K1.85")).toBeLessThan(0.05);
    expect(volts("K1.87")).toBeGreaterThan(12);
    expect(isOn("H1")).toBe(true);
  });

  test("a horn that is open leaves H at the supply: the relay is good", () => {
    const { volts, isOn } = tried(HORN, { set: { S1: "on", S2: "pressed" } }, ["H1:open"]);
    expect(volts("K1.87")).toBeGreaterThan(12);
    expect(isOn("H1")).toBe(false);
  });
});

describe("turn signals sharing the stop filament: TM 9-8000, paragraph 16-13", () => {
  const LAMPS = ["E1", "E2", "E3", "E4"];
  /** A lamp that goes dark when the flasher stays open is one that it flashes. */
  const seen = (S2: string, S1: string) => {
    const whole = tried(SHARED_FILAMENT, { set: { S1, S2 } });
    const without = tried(SHARED_FILAMENT, { set: { S1, S2 } }, ["K1:stuck-open"]);
    return LAMPS.map((lamp) => (!whole.isOn(lamp) ? 0 : without.isOn(lamp) ? 1 : "flash"));
  };

  test.each([
    ["off", "released", [0, 0, 0, 0]],
    ["off", "pressed", [1, 1, 0, 0]],
    ["left", "released", ["flash", 0, "flash", 0]],
    ["left", "pressed", ["flash", 1, "flash", 0]],
    ["right", "released", [0, "flash", 0, "flash"]],
    ["right", "pressed", [1, "flash", 0, "flash"]],
  ])("turn %s, brake %s: left and right rear, left and right front %o", (turn, brake, wanted) => {
    expect(seen(turn, brake)).toEqual(wanted);
  });

  test("lamps lit and not flashing: the flasher unit", () => {
    const { doing, isOn } = tried(SHARED_FILAMENT, { set: { S2: "left" } }, ["K1:stuck-closed"]);
    expect([doing("K1"), isOn("E1"), isOn("E3")]).toEqual(["on", true, true]);
  });
});

describe("military main light switch: TM 9-8000, paragraphs 16-7 and 16-8, filled in from both texts", () => {
  test.each([
    ["blackout drive", [false, false, true, true, true, false]],
    ["blackout marker", [false, false, true, false, true, false]],
    ["off", [false, false, false, false, false, false]],
    ["stop light", [false, true, false, false, true, false]],
    ["service drive", [true, true, false, false, true, true]],
  ])(
    "main lever at %s: headlamps, stop on the brake, markers, blackout drive, panel and parking allowed %o",
    (main, wanted) => {
      const at = (auxiliary: string) =>
        tried(MAIN_LIGHT_SWITCH, { set: { "S1.main": main, "S1.auxiliary": auxiliary, S2: "pressed" } });
      const [plain, panel, parking] = [at("off"), at("panel"), at("parking")];
      expect([...["E1", "E2", "E3", "E4"].map(plain.isOn), panel.isOn("E5"), parking.isOn("E6")]).toEqual(wanted);
    },
  );

  test("no service stop lamp without the brake", () => {
    expect(tried(MAIN_LIGHT_SWITCH, { set: { "S1.main": "service drive" } }).isOn("E2")).toBe(false);
  });
});

describe("charge lamp: TM 10-3930-671-24, page css_518", () => {
  const isLit = (S1: string, running: boolean, faults: readonly string[] = [], apart: readonly string[] = []) =>
    tried(CHARGE_LAMP, { set: { S1 }, running, apart }, faults).isOn("E1");
  // W9 is the lead to terminal 1, W11 the one to terminal 2, both up to the plug at the alternator.
  const LEADS_SHORTED = "W9:crossed=W11";
  const BRIDGE_SHORTED = "G2:shorted-positive-1";

  test("key off: off; on and stopped: on; on and running: off", () => {
    expect([isLit("off", false), isLit("on", false), isLit("on", true)]).toEqual([false, true, false]);
  });

  test.each([LEADS_SHORTED, BRIDGE_SHORTED])("key off and lit: %s does that", (fault) =>
    expect(isLit("off", false, [fault])).toBe(true),
  );

  test("unplugged and still lit: the two leads are shorted; out: the rectifier bridge", () => {
    expect([isLit("off", false, [LEADS_SHORTED], ["X1"]), isLit("off", false, [BRIDGE_SHORTED], ["X1"])]).toEqual([
      true,
      false,
    ]);
  });

  test.each(["F1:blown", "E1:burnt-out", "W6:open", "W9:open", "W10:open"])(
    "on, stopped and dark: %s does that",
    (fault) => expect(isLit("on", false, [fault])).toBe(false),
  );

  test("on, running and lit: the fuse between lamp and key", () => expect(isLit("on", true, ["F1:blown"])).toBe(true));
});

describe("reversing alarm: TM 5-2420-222-20-1, item 28, steps 3 to 5", () => {
  const JUMPER = { red: "S1.3", black: "S1.4", law: { law: "resistor", ohms: 0.01 }, isMeter: false } as const;
  const step3 = (fault: string) => tried(REVERSING_ALARM, { set: { S1: "reverse" } }, [fault], [JUMPER]).isOn("H1");
  const step4 = (fault: string) => tried(REVERSING_ALARM, { set: { S1: "reverse" } }, [fault]).volts("S1.3");
  const step5 = (fault: string) => {
    const { volts } = tried(REVERSING_ALARM, { set: { S1: "reverse" } }, [fault], [JUMPER]);
    return volts("H1.2") - volts("H1.1");
  };
  const isWanted = (volts: number): boolean => volts >= 11 && volts <= 13;

  test("step 3: with 3 and 4 bridged it sounds where the switch is bad, and only there", () => {
    expect(["S1:stuck-open-3-4", "W2:open", "W3:open", "W4:open", "H1:open"].map(step3)).toEqual([
      true,
      false,
      false,
      false,
      false,
    ]);
  });

  test("step 4: less than 11 V at terminal 3 is the brown feed wire", () => {
    expect(["W2:open", "W2:ohms=20", "W3:open", "H1:open"].map((fault) => isWanted(step4(fault)))).toEqual([
      false,
      false,
      true,
      true,
    ]);
  });

  test("step 5: 11 to 13 V across the alarm condemns the alarm; less, the black or the ground wire", () => {
    expect(["H1:open", "W3:open", "W4:open"].map((fault) => isWanted(step5(fault)))).toEqual([true, false, false]);
  });
});
