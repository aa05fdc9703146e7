import { describe, expect, test } from "vitest";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { type JumperCheck, type JumperWanted, jumperCheck } from "../../core/diagnose/flow/jumper.ts";
import { conditionsToTry } from "../../core/diagnose/flow/positions.ts";
import { type Shares, sharesOf } from "../../core/diagnose/flow/shares.ts";
import { groupedSneaks } from "../../core/diagnose/flow/sneakGroups.ts";
import { searchSneaks, sneaksOf } from "../../core/diagnose/flow/sneaks.ts";
import { jumperSaid, openingsSaid, sneakSaid } from "../../core/diagnose/flow/words.ts";
import { liveOf } from "../../core/live/live.ts";
import type { Part } from "../../core/parts/kind.ts";
import { makeSwitch, vehicle } from "../live/vehicle.ts";
import { SAMPLE_NAMES, sample } from "../samples/onTheBench.ts";

// Loads of 1.2 ohm (120 W at 12 V), which stays so at any current: every figure below is worked by hand by Ohm's law. Wires
// have 10 mohm each (`vehicle`), the battery 10 mohm inside, a switch's contact 20, a splice's leg and a stud 1 or less.
const G1: Part = { id: "G1", kind: "battery", settings: { internalOhms: 0.01 } };
const heater = (id: string): Part => ({ id, kind: "heater" });
const OHMS = 1.2;

/** Two heaters on one ground, each with its switch, and a third beside the second on its own ground. */
const COMMON_GROUND = vehicle(
  [
    G1,
    { id: "GP1", kind: "ground" },
    { id: "F1", kind: "fuse", settings: { amps: 40 } },
    makeSwitch("S1"),
    makeSwitch("S2"),
    heater("E1"),
    heater("E2"),
    heater("E3"),
    { id: "SP1", kind: "splice", settings: { legs: 3 } },
    { id: "GP2", kind: "ground" },
    { id: "GP3", kind: "ground" },
  ],
  [
    "W1 G1.+ F1.1",
    "W2 F1.2 S1.1",
    "W3 F1.2 S2.1",
    "W4 S1.2 E1.1",
    "W5 S2.2 E2.1",
    "W6 S2.2 E3.1",
    "W7 E1.2 SP1.1",
    "W8 E2.2 SP1.2",
    "W9 SP1.3 GP2.stud",
    "W10 E3.2 GP3.stud",
    "W11 G1.- GP1.stud",
  ],
  {
    checks: [
      { id: "one", label: "E1 is warm", condition: { set: { S1: "on" } }, load: "E1", expect: "on" },
      { id: "two", label: "E2 is warm", condition: { set: { S2: "on" } }, load: "E2", expect: "on" },
    ],
  },
);

function shares(circuit: Circuit, target: string): Shares {
  const outcome = sharesOf(circuit, target);
  if (!outcome.ok) throw new Error(outcome.refusal.code);
  return outcome.value;
}

function jumper(circuit: Circuit, wanted: JumperWanted): JumperCheck {
  const outcome = jumperCheck(circuit, wanted);
  if (!outcome.ok) throw new Error(outcome.refusal.code);
  return outcome.value;
}

/** Volts of the battery with nothing on. */
const openVolts = (circuit: Circuit): number => liveOf(circuit).points.get("G1.+")!.volts!;

describe("What hangs on a place", () => {
  test("is every load whose current runs there, with its own amps", () => {
    // One heater: 1.2 ohm, battery 0.01, fuse about 0.0014, wires W1 W2 W4 W7 W9 W11 0.06, contact 0.02, splice and studs 0.003.
    const { sharers, most, sum } = shares(COMMON_GROUND, "GP2");
    expect(sharers.map(({ part }) => part).sort()).toEqual(["E1", "E2"]);
    const alone = openVolts(COMMON_GROUND) / (OHMS + 0.0944);
    const amps = (part: string): number => sharers.find((each) => each.part === part)!.amps;
    expect(Math.abs(amps("E1") - alone) / alone).toBeLessThan(0.01);
    // E2 is never on without E3, whose 10 A cost it volts in battery, W1, W3, W11: 0.04 of 0.64 ohm at twice the amps.
    expect(Math.abs(amps("E2") - alone) / alone).toBeLessThan(0.05);
    // Both on: each takes a little less than alone, since battery, W1, W9 and W11 carry both.
    expect(most.condition.set).toEqual({ S1: "on", S2: "on" });
    expect(most.amps).toBeGreaterThan(0.9 * sum);
    expect(most.amps).toBeLessThan(sum);
  });

  test("is held against the fuse: three heaters of 10 A on 40 A", () => {
    const { most, limits } = shares(COMMON_GROUND, "F1");
    expect(limits[0]).toMatchObject({ target: "F1", allowed: 40 });
    expect(limits[0]!.amps).toBeCloseTo(most.amps, 6);
    expect(most.amps).toBeGreaterThan(25);
  });

  test("goes dead or weak when it opens, by solving", () => {
    const { effects } = shares(COMMON_GROUND, "GP2");
    // S1 alone: E1 in series with E2 and E3 has a third of its volts, a ninth of its watts: dead. E2 has a ninth too.
    const dead = effects.filter(({ verdict }) => verdict === "dead").map(({ part }) => part);
    expect(dead).toEqual(["E1", "E2"]);
    expect(shares(COMMON_GROUND, "W10").effects.map(({ part, verdict }) => `${part} ${verdict}`)).toContain("E3 dead");
  });

  test("of a splice, a leg, a wire and a ground at the end of one line is the same", () => {
    const named = (target: string) =>
      shares(COMMON_GROUND, target)
        .sharers.map(({ part }) => part)
        .sort();
    expect(named("SP1")).toEqual(["E1", "E2"]);
    expect(named("SP1.3")).toEqual(["E1", "E2"]);
    expect(named("W9")).toEqual(["E1", "E2"]);
    expect(named("W7")).toEqual(["E1"]);
  });

  test.each([
    ["E1", "shares-target"],
    ["ZZ", "shares-unknown"],
    ["E9.1", "point-part"],
  ])("%s is refused by %s", (target, code) => {
    const outcome = sharesOf(COMMON_GROUND, target);
    expect(outcome.ok ? "" : outcome.refusal.code).toBe(code);
  });
});

describe("Sneak paths", () => {
  test("a common ground open: one heater feeds on through the other, backwards (worked by hand)", () => {
    const { sneaks } = sneaksOf(COMMON_GROUND);
    const open = sneaks.find(({ openings }) => openings.some(({ target }) => target === "GP2"))!;
    // E1, E2 backwards and E3 in a row: 3 x 1.2 ohm; battery 0.01, fuse 0.0014, W1 W2 W4 W7 W8 W5 W6 W10 W11 0.09, contact 0.02.
    const amps = openVolts(COMMON_GROUND) / (3 * OHMS + 0.01 + 0.0014 + 0.09 + 0.02 + 0.003);
    expect(open.condition.set).toEqual({ S1: "on" });
    expect(open.amps).toBeGreaterThan(0.99 * amps);
    expect(open.amps).toBeLessThan(1.01 * amps);
    expect(open.path.map(({ part }) => part)).toEqual(["G1", "F1", "S1", "E1", "E2", "E3", "GP3", "GP1"]);
    expect(open.path.find(({ part }) => part === "E2")!.isReversed).toBe(true);
    expect(open.wires.map(({ wire }) => wire).sort()).toEqual(["W5", "W8"]);
    expect(open.openings.map(({ target }) => target).sort()).toEqual(["GP2", "SP1.3"]);
    expect(open.failing.map(({ part }) => part)).toContain("E1");
    expect(sneakSaid(COMMON_GROUND, open)).toContain("GP2 off its stud");
  });

  test("are none where every load has a ground of its own", () => {
    const wires = COMMON_GROUND.wires.map((wire) => (wire.id === "W8" ? { ...wire, to: "GP3.stud" } : wire));
    const apart: Circuit = { ...COMMON_GROUND, wires };
    // E2 and E3 share GP3 and their feed: with it open there is no third way.
    expect(sneaksOf(apart).sneaks).toEqual([]);
  });

  test("a motor that its switches reverse is none: sample 1 has not one", () => {
    expect(sneaksOf(sample("1-roof-vents")).sneaks).toEqual([]);
  });

  test("the rear ground of sample 2 off: the brake filaments feed the tail lamps", () => {
    const { sneaks } = sneaksOf(sample("2-exterior-lights"));
    // Each stands in one group, what runs by itself first; those of one opening stand together.
    const grouped = groupedSneaks(sneaks);
    expect(grouped.map(({ group }) => group)).toEqual(["runs", "glows", "unseen"]);
    expect(grouped.flatMap(({ stories }) => stories.flat())).toHaveLength(sneaks.length);
    for (const { stories } of grouped)
      for (const story of stories) expect(new Set(story.map(openingsSaid)).size).toBe(1);
    const rear = sneaks.filter(({ openings }) => openings.some(({ target }) => target === "GP6"));
    const braking = rear.find(({ condition }) => condition.set?.S3 === "pressed")!;
    expect(braking.loads.map(({ part }) => part)).toEqual(
      expect.arrayContaining(["E3", "E4", "E5", "E6", "E7", "E10"]),
    );
    expect(braking.path.find(({ isReversed }) => isReversed)).toBeDefined();
  });

  test.each(SAMPLE_NAMES)("of sample %s obey Kirchhoff: a turned wire shows in its live state too", (name) => {
    const circuit = sample(name);
    for (const { openings, condition, wires } of sneaksOf(circuit).sneaks.slice(0, 6)) {
      const live = liveOf(circuit, condition, openings[0]?.faults ?? []);
      for (const { wire, amps } of wires) expect(Math.abs(live.wires.get(wire)!.amps)).toBeCloseTo(amps, 3);
    }
  });

  test("are searched opening by opening and can be stopped with what is found", () => {
    const steps = [...searchSneaks(COMMON_GROUND)];
    expect(steps.map(({ done }) => done)).toEqual(steps.map((_, index) => index + 1));
    expect(steps.at(-1)!.done).toBe(steps[0]!.all);
  });

  test("positions are bounded and each is told once", () => {
    for (const name of SAMPLE_NAMES) {
      const conditions = conditionsToTry(sample(name));
      expect(conditions.length).toBeLessThanOrEqual(240);
      expect(new Set(conditions.map((condition) => JSON.stringify(condition))).size).toBe(conditions.length);
    }
  });
});

describe("A jumper", () => {
  test("across a switch runs what hangs on it (worked by hand)", () => {
    // The lead 20 mohm, E1 1.2 ohm, battery 0.01, fuse 0.0014, W1 W2 W4 W7 W9 W11 0.06, splice and studs 0.003.
    const amps = openVolts(COMMON_GROUND) / (OHMS + 0.02 + 0.0744);
    const check = jumper(COMMON_GROUND, { from: "S1.1", to: "S1.2", condition: {} });
    expect(Math.abs(check.amps - amps) / amps).toBeLessThan(0.01);
    expect(check.melts).toBeNull();
    expect(check.effects.map(({ part, now }) => `${part} ${now}`)).toEqual(["E1 on"]);
    expect(check.limits[0]).toMatchObject({ target: "F1", allowed: 40 });
  });

  test("melts its own fuse first where that is smaller", () => {
    const check = jumper(COMMON_GROUND, { from: "S1.1", to: "S1.2", condition: {}, fuseAmps: 5 });
    expect(check.melts).toMatchObject({ target: "", rating: 5 });
    // About 9.7 A on 5 A is between 160 and 200 %: 0.15 s at the soonest, 50 s at the latest.
    expect(check.melts!.window).toMatchObject({ least: 0.15, most: 50 });
    expect(jumperSaid(check)).toMatch(/^9\.\d A would flow through the jumper's own fuse \(5 A\): it melts within/);
  });

  test("says which fuse of the circuit melts, by its published gates", () => {
    const parts = COMMON_GROUND.parts.map((part) => (part.id === "F1" ? { ...part, settings: { amps: 7.5 } } : part));
    const check = jumper({ ...COMMON_GROUND, parts }, { from: "S2.1", to: "S2.2", condition: {} });
    // Two heaters side by side on 7.5 A: about 18 A, 240 %.
    expect(check.melts).toMatchObject({ target: "F1", rating: 7.5 });
    expect(jumperSaid(check)).toMatch(/would flow through F1 \(7\.5 A\): it melts within 0\.04 to 5 s\.$/);
  });

  test("from post to post is a dead short, and over a working load a caution", () => {
    const short = jumper(COMMON_GROUND, { from: "battery +", to: "battery -", condition: {} });
    expect(short.cautions.map(({ caution }) => caution)).toContain("dead-short");
    const across = jumper(COMMON_GROUND, { from: "E1.1", to: "E1.2", condition: { set: { S1: "on" } } });
    expect(across.cautions).toContainEqual({ caution: "across-load", part: "E1" });
  });

  test("is kept off what is not to be probed, and refused on one point or with a fuse that is none", () => {
    const horn = sample("4-horn");
    const check = jumper(horn, { from: "battery+", to: "X20-1b", condition: {}, fuseAmps: 5 });
    expect(check.cautions.map(({ caution }) => caution)).toContain("do-not-probe");
    const code = (wanted: JumperWanted): string => {
      const outcome = jumperCheck(COMMON_GROUND, wanted);
      return outcome.ok ? "" : outcome.refusal.code;
    };
    expect(code({ from: "S1.1", to: "S1.1", condition: {} })).toBe("jumper-same");
    expect(code({ from: "S1.1", to: "S1.2", condition: {}, fuseAmps: 400 })).toBe("jumper-fuse");
    expect(code({ from: "S9.1", to: "S1.2", condition: {} })).toBe("point-part");
  });
});
