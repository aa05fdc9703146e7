import { describe, expect, test } from "vitest";
import { diode } from "../../core/parts/diode.ts";
import { heater } from "../../core/parts/heater.ts";
import { horn } from "../../core/parts/horn.ts";
import type { Kind } from "../../core/parts/kind.ts";
import { lamp } from "../../core/parts/lamp.ts";
import { led } from "../../core/parts/led.ts";
import { resistorPack } from "../../core/parts/resistorPack.ts";
import { solenoid } from "../../core/parts/solenoid.ts";
import { standInLoad } from "../../core/parts/standInLoad.ts";
import { twoFilamentLamp } from "../../core/parts/twoFilamentLamp.ts";
import { viewOf } from "../../core/parts/view.ts";
import { battery, filament, ohms, onBench, type Wired } from "./bench.ts";

function across(volts: number, series = 1e-6, plus = "1", minus = "2"): readonly Wired[] {
  return [
    ["+", "-", { law: "source", volts, ohms: 1e-6 }],
    ["+", plus, ohms(series)],
    [minus, "-", ohms(1e-6)],
  ];
}

// EU Directive 97/24/EC, sheet P21/5W: 25 W at 13.5 V; Wikipedia, "Lamp rerating": amps as V^0.55
describe("the main filament of P21/5W, rated by its sheet", () => {
  const part = { settings: { volts: 13.5, watts: 25 } };
  const at = (volts: number, series?: number) => onBench(lamp, { part, wired: across(volts, series) });

  test("takes 1.852 A and 25 W at 13.5 V", () => {
    expect(at(13.5).amps("filament")).toBeCloseTo(1.852, 2);
    expect(at(13.5).doing?.watts).toBeCloseTo(25, 1);
  });

  test("takes 1.736 A at 12.0 V and 1.919 A at 14.4 V", () => {
    expect(at(12).amps("filament")).toBeCloseTo(1.736, 2);
    expect(at(14.4).amps("filament")).toBeCloseTo(1.919, 2);
  });

  test("on 12.6 V has 10.950 V behind 1.0 ohm and 11.742 V behind 0.5 ohm", () => {
    expect(at(12.6, 1).volts("1")).toBeCloseTo(10.95, 2);
    expect(at(12.6, 0.5).volts("1")).toBeCloseTo(11.742, 2);
  });

  test("gives less light the more ohms lie before it", () => {
    const light = [1e-6, 0.5, 1, 5, 50].map((series) => at(12.6, series).doing!.work);
    expect(light).toEqual([...light].sort((a, b) => b - a));
    expect(light[4]).toBeLessThan(0.01);
  });
});

describe("a two-filament lamp", () => {
  const feeds = (...filaments: readonly string[]): readonly Wired[] => [
    ["+", "-", battery(12)],
    ["1", "-", ohms(1e-6)],
    ...filaments.map((terminal): Wired => ["+", terminal, ohms(1e-6)]),
  ];
  const light = (wired: readonly Wired[], fault?: readonly [string]) =>
    onBench(twoFilamentLamp, { wired, ...(fault ? { fault } : {}) }).doing!;

  // EU Directive 97/24/EC, sheet P21/5W: 440 and 35 lumens
  test("gives the lumens of the filaments that are lit", () => {
    expect(light(feeds("2")).work).toBeCloseTo(440, -1);
    expect(light(feeds("3")).work).toBeCloseTo(35, 0);
    expect(light(feeds("2", "3")).work).toBeCloseTo(475, -1);
  });

  test("with its main filament burnt out gives under a tenth of brake and tail light together", () => {
    const level = light(feeds("2", "3"), ["burnt-out-main"]).work / light(feeds("2", "3")).work;
    expect(level).toBeLessThan(0.1);
    expect(light(feeds("2"), ["burnt-out-main"]).doing).toBe("off");
  });

  test("with its ground gone passes the main feed on to the second filament", () => {
    const stood = onBench(twoFilamentLamp, {
      wired: [
        ["+", "-", battery(12)],
        ["+", "2", ohms(1e-6)],
        ["3", "-", filament(5)],
      ],
    });
    expect(stood.volts("1")).toBeGreaterThan(11);
    expect(stood.amps("second")).toBeLessThan(-0.2);
  });

  test("with its filaments touching feeds the second circuit from the main one", () => {
    const stood = onBench(twoFilamentLamp, {
      wired: [...feeds("2"), ["3", "-", ohms(100)]],
      fault: ["filaments-touching"],
    });
    expect(stood.volts("3")).toBeGreaterThan(11.5);
  });
});

describe("diodes", () => {
  const forward = (type: string, amps: number) =>
    onBench(diode, {
      part: { settings: { type } },
      wired: [
        ["+", "-", battery(100)],
        ["+", "A", ohms(100 / amps)],
        ["K", "-", ohms(1e-9)],
      ],
    }).volts("A");

  // electricity-and-semiconductors-course, module 02: silicon 0.6 to 0.7 V, Schottky 0.2 to 0.4 V
  test("silicon drops 0.6 to 0.7 V and Schottky 0.2 to 0.4 V at about 1 A", () => {
    expect(forward("silicon", 1)).toBeGreaterThan(0.6);
    expect(forward("silicon", 1)).toBeLessThanOrEqual(0.7);
    expect(forward("schottky", 1)).toBeGreaterThan(0.2);
    expect(forward("schottky", 1)).toBeLessThan(0.4);
  });

  test("drop more with more amps", () => {
    expect(forward("silicon", 10)).toBeGreaterThan(forward("silicon", 1));
  });

  test("block the other way until they are shorted", () => {
    const back = { wired: across(12, 10, "K", "A") };
    expect(Math.abs(onBench(diode, back).amps("junction"))).toBeLessThan(1e-3);
    expect(Math.abs(onBench(diode, { ...back, fault: ["shorted"] }).amps("junction"))).toBeGreaterThan(1.1);
  });
});

describe("an LED tell-tale", () => {
  // common practice, no source: 10 to 20 mA
  test("takes 10 to 20 mA at its rated volts, on 12 V and on 24 V", () => {
    for (const volts of [12, 24]) {
      const stood = onBench(led, { volts, wired: across(volts, 1e-6, "A", "K") });
      expect(stood.amps("junction")).toBeGreaterThan(0.01);
      expect(stood.amps("junction")).toBeLessThan(0.02);
      expect(stood.doing?.doing).toBe("on");
    }
  });

  test("is dark the wrong way round", () => {
    expect(onBench(led, { wired: across(12, 1e-6, "K", "A") }).doing?.doing).toBe("off");
  });
});

// vehicle maker's sheet 2888275: 2.50, 0.75, 0.25 ohm in series for speeds 1 to 3
test("a resistor pack has its published ohms from each tap to the motor's line", () => {
  const seriesOhms = (tap: string) => {
    const stood = onBench(resistorPack, { wired: across(10, 1e-6, tap, "4") });
    return 10 / Math.abs(stood.amps("link"));
  };
  expect(["1", "2", "3"].map((tap) => Number(seriesOhms(tap).toFixed(1)))).toEqual([2.5, 0.8, 0.3]);
  expect(seriesOhms("2")).toBeCloseTo(0.75, 1);
});

test("a resistor pack with its link melted passes nothing from any tap", () => {
  for (const tap of ["1", "2", "3"]) {
    const stood = onBench(resistorPack, { wired: across(10, 1e-6, tap, "4"), fault: ["link-melted"] });
    expect(Math.abs(stood.amps("step-3"))).toBe(0);
  }
});

describe("a solenoid", () => {
  const at = (volts: number, more: object = {}) => onBench(solenoid, { wired: across(volts), ...more });

  // TM 5-3820-256-24-5, section 6-II-A: pulls in at 9 V of 12
  test("pulls in at 9 V of 12 and not at 8.9 V", () => {
    expect([8.9, 9.01].map((volts) => at(volts).doing?.doing)).toEqual(["released", "pulled-in"]);
    expect(at(8.9).doing?.work).toBe(0);
  });

  test("keeps its place between its two limits", () => {
    const view = viewOf(solenoid, { id: "Y1", kind: "solenoid" }, 12);
    const next = (state: string, volts: number) => {
      const sees = { volts: () => volts, amps: () => volts / view.number("ohms"), terminalVolts: () => volts };
      return solenoid.next(view, state, sees, {} as never);
    };
    expect([next("pulled-in", 5), next("released", 5), next("pulled-in", 2)]).toEqual([
      "pulled-in",
      "released",
      "released",
    ]);
  });

  test("does no work with its plunger stuck, at full volts", () => {
    const stood = at(12, { fault: ["stuck-released"] });
    expect(stood.doing).toMatchObject({ doing: "released", work: 0 });
    expect(stood.doing?.amps).toBeCloseTo(1, 3);
  });
});

describe("every plain load", () => {
  const loads: readonly (readonly [Kind, object])[] = [
    [lamp, {}],
    [heater, {}],
    [horn, {}],
    [standInLoad, {}],
    [standInLoad, { settings: { type: "resistor" } }],
  ];

  test("works less the more ohms lie before it, and not at all without a feed", () => {
    for (const [kind, part] of loads) {
      const work = [1e-6, 1, 10, 1000].map((series) => onBench(kind, { part, wired: across(12, series) }).doing!.work);
      expect([kind.name, work]).toEqual([kind.name, [...work].sort((a, b) => b - a)]);
      expect(new Set(work).size).toBe(4);
      const idle = onBench(kind, { part, wired: [["1", "-", ohms(1)]] }).doing;
      expect([kind.name, idle?.doing, idle?.work]).toEqual([kind.name, "off", 0]);
    }
  });

  test("does nothing where it is open or shorted, though volts lie across it", () => {
    const faults: readonly (readonly [Kind, readonly [string, ...string[]]])[] = [
      [heater, ["open", "shorted"]],
      [horn, ["open", "shorted"]],
      [solenoid, ["open", "shorted"]],
      [standInLoad, ["open"]],
      [twoFilamentLamp, ["burnt-out-main", "shorted-main"]],
    ];
    for (const [kind, modes] of faults) {
      for (const mode of modes) {
        const wired = kind === twoFilamentLamp ? across(12, 1e-6, "2", "1") : across(12);
        const { doing } = onBench(kind, { wired, fault: [mode] });
        expect([kind.name, mode, (doing?.work ?? 1) < 1e-9]).toEqual([kind.name, mode, true]);
        expect(["off", "released"]).toContain(doing?.doing);
      }
    }
    expect(onBench(led, { wired: across(12, 1e-6, "A", "K"), fault: ["shorted"] }).doing).toMatchObject({
      doing: "off",
      work: 0,
    });
  });

  test("does less with ohms added inside, at the same volts", () => {
    for (const [kind, value] of [
      [heater, 1],
      [horn, 5],
      [solenoid, 3],
    ] as const) {
      const [whole, poor] = [
        onBench(kind, { wired: across(12) }).doing!.work,
        onBench(kind, { wired: across(12), fault: ["ohms", value] }).doing!.work,
      ];
      expect([kind.name, poor < 0.9 * whole, poor > 0]).toEqual([kind.name, true, true]);
    }
  });

  test("draws its rated amps at its rated volts", () => {
    const amps = (kind: Kind, key: string) => onBench(kind, { wired: across(12) }).amps(key);
    expect(amps(lamp, "filament")).toBeCloseTo(1.75, 2);
    expect(amps(heater, "element")).toBeCloseTo(10, 3);
    expect(amps(horn, "coil")).toBeCloseTo(5, 3);
    expect(amps(standInLoad, "load")).toBeCloseTo(4, 1);
  });
});
