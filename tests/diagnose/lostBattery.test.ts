import { expect, test } from "vitest";
import { lampReads, predict } from "../../core/diagnose/predict.ts";
import { testPointsOf } from "../../core/diagnose/testPoint.ts";
import { testLamp } from "../../core/trade/instruments.ts";
import { G1, vehicle } from "../live/vehicle.ts";

/** Two batteries in series, a resistor from plus to the body. */
const SERIES = vehicle(
  [
    { ...G1, settings: { reference: true } },
    { id: "G2", kind: "battery" },
    { id: "R1", kind: "resistor", settings: { ohms: 100 } },
    { id: "GP1", kind: "ground" },
    { id: "GP2", kind: "ground" },
  ],
  ["W1 G2.+ R1.1", "W2 G1.+ G2.-", "W3 R1.2 GP1.stud", "W4 G1.- GP2.stud"],
  { nominalVolts: 24 },
);

test("a lamp from battery plus is dark at every point where the plus hangs on nothing, and no figure is lost", () => {
  const points = testPointsOf(SERIES);
  const cut = [
    { target: "W2", mode: "open" },
    { target: "W1", mode: "open" },
  ];
  const [shown] = predict(SERIES, cut, {}, [{}], points).shown;
  expect(shown!.plusOhms).toBe(Number.POSITIVE_INFINITY);
  points.forEach(({ point }, number) => {
    const { across, pointVolts } = lampReads(shown!, number, "battery +", testLamp("heavy", 24));
    expect([point, across, Number.isFinite(pointVolts)]).toEqual([point, 0, true]);
  });
});
