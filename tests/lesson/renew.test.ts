import { describe, expect, test } from "vitest";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { type Attempt, evidentIn, moved } from "../../core/lesson/attempt.ts";
import { gradeOf } from "../../core/lesson/grade.ts";
import { replayed } from "../../core/lesson/replay.ts";
import { codeOf, got } from "../edit/given.ts";
import { G1, makeSwitch, vehicle } from "../live/vehicle.ts";
import { exerciseWith, LAMP, worked } from "./given.ts";

const last = ({ route }: Attempt) => route.at(-1)!;

/** Two lamps on one fuse, each with a switch: the second one's feed may chafe on the body. */
const PAIR: Circuit = vehicle(
  [
    G1,
    { id: "F1", kind: "fuse", settings: { amps: 10 } },
    makeSwitch("S1"),
    makeSwitch("S2"),
    { id: "E1", kind: "lamp", settings: { watts: 21 } },
    { id: "E2", kind: "lamp", settings: { watts: 21 } },
    { id: "SP1", kind: "splice" },
    { id: "GP1", kind: "ground" },
    { id: "GP2", kind: "ground" },
    { id: "GP3", kind: "ground" },
  ],
  [
    "W1 G1.+ F1.1",
    "W2 F1.2 SP1.1",
    "W3 SP1.2 S1.1",
    "W4 SP1.3 S2.1",
    "W5 S1.2 E1.1",
    "W6 S2.2 E2.1",
    "W7 E1.2 GP1.stud",
    "W8 E2.2 GP2.stud",
    "W9 GP3.stud G1.-",
  ],
  {
    checks: [
      { id: "second", label: "The second lamp lights", condition: { set: { S2: "on" } }, load: "E2", expect: "on" },
    ],
  },
);

describe("a part that is renewed", () => {
  test("mends the vehicle where it was the fault itself", () => {
    const attempt = worked(exerciseWith(LAMP, "F1:blown"), "look F1", "renew F1", "throw S1=on");
    expect(last(attempt).answer).toMatchObject({ loads: [{ part: "E1", does: "on" }], checks: { lights: "works" } });
    expect(attempt.route.map(({ answer }) => answer.shows?.word ?? null)).toEqual(["blown", null, null]);
    const bulb = worked(exerciseWith(LAMP, "E1:burnt-out"), "throw S1=on", "open panel", "renew E1");
    expect(last(bulb).answer.checks).toEqual({ lights: "works" });
  });

  test("mends nothing that lies elsewhere, nor what no new part mends", () => {
    for (const fault of ["W4:open", "X1-1:backed-out"])
      expect(last(worked(exerciseWith(LAMP, fault), "renew F1", "throw S1=on")).answer.checks).toEqual({
        lights: "dead",
      });
  });

  test("a new fuse stays whole until what melted the first is thrown again, and then the first lamp is dark too", () => {
    const given = exerciseWith(PAIR, "W6:short-to-ground");
    const looks = worked(
      given,
      "look F1",
      "renew F1",
      "look F1",
      "throw S1=on",
      "throw S2=on",
      "look F1",
      "throw S2=off",
    );
    expect(looks.route.flatMap(({ answer }) => answer.shows?.word ?? [])).toEqual(["blown", "whole", "blown"]);
    const loads = looks.route.map(({ answer }) => answer.loads.find(({ part }) => part === "E1")?.does ?? null);
    expect(loads).toEqual([null, "still", null, "on", "still", null, "still"]);
    const again = worked(given, "renew F1", "throw S2=on", "throw S2=off", "renew F1", "throw S1=on");
    expect(last(again).answer.loads).toContainEqual({ part: "E1", does: "on" });
  });

  test("costs what taking out and putting in cost, with the trim off; there is none of a wire or a switch", () => {
    const given = exerciseWith(LAMP, "W4:open");
    expect(last(worked(given, "renew F1")).minutes).toBe(0.4);
    expect(last(worked(given, "take out F1", "renew F1"))).toMatchObject({ minutes: 0.1 });
    expect(worked(given, "take out F1", "renew F1").condition).toEqual({});
    const renew = (part: string) => codeOf(moved(worked(given), given.vehicle, { do: "renew", part }, null));
    expect(["E1", "S1", "W4"].map(renew)).toEqual(["move-trim", "move-no-spare", "move-no-spare"]);
  });

  test("what is read after it proves nothing of the vehicle that was complained of", () => {
    const given = exerciseWith(LAMP, "F1:blown");
    const attempt = worked(given, "probe F1.2", "renew F1", "probe F1.2", "throw S1=on");
    expect(evidentIn(attempt).readings).toHaveLength(1);
    const route = worked(given, "renew F1", "throw S1=on", "probe F1.2", "verdict F1:blown").route;
    const replay = got(replayed(given.exercise, given.vehicle, route));
    const grade = gradeOf(given.exercise, { fault: "F1:blown", seed: null, note: "" }, replay);
    expect(grade).toMatchObject({ is: "right", readings: 1 });
    expect(grade.proof?.is).toBe("not proven");
  });
});
