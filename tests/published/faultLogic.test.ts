import { describe, expect, it } from "vitest";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { suspicion } from "../../core/diagnose/order.ts";
import { planner } from "../../core/diagnose/plan/next.ts";
import { allLiving, type Problem, START } from "../../core/diagnose/plan/problem.ts";
import { type Reading, readingOf } from "../../core/diagnose/reading.ts";
import { repairsOf } from "../../core/diagnose/repairs.ts";
import { suspectsFor } from "../../core/diagnose/suspects.ts";
import { costs, rowsAt, rowsOf, suspectsOf } from "./printedOrder.ts";
import { NO_CRANK, ROW_OF_PLUGS, SHUT_OFF, TWO_GROUNDS } from "./sequences.ts";
import { BACKUP_LAMPS } from "./vehicles.ts";

// What government manuals say of how a fault is reasoned out, asked of our suspects and of our next row.

/** Suspects of a circuit's first check, which is dead, after the meter read these volts in the check's condition. */
function after(circuit: Circuit, leads: { readonly red: string; readonly black: string }, volts: number) {
  const check = circuit.checks[0]!;
  const probe = { ...leads, instrument: "meter volts", lampTo: null, condition: check.condition } as const;
  const readings: readonly Reading[] = [readingOf(probe, { volts, word: null })];
  return suspicion(circuit, { check, word: "dead" }, { readings });
}

const shareOf = (found: ReturnType<typeof after>, isOne: (target: string) => boolean): number =>
  repairsOf(found.suspects)
    .filter(({ repair }) => isOne(repair.split("|")[0]!))
    .reduce((sum, { share }) => sum + share, 0);

describe("TM 9-2320-365-20-1, section 2-11: a step that passes puts its parts on the list of known good ones", () => {
  const found = after(NO_CRANK, { red: "K1.87", black: "battery -" }, 25.2);
  const ids = found.suspects.map(({ id }) => id);
  const cleared = found.cleared.map(({ suspect }) => suspect.id);

  it.each(["W2:open", "W3:open", "W4:open", "W5:open", "W6:open", "K1:coil-open", "K1:stuck-open-30-87"])(
    "%s is cleared by volts at the relay's output",
    (id) => {
      expect(cleared).toContain(id);
      expect(ids).not.toContain(id);
    },
  );

  it.each(["W7:open", "K2:coil-open", "M1:open", "W10:open", "W11:open"])(
    "%s behind it stays a possible cause",
    (id) => {
      expect(ids).toContain(id);
    },
  );
});

describe("NAVEDTRA 14009, page 15: where to look when the part does nothing", () => {
  const leads = { red: "Y1.1", black: "Y1.2" };

  it("power is there: the part is at fault", () => {
    const found = after(SHUT_OFF, leads, 12.7);
    expect(shareOf(found, (target) => target === "Y1")).toBeGreaterThan(0.95);
  });

  it("no power is there: the part is taken for good, and what feeds it is left", () => {
    const found = after(SHUT_OFF, leads, 0);
    expect(shareOf(found, (target) => target === "Y1")).toBeLessThan(0.05);
    expect(shareOf(found, (target) => ["F1", "K1", "S1"].includes(target))).toBeGreaterThan(0.5);
  });
});

describe("TM 9-2320-273-20, section 5-5: a lamp that is out is taken for burnt first", () => {
  it("of one backup lamp that is dead while its sister works, the bulb leads", () => {
    const condition = { set: { S1: "run", S3: "reverse" } };
    const checks = ["E1", "E2"].map((load) => ({ id: load, label: load, condition, load, expect: "on" as const }));
    const circuit = { ...BACKUP_LAMPS, checks };
    const [dead, works] = checks;
    const found = suspicion(circuit, { check: dead!, word: "dead" }, { others: [{ check: works!, word: "works" }] });
    expect(repairsOf(found.suspects)[0]!.suspects[0]!.faults[0]).toMatchObject({ target: "E1", mode: "burnt-out" });
  });
});

describe("TM 9-2320-280-20-1: two ways to ground hide that one is open", () => {
  const [check] = TWO_GROUNDS.checks;
  const suspects = suspectsFor(TWO_GROUNDS, { check: check!, word: "dead" }).map(({ possible }) => possible.id);

  it("no single ground wire is suspected of a dead lamp, though its one feed is", () => {
    expect(suspects).toContain("W3:open");
    expect(suspects).not.toContain("W4:open");
    expect(suspects).not.toContain("W5:open");
  });
});

describe("along a row of plugs", () => {
  /** Eight wires from battery to lamp, each as likely to be broken. */
  const wires = [2, 3, 4, 5, 6, 7, 8, 9].map((number) => `W${number}:open`);
  const rows = rowsOf(ROW_OF_PLUGS, suspectsOf(ROW_OF_PLUGS, Object.fromEntries(wires.map((id) => [id, [id]]))));
  const plugs = [7, 6, 5, 4, 3, 2, 1].map((number) => `X${number}-1a`);
  /** Every probe counts as one, and the way there as nothing. */
  const counted: Problem = {
    ...rows.problem,
    probes: rows.problem.probes.map((probe) => ({ ...probe, minutes: 1, mode: 0 })),
    changePlace: 0,
  };

  it("Army IT0338, frame 10: between a good and a bad end the next test is in the middle", () => {
    const first = planner(counted)(allLiving(counted), START)!;
    expect(rows.columns[first.probe]!.candidate.at.point).toMatch(/^X4-1[ab]$/);
  });

  it("TM 5-6675-348-13&P, from the load back: 4.375 probes where halving needs 3", () => {
    const { printed, ours } = costs(counted, rowsAt(rows, plugs));
    expect(ours).toBeCloseTo(3, 10);
    expect(printed).toBeCloseTo(4.375, 10);
  });

  it("in minutes too, the test from the load back is never cheaper", () => {
    const { printed, ours } = costs(rows.problem, rowsAt(rows, plugs));
    expect(ours).toBeLessThanOrEqual(printed);
  });
});
