import { describe, expect, test } from "vitest";
import { MOTOR_CURRENTS, MOTORS, motorFrom, speedAt, stallAmpsAt } from "../../core/trade/motors.ts";

describe("motors", () => {
  test("every published motor gives back its own rating", () => {
    for (const { freeAmps, stallAmps, rpm } of MOTORS) {
      if (freeAmps === null) continue;
      const motor = motorFrom({ ratedVolts: 12, freeAmps, stallAmps, rpm });
      expect(speedAt(motor, 12, freeAmps)).toBeCloseTo(rpm, 6);
      expect(stallAmpsAt(motor, 12)).toBeCloseTo(stallAmps, 9);
      expect(speedAt(motor, 12, stallAmps)).toBeCloseTo(0, 9);
    }
  });

  test("a motor that cannot turn is not run backwards by the sum", () => {
    const motor = motorFrom({ ratedVolts: 12, freeAmps: 2, stallAmps: 20, rpm: 80 });
    expect(speedAt(motor, 6, 15)).toBe(0);
  });

  test("no motor draws less stalled than free", () => {
    expect(() => motorFrom({ ratedVolts: 12, freeAmps: 3, stallAmps: 3, rpm: 80 })).toThrow();
    for (const { leastAmps, mostAmps } of MOTOR_CURRENTS) expect(mostAmps).toBeGreaterThanOrEqual(leastAmps);
  });

  // wikilec.com, Window lift motor: 15 A at 12 V and 20 A at 14 V against the end stop
  test("the measured end stops tell 0.70 to 0.80 ohm of motor and wiring", () => {
    const stops = MOTOR_CURRENTS.filter((each) => each.name === "window at its end stop");
    expect(stops.map((each) => each.volts! / each.mostAmps)).toEqual([0.8, 0.7]);
  });
});
