import { describe, expect, it } from "vitest";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { openedBeforehand } from "../../core/diagnose/beforehand.ts";
import { checkFor, DRAIN, drainCheck, drains, sleepingAmpsOf } from "../../core/diagnose/drain.ts";
import { fuseOhmsOf } from "../../core/diagnose/inPlace.ts";
import { probeOrder } from "../../core/diagnose/order.ts";
import { readWith } from "../../core/diagnose/reads.ts";
import { complaintOf, seenIn } from "../../core/diagnose/seen.ts";
import { isBySense, type Step } from "../../core/diagnose/step.ts";
import type { Observation } from "../../core/diagnose/suspects.ts";
import { parseFault } from "../../core/live/fault.ts";
import { liveOf } from "../../core/live/live.ts";
import { trials } from "../long.ts";
import { SAMPLE_NAMES, sample } from "../samples/onTheBench.ts";
import { living } from "./living.ts";
import { probesOf, search } from "./simulate.ts";

/** Battery goes flat, with the usual sleeping current or another. */
function flat(circuit: Circuit, sleeping: number | null = null): Observation {
  return complaintOf(circuit, drainCheck(circuit)!, undefined, sleeping);
}

const named = (name: string): Circuit => sample(SAMPLE_NAMES.find((each) => each.startsWith(name))!);
const blower = named("5");

/** Drains of one circuit that are searched for; all of them take a minute. */
const MOST_DRAINS = trials(6, 12);

describe("a battery that goes flat", () => {
  it("is a complaint of every circuit with a battery, and of none without", () => {
    expect(checkFor(blower, DRAIN)).toBe(drainCheck(blower));
    expect(seenIn(blower, DRAIN, {})?.complaint.sleeping).toBe(0.05);
    const bare = { ...blower, parts: blower.parts.filter(({ kind }) => kind !== "battery") };
    expect(seenIn(bare, DRAIN, {})).toBeNull();
  });

  it("suspects what draws more than is expected asleep, and nothing that draws less", () => {
    const amps = (circuit: Circuit, faults: Parameters<typeof liveOf>[2]): number =>
      liveOf(circuit, {}, faults).parts.get(drainCheck(circuit)!.load)!.amps;
    const awake = named("1");
    for (const sleeping of [0.05, 0.5]) {
      const suspected = living(awake, flat(awake, sleeping));
      expect(suspected.length).toBeGreaterThan(0);
      for (const { faults } of suspected) expect(amps(awake, faults)).toBeGreaterThan(sleeping);
    }
    const ids = (sleeping: number): readonly string[] => living(awake, flat(awake, sleeping)).map(({ id }) => id);
    expect(ids(0.05)).toContain("U1:stays-awake=0.3");
    expect(ids(0.5)).not.toContain("U1:stays-awake=0.3");
    expect(ids(0.5)).toContain("U1:stays-awake=1");
  });

  it("takes no burning short for a drain, and none that the good circuit draws as well", () => {
    expect(drains(180, 0, 0.05)).toBe(false);
    expect(drains(1.78, 1.78, 0.05)).toBe(false);
    expect(drains(2, 1.78, 0.05)).toBe(true);
  });

  it("reads across a fuse the amps through it times its cold ohms", () => {
    const awake = named("1");
    const fault = parseFault(awake, "U1:stays-awake=0.3");
    if (!fault.ok) throw new Error("no such fault");
    const probe = { red: "F5.1", black: "F5.2", instrument: "meter volts", lampTo: null, condition: {} } as const;
    const { shows } = readWith(awake, [fault.value], {}, probe);
    // Nothing else draws, so that the battery gives what goes through the fuse.
    const { amps } = liveOf(awake, {}, [fault.value]).parts.get("G1")!;
    expect(amps).toBeCloseTo(0.3, 1);
    expect(Math.abs(shows.volts!)).toBeCloseTo(amps * fuseOhmsOf(awake, "F5"), 6);
  });

  it.each(SAMPLE_NAMES)("wakes nothing on %s: no lamp, no fuse pulled, no plug looked into", (name) => {
    const circuit = sample(name);
    const { steps, before } = probeOrder(circuit, flat(circuit));
    expect(before.length).toBeGreaterThanOrEqual(4);
    const fuses = circuit.parts.filter(({ kind }) => kind === "fuse").map(({ id }) => id);
    for (const { lampTo, instrument, point, settings } of steps) {
      expect(lampTo).toBeNull();
      if (isBySense(instrument)) expect([instrument, fuses.includes(point)]).toEqual(["look", false]);
      for (const { condition } of settings) {
        expect(condition.set).toBeUndefined();
        expect((condition.out ?? []).some((part) => fuses.includes(part))).toBe(false);
      }
    }
  });

  it.each(SAMPLE_NAMES)("opens no trim on %s while a fuse that lies open still parts the suspects", (name) => {
    const circuit = sample(name);
    const { steps, before } = probeOrder(circuit, flat(circuit));
    const beforehand = openedBeforehand(circuit);
    for (const { label } of beforehand) expect(before.join(" ")).toContain(label);
    const open = new Set(beforehand.map(({ id }) => id));
    const isAtFuse = ({ ohms, settings }: Step): boolean => ohms !== null && settings[0]!.condition.apart === undefined;
    const behindTrim = steps.findIndex(({ access }) => access !== null && !open.has(access));
    const [first] = steps.filter((step) => isAtFuse(step) && step.access !== null && open.has(step.access));
    if (first && behindTrim >= 0) expect(steps.indexOf(first)).toBeLessThan(behindTrim);
  });

  it("tells the milliamps of a row across a fuse", () => {
    const { steps } = probeOrder(blower, flat(blower));
    const across = steps.filter(({ ohms }) => ohms !== null);
    expect(across.length).toBeGreaterThan(0);
    for (const { ohms, point, outcomes, settings } of across) {
      expect(ohms).toBe(fuseOhmsOf(blower, point.split(".")[0]!));
      expect(settings[0]!.expect.unit).toBe("mV");
      expect(outcomes.some(({ limit }) => / mV \(.+ mA\)/.test(limit))).toBe(true);
    }
  });

  it.each(["1", "2", "3", "5", "6", "7", "9"])(
    "leads the drains of sample %s to themselves, a few of them where there are many",
    (name) => {
      const circuit = named(name);
      const complaint = flat(circuit);
      const drains = living(circuit, complaint);
      const every = Math.ceil(drains.length / MOST_DRAINS);
      const tried = drains.filter((_, index) => index % every === 0);
      const missed = tried.filter((truth) => !search(circuit, complaint, truth).isFound);
      expect(missed.map(({ id }) => id)).toEqual([]);
    },
  );

  it("weighs tenths of a millivolt", () => {
    const { steps } = probeOrder(blower, flat(blower));
    const row = steps.find(({ ohms }) => ohms !== null)!;
    const [probe] = probesOf(row);
    const high = row.outcomes.find(({ word }) => word !== "right")!.leaves[0]!;
    const after = (volts: number): number => {
      const reading = { ...probe!, volts, word: null, standing: "taken", time: null } as const;
      const { suspects, cleared } = probeOrder(blower, flat(blower), { readings: [reading] });
      return [...suspects, ...cleared].find(({ id }) => id === high.id)!.probability;
    };
    const shown = readWith(blower, high.faults, {}, probe!).shows.volts!;
    expect(shown).toBeLessThan(0.01);
    expect(after(shown)).toBeGreaterThan(high.probability);
    expect(after(0)).toBeLessThan(high.probability / 4);
  });
});

describe("the expected sleeping current", () => {
  it.each([
    ["50", 0.05],
    ["35 mA", 0.035],
    ["0,05 A", 0.05],
  ])("reads %s", (typed, amps) => {
    const read = sleepingAmpsOf(typed);
    expect(read.ok && read.value).toBeCloseTo(amps, 9);
  });
  it.each(["", "nothing", "0", "50 A", "-3"])("refuses %s", (typed) => {
    const read = sleepingAmpsOf(typed);
    expect(!read.ok && read.refusal.code).toBe("sleeping-amps");
  });
});
