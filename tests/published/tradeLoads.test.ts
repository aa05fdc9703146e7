import { describe, expect, test } from "vitest";
import { meterAmps, meterVolts, mostOhmsShowing, TESTERS_LIGHT_THROUGH } from "../../core/trade/instruments.ts";
import { hotOhms, INRUSH, inrushAmps, lampAmps, lampCategory, ratedLamp } from "../../core/trade/lamps.ts";
import {
  crankingDropLimit,
  dropLimit,
  isHighVoltage,
  isInPinchZone,
  isWithin,
  passesBonding,
  SOLENOID_CONTROL_LIMITS,
  testerOnModule,
} from "../../core/trade/limits.ts";
import { MOTORS, motorFrom, peakWatts, speedAt, stallAmpsAt } from "../../core/trade/motors.ts";
import { near } from "./near.ts";

describe("voltage drop", () => {
  // US Army TM 10-3930-671-24: 0.20 V per 100 A
  test("35: at 200 A the positive cable may lose 0.40 V", () => {
    const { volts } = crankingDropLimit(200);
    near(volts, 0.4, 1e-9);
    expect(isWithin(0.38, volts)).toBe(true);
    expect(isWithin(0.45, volts)).toBe(false);
  });

  // Bentley Publishers, service manual 1999-2005, voltage drop
  test("36: a switch contact passes at 0.25 V and fails at 0.35 V", () => {
    expect(isWithin(0.25, dropLimit("contact").volts)).toBe(true);
    expect(isWithin(0.35, dropLimit("contact").volts)).toBe(false);
  });

  // FenderBender, Ground Circuits part 12, 25 November 2019
  test("37: 0.07 V fails a module ground and passes a lamp ground", () => {
    expect(isWithin(0.07, dropLimit("module-ground").volts)).toBe(false);
    expect(isWithin(0.07, dropLimit("ground").volts)).toBe(true);
  });

  // US Army TM 5-2420-230-24-2, page 13-33
  test("38: 0.6 V feed and 0.5 V return fail a 12 V solenoid control", () => {
    expect(isWithin(0.6 + 0.5, SOLENOID_CONTROL_LIMITS[12].volts)).toBe(false);
    expect(isWithin(0.6 + 0.4, SOLENOID_CONTROL_LIMITS[12].volts)).toBe(true);
  });
});

describe("instruments", () => {
  // Lessons In Electric Circuits, voltmeter impact; the circuit stands as its open volts and ohms of source
  test("39: 24 V across two 250 Mohm reads 0.8889 V on one of them", () => {
    near(meterVolts(24 / 2, 250e6 / 2), 0.8889, 0.0005);
  });

  // ASE study guide page on the 10 megohm tester
  test("40: a meter draws 1.20 microampere at 12 V", () => near(meterAmps(12) * 1e6, 1.2, 0.01));

  // Derived from the loading rule Rs / (Rs + Ri)
  test("41: 12.6 V through 1 Mohm reads 11.4545 V", () => near(meterVolts(12.6, 1e6), 11.4545, 0.0005));

  // Derived from the loading rule Rs / (Rs + Ri)
  test("42: 12.6 V through 1 kohm reads 12.5987 V", () => near(meterVolts(12.6, 1e3), 12.5987, 0.0005));

  // A vehicle maker's wire and connector repair section, 2021; the last part derived
  test("43: a bulb tester lights through 25 ohm and not through 200 ohm, an LED-class tester through 200 ohm", () => {
    const most = mostOhmsShowing("dim", "small", 12.6, 12);
    expect(most).toBeGreaterThan(25);
    expect(most).toBeLessThan(200);
    expect(TESTERS_LIGHT_THROUGH.highImpedance.mostOhms).toBeGreaterThanOrEqual(200);
  });

  // Mercury service manuals no. 22 (2002) page 5A-5 and no. 24 (1999) page 5D-4
  test("44: on a module's circuit 0.25 A is allowed, 0.35 A refused, 0.08 A may glow falsely", () => {
    expect(testerOnModule(0.25)).toBe("allowed");
    expect(testerOnModule(0.35)).toBe("refused");
    expect(testerOnModule(0.08)).toBe("false-glow");
  });
});

describe("loads", () => {
  const brake = ratedLamp(lampCategory("P21/5W", 12)!)!;

  // EU Directive 97/24/EC, annex sheet P21/5W
  test("45: the main filament of P21/5W takes 25.0 W and 1.852 A at 13.5 V and has 7.29 ohm hot", () => {
    near(brake.volts * brake.amps, 25, 25 * 0.06);
    near(lampAmps(13.5, brake), 1.852, 0.0005);
    near(hotOhms(brake), 7.29, 0.005);
  });

  // Derived by the 0.55 law of Wikipedia, "Lamp rerating"
  test("46: at 12.0 V it takes 1.736 A and 20.83 W", () => {
    near(lampAmps(12, brake), 1.736, 0.002);
    near(12 * lampAmps(12, brake), 20.83, 0.03);
  });

  // Derived by the 0.55 law of Wikipedia, "Lamp rerating"
  test("47: at 14.4 V it takes 1.919 A", () => near(lampAmps(14.4, brake), 1.919, 0.002));

  // Derived by the same law: lamp and series resistor agree on the current (the solve itself is checked on a circuit)
  test("48: at 10.950 V and 11.742 V it takes what 1.0 and 0.5 ohm from 12.6 V let through", () => {
    near(lampAmps(10.95, brake), 1.65, 0.002);
    near(lampAmps(10.95, brake), (12.6 - 10.95) / 1.0, 0.002);
    near(lampAmps(11.742, brake), 1.715, 0.002);
    near(lampAmps(11.742, brake), (12.6 - 11.742) / 0.5, 0.002);
  });

  // Lamp-driver application note; lamptech.co.uk, incandescent starting
  test("49: its first rush at 13.5 V is 10 to 14 times 1.852 A", () => {
    const times = inrushAmps(13.5, brake) / 1.852;
    expect(times).toBeGreaterThan(INRUSH.least - 0.01);
    expect(times).toBeLessThan(INRUSH.most);
    expect([INRUSH.least, INRUSH.most]).toEqual([10, 14]);
  });

  // EU Directive 97/24/EC, annex sheet P21/5W
  test("50: the 24 V lamp takes 28 W and 1.00 A at 28.0 V", () => {
    const lamp = ratedLamp(lampCategory("P21/5W", 24)!)!;
    near(lamp.volts * lampAmps(28, lamp), 28, 28 * 0.06);
    near(lampAmps(28, lamp), 1, 0.0005);
  });

  const published = MOTORS.find((each) => each.name === "window lift, left")!;
  const lift = motorFrom({
    ratedVolts: 12,
    freeAmps: published.freeAmps!,
    stallAmps: published.stallAmps,
    rpm: published.rpm,
  });

  // Derived from a school-robotics motor table and mniehus.github.io, DC motor theory
  test("51: the window motor has 0.571 ohm and 1.247 V s/rad", () => {
    near(lift.ohms, 0.571, 0.001);
    near(lift.ke, 1.247, 0.001);
  });

  // Derived from the same
  test("52: at 10.0 V it turns 68.7 rpm free and draws 17.5 A stalled", () => {
    near(speedAt(lift, 10, lift.freeAmps), 68.7, 0.1);
    near(stallAmpsAt(lift, 10), 17.5, 0.01);
  });

  // Derived from the same
  test("53: at 12 V and 8 A it turns 56.9 rpm, with 0.3 ohm before it 38.5 rpm and 13.77 A stalled", () => {
    near(speedAt(lift, 12, 8), 56.9, 0.1);
    near(speedAt(lift, 12, 8, 0.3), 38.5, 0.1);
    near(stallAmpsAt(lift, 12, 0.3), 13.77, 0.01);
  });

  // Derived from the same; the FIRST Robotics wiki prints 22 W for 9.2 N m and 92 rpm
  test("54: its peak power is 23.3 W, and 22 W for the school data's motor", () => {
    near(peakWatts(published.stallNewtonMetres, published.rpm), 23.3, 0.1);
    const school = MOTORS.find((each) => each.name === "window lift, school data")!;
    near(peakWatts(school.stallNewtonMetres, school.rpm), 22, 0.5);
  });
});

describe("safety", () => {
  // UN R100 and ISO 6469-3 class B, quoted at motion-drives.com
  test("55: 60.0 V DC is not high voltage, 60.1 V DC is", () => {
    expect(isHighVoltage(60)).toBe(false);
    expect(isHighVoltage(60.1)).toBe(true);
  });

  // AIS-038 revision 2 draft D1, September 2019, 5.1.2.2
  test("56: bonding of 0.08 ohm at 0.2 A passes, 0.12 ohm fails", () => {
    expect(passesBonding(0.08, 0.2)).toBe(true);
    expect(passesBonding(0.12, 0.2)).toBe(false);
  });

  // NHTSA interpretation 10790 on FMVSS 118
  test("57: openings of 4 mm and 200 mm lie in the reversal zone, 201 mm does not", () => {
    expect(isInPinchZone(4)).toBe(true);
    expect(isInPinchZone(200)).toBe(true);
    expect(isInPinchZone(201)).toBe(false);
  });
});
