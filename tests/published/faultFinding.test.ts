import { describe, expect, it } from "vitest";
import { tellsOf } from "../../core/diagnose/plan/information.ts";
import { planner } from "../../core/diagnose/plan/next.ts";
import { allLiving, START } from "../../core/diagnose/plan/problem.ts";
import { problemOf } from "../diagnose/problems.ts";
import { tried } from "./build.ts";
import { costs, rowsAt, rowsOf, suspectsOf, voltsWith } from "./printedOrder.ts";
import { gauge, NO_CRANK, SHUT_OFF } from "./sequences.ts";

// Sequences of government manuals on circuits redrawn by us. Both orders have the same suspects, probes and costs.

describe("Army OD1662, lesson 1, task 2, steps 13 to 17: a truck does not crank", () => {
  /** Steps 11 and 12 found wire 5 and the neutral switch good: five suspects are left. */
  const FAULTS = {
    control: "W4:open",
    "relay feed": "W6:open",
    relay: "K1:coil-open",
    connections: "W7:open",
    motor: "M1:open",
  } as const;
  const faults = Object.values(FAULTS);
  const STEPS = [
    { step: 13, red: "K1.86", how: "check", names: "control" },
    { step: 14, red: "K1.30", how: "rest", names: "relay feed" },
    { step: 15, red: "K1.87", how: "check", names: "relay" },
  ] as const;
  const isIn = (volts: number): boolean => volts >= 22 && volts <= 28;
  const outcomes = (fault: string): readonly number[] => [
    ...STEPS.map(({ red, how }) => (isIn(voltsWith(NO_CRANK, fault, red, how)) ? 1 : 0)),
    // Step 16 is a look at the connections of the starter, which no meter reads.
    fault === FAULTS.connections ? 0 : 1,
  ];
  const problem = (minutes: readonly number[]) =>
    problemOf({ weights: faults.map(() => 1), rows: faults.map(outcomes), minutes });

  it("the healthy circuit reads 22 to 28 V at every step, with wire 5 of step 11", () => {
    for (const { red, how } of [...STEPS, { red: "S1.1", how: "rest" } as const])
      expect(isIn(voltsWith(NO_CRANK, "", red, how)), red).toBe(true);
  });

  it.each(STEPS)(
    "step $step reads outside 22 to 28 V where it names its suspect, inside for all later ones",
    (step) => {
      const from = faults.indexOf(FAULTS[step.names]);
      expect(isIn(voltsWith(NO_CRANK, faults[from]!, step.red, step.how))).toBe(false);
      for (const later of faults.slice(from + 1))
        expect(isIn(voltsWith(NO_CRANK, later, step.red, step.how)), later).toBe(true);
    },
  );

  it("step 17 reads at least 24 V on wire 45 at the solenoid where the motor is at fault", () => {
    expect(voltsWith(NO_CRANK, FAULTS.motor, "K2.86", "check")).toBeGreaterThanOrEqual(24);
    expect(voltsWith(NO_CRANK, FAULTS.connections, "K2.86", "check")).toBeLessThan(24);
  });

  it("needs 2.4 probes where the manual needs 2.8, and begins at the relay's output", () => {
    const { printed, ours } = costs(problem([1, 1, 1, 1]));
    expect(printed).toBeCloseTo(2.8, 10);
    expect(ours).toBeCloseTo(2.4, 10);
    const given = problem([1, 1, 1, 1]);
    expect(planner(given)(allLiving(given), START)!.probe).toBe(2);
  });

  it("needs 7.6 minutes where the manual needs 9.0, at 3, 2, 2 and 8 minutes a step", () => {
    const { printed, ours } = costs(problem([3, 2, 2, 8]));
    expect(printed).toBeCloseTo(9, 10);
    expect(ours).toBeCloseTo(7.6, 10);
  });

  it("with every row the program has and its own minutes, is never dearer than the same points in printed order", () => {
    const rows = rowsOf(
      NO_CRANK,
      suspectsOf(NO_CRANK, Object.fromEntries(Object.entries(FAULTS).map(([name, fault]) => [name, [fault]]))),
    );
    const { printed, ours } = costs(rows.problem, rowsAt(rows, ["K1.86", "K1.30", "K1.87", "K2.86"]));
    console.log(`does not crank: ${ours.toFixed(2)} minutes, in printed order ${printed.toFixed(2)}`);
    expect(ours).toBeGreaterThan(0);
    expect(ours).toBeLessThanOrEqual(printed);
  });
});

describe("TM 5-3820-256-24-5, section 6-II-A, steps 1 to 4: the fuel shut-off does not move", () => {
  /**
   * What step 2 names where the volts are low: wiring, ignition switch, relay. It names the battery too, but one that
   * leaves less than 9 V cranks no engine, and this one cranks.
   */
  const SUPPLY = ["W2:open", "S1:stuck-open-1-2", "K1:coil-open"];
  const FUSE = "F1:blown";
  const STUCK = "Y1:stuck-released";
  const PULLS_IN = 9;
  const atSolenoid = (fault: string): number => voltsWith(SHUT_OFF, fault, "Y1.1", "check");

  it("the healthy circuit has 12 V at the solenoid, which pulls in from 9 V", () => {
    expect(atSolenoid("")).toBeGreaterThanOrEqual(11.5);
    expect(tried(SHUT_OFF, SHUT_OFF.checks[0]!.condition).doing("Y1")).toBe("pulled-in");
  });

  it("reads less than 9 V where the supply or the fuse is at fault, and 12 V where the plunger is", () => {
    for (const fault of [FUSE, ...SUPPLY]) expect(atSolenoid(fault), fault).toBeLessThan(PULLS_IN);
    expect(atSolenoid(STUCK)).toBeGreaterThanOrEqual(11.5);
  });

  it("needs 2.0 probes where the manual needs 2.25", () => {
    // Boot and worn plunger are one electrically: steps 3 and 4 are looks, each at its own.
    const verdicts = [[FUSE], SUPPLY, [STUCK], [STUCK]];
    const suspects = verdicts.flatMap((faults, verdict) =>
      faults.map((fault) => ({ fault, verdict, weight: 1 / faults.length })),
    );
    const { printed, ours } = costs(
      problemOf({
        weights: suspects.map(({ weight }) => weight),
        repairs: suspects.map(({ verdict }) => verdict),
        rows: suspects.map(({ fault, verdict }) => [
          fault === FUSE ? 0 : 1,
          atSolenoid(fault) < PULLS_IN ? 0 : 1,
          verdict === 2 ? 0 : 1,
          verdict === 3 ? 0 : 1,
        ]),
        minutes: [1, 1, 1, 1],
      }),
    );
    expect(printed).toBeCloseTo(2.25, 10);
    expect(ours).toBeCloseTo(2, 10);
  });

  it("with every row the program has and its own minutes, is never dearer than fuse first and then the solenoid", () => {
    const rows = rowsOf(SHUT_OFF, suspectsOf(SHUT_OFF, { fuse: [FUSE], supply: SUPPLY, solenoid: [STUCK] }));
    const { printed, ours } = costs(rows.problem, rowsAt(rows, ["F1", "Y1.1"]));
    console.log(`fuel shut-off: ${ours.toFixed(2)} minutes, in printed order ${printed.toFixed(2)}`);
    expect(ours).toBeGreaterThan(0);
    expect(ours).toBeLessThanOrEqual(printed);
  });
});

describe("TM 9-2320-365-20-1, fault e3, step 11, page 2-256.18: circuits of 12 V and of 24 V are dead", () => {
  // Posed in the abstract: the page has suspects and a question, but no circuit. Nine suspects, three of them with the
  // relay of 100 A. Which relay is fitted is seen at once; after that each step of the manual tests its first suspect.
  const suspects = Array.from({ length: 9 }, (_, at) => at);
  const problem = problemOf({
    weights: suspects.map(() => 1),
    rows: suspects.map((at) => [at < 3 ? 0 : 1, ...suspects.map((tested) => (tested === at ? 0 : 1))]),
    minutes: [0, ...suspects.map(() => 1)],
  });

  it("the look tells 0.918 bit and is the first row", () => {
    expect(tellsOf(problem).probe(allLiving(problem), 0)).toBeCloseTo(0.918, 3);
    expect(planner(problem)(allLiving(problem), START)!.probe).toBe(0);
  });

  it("costs no more than the printed order, and less than without the look", () => {
    const { printed, ours } = costs(problem);
    expect(ours).toBeLessThanOrEqual(printed);
    const looked = { ...problem, probes: problem.probes.slice(1) };
    expect(ours).toBeLessThan(costs(looked).ours);
  });
});

describe("TM 5-4210-230-14&P-1, gauge circuit: 55, 113 and 1365 ohm for the sender", () => {
  const SUBSTITUTES = [55, 113, 1365];
  const amps = (ohms: number, ...faults: readonly string[]): number =>
    tried(gauge(ohms), { set: { S1: "on" } }, faults).live.wires.get("W3")!.amps;
  /** Whether the pointer stands as it should: within a twentieth of full scale, for which the manual has two pointers. */
  const isRight = (ohms: number, fault: string): boolean =>
    Math.abs(amps(ohms, fault) - amps(ohms)) < amps(SUBSTITUTES[0]!) / 20;

  it("the pointer goes from full over half to low scale", () => {
    const [full, half, low] = SUBSTITUTES.map((ohms) => amps(ohms));
    expect(full!).toBeGreaterThan(half!);
    expect(half!).toBeGreaterThan(low!);
    expect(low!).toBeGreaterThan(0);
  });

  it("a wire that is broken or grounded, and a cluster without power, are not taken for a good gauge", () => {
    for (const fault of ["W4:open", "W4:short-to-ground", "W3:open"])
      expect(SUBSTITUTES.every((ohms) => isRight(ohms, fault))).toBe(false);
  });

  it("costs no more than the printed order: the other instruments, then the three in turn", () => {
    // Posed in the abstract but for the wiring, whose outcomes are solved: inside the gauge there is no circuit to solve.
    const wiring = (fault: string, isPowered: boolean) => [
      isPowered ? 1 : 0,
      ...SUBSTITUTES.map((ohms) => (isRight(ohms, fault) ? 1 : 0)),
    ];
    const wrongAt = (which: number) => [1, ...SUBSTITUTES.map((_, at) => (at === which ? 0 : 1))];
    const verdicts = [
      [wiring("W3:open", false)],
      [wiring("W4:open", true), wiring("W4:short-to-ground", true), wrongAt(0), wrongAt(1), wrongAt(2)],
      // With the sender out of the circuit, its fault shows in none of them.
      [[1, 1, 1, 1]],
    ];
    const problem = problemOf({
      weights: verdicts.flatMap((rows) => rows.map(() => 1 / rows.length)),
      repairs: verdicts.flatMap((rows, verdict) => rows.map(() => verdict)),
      rows: verdicts.flat(),
      minutes: [1, 1, 1, 1],
    });
    const { printed, ours } = costs(problem);
    console.log(`gauge: ${ours.toFixed(2)} probes, in printed order ${printed.toFixed(2)}`);
    expect(ours).toBeGreaterThan(0);
    expect(ours).toBeLessThanOrEqual(printed);
  });
});
