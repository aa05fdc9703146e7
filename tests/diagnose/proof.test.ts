import { describe, expect, it } from "vitest";
import { cheapestCover } from "../../core/diagnose/plan/cover.ts";
import { possibleFaults } from "../../core/diagnose/possible.ts";
import { type ProofRun, proofRun } from "../../core/diagnose/proofRun.ts";
import { readWith } from "../../core/diagnose/reads.ts";
import { triedOn, tryOut } from "../../core/diagnose/suspects.ts";
import { Rig } from "../../core/live/rig.ts";
import { sample } from "../samples/onTheBench.ts";

/** Numbers from 0 to 1, the same for the same seed (Park and Miller, "Random number generators", 1988). */
function dice(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

function proofOf(name: Parameters<typeof sample>[0], complaint: string, fault: string): ProofRun {
  const circuit = sample(name);
  const found = possibleFaults(circuit).find(({ id }) => id === fault)!;
  const check = circuit.checks.find(({ id }) => id === complaint)!;
  const proof = proofRun({ circuit, complaint: check, found });
  if (!proof.ok) throw new Error(proof.refusal.code);
  return proof.value;
}

const CASES = [
  ["1-roof-vents", "middle-open-own", "X32-1:corroded=20"],
  ["1-roof-vents", "middle-open-own", "F4:blown"],
  ["1-roof-vents", "middle-open-own", "M3:open"],
  ["1-roof-vents", "middle-open-own", "K1:coil-open"],
  ["1-roof-vents", "middle-open-own", "W13:open"],
  ["4-horn", "low-horn", "X11-1:backed-out"],
] as const;

describe("the cheapest cover", () => {
  it("costs what trying every choice finds, on seeded sets", () => {
    const roll = dice(7);
    for (let round = 0; round < 200; round++) {
      const costs = Array.from({ length: 8 }, () => 1 + Math.floor(9 * roll()));
      const sets = costs.map(() => new Set(Array.from({ length: 6 }, (_, item) => item).filter(() => roll() < 0.4)));
      const cost = (chosen: readonly number[]): number => chosen.reduce((sum, each) => sum + costs[each]!, 0);
      const all = new Set(sets.flatMap((set) => [...set]));
      let best = Number.POSITIVE_INFINITY;
      for (let bits = 0; bits < 2 ** sets.length; bits++) {
        const choice = sets.flatMap((_, index) => ((bits >> index) & 1 ? [index] : []));
        if (new Set(choice.flatMap((each) => [...sets[each]!])).size === all.size) best = Math.min(best, cost(choice));
      }
      const chosen = cheapestCover(sets, cost);
      expect(new Set(chosen.flatMap((each) => [...sets[each]!]))).toEqual(all);
      expect(cost(chosen)).toBe(best);
    }
  });

  it("holds all that can be held where there are too many sets to try every choice", () => {
    const roll = dice(11);
    const sets = Array.from(
      { length: 60 },
      () => new Set(Array.from({ length: 40 }, (_, i) => i).filter(() => roll() < 0.2)),
    );
    const chosen = cheapestCover(sets, (choice) => choice.length);
    expect(new Set(chosen.flatMap((each) => [...sets[each]!]))).toEqual(new Set(sets.flatMap((set) => [...set])));
  });
});

describe.each(CASES)("the proof run of %s, %s, %s", (name, complaint, fault) => {
  const circuit = sample(name);
  const proof = proofOf(name, complaint, fault);

  it("masks the complaint with everything but the fault itself", () => {
    const healthy = tryOut(new Rig(circuit), proof.complaint).doing;
    const verdicts = proof.masked.map(
      (each) => triedOn(new Rig(each.circuit, each.faults), proof.complaint, healthy).verdict,
    );
    expect(verdicts[0]).not.toBe("works");
    expect(new Set(verdicts.slice(1))).toEqual(new Set(["works"]));
    expect(proof.masked.length).toBeGreaterThan(2);
  });

  it("reads, with the meter in the circuit, within the window when mended and outside with what a row tells", () => {
    expect(proof.rows.length).toBeGreaterThan(0);
    for (const { step, after, tells } of proof.rows) {
      const { low: least, high: most, unit } = step.settings[0]!.expect;
      const [low, high] = [least, most].map((each) => (unit === "mV" ? each / 1000 : each)) as [number, number];
      const probe = { ...step, red: step.point, condition: step.settings[0]!.condition };
      expect(after).toBeGreaterThanOrEqual(low);
      expect(after).toBeLessThanOrEqual(high);
      for (const number of tells) {
        const { circuit: own, faults } = proof.masked[number]!;
        const { volts } = readWith(own, faults, proof.complaint.condition, probe).shows;
        expect(volts! < low || volts! > high).toBe(true);
      }
    }
  });

  it("shows the fault itself in a row, and leaves nothing unsaid", () => {
    const told = new Set([...proof.rows, ...proof.checks].flatMap(({ tells }) => tells));
    expect(proof.rows.some(({ tells }) => tells.includes(0))).toBe(true);
    expect(proof.masked.map((_, number) => number).filter((each) => !told.has(each))).toEqual([...proof.looks]);
  });

  it("repeats every position of the load", () => {
    const own = circuit.checks.filter(({ load }) => load === proof.complaint.load);
    expect(proof.checks.map(({ check }) => check)).toEqual(expect.arrayContaining(own));
  });
});

describe("a proof run", () => {
  it("tells a joint that was only cleaned, and a jumper lead that was left on, from one that was mended", () => {
    const { masked, rows } = proofOf("1-roof-vents", "middle-open-own", "X32-1:corroded=20");
    const told = new Set(rows.flatMap(({ tells }) => tells.map((number) => masked[number]!.id)));
    expect(told).toContain("X32-1:corroded=0.05");
    expect(told).toContain("X32-1:corroded=20+jumper");
  });

  it("finds a short behind a renewed fuse by the position that calls it up", () => {
    const { masked, checks } = proofOf("1-roof-vents", "middle-open-own", "F4:blown");
    const short = masked.findIndex(({ id }) => id === "W47:short-to-ground");
    expect(short).toBeGreaterThan(0);
    expect(checks.filter(({ tells }) => tells.includes(short)).map(({ check }) => check.id)).toContain(
      "rear-close-own",
    );
  });

  it("repeats what shared the branch", () => {
    const ids = proofOf("1-roof-vents", "middle-open-own", "F4:blown").checks.map(({ check }) => check.id);
    expect(ids).toEqual(expect.arrayContaining(["front-left-open-own", "rear-close-own"]));
    expect(ids).not.toEqual(expect.arrayContaining(["horn"]));
    const joint = proofOf("1-roof-vents", "middle-open-own", "X32-1:corroded=20");
    expect(joint.checks.map(({ check }) => check.id)).not.toContain("rear-open-own");
  });

  it("names what must be learnt anew by what was touched, each with who says so", () => {
    const after = (name: Parameters<typeof sample>[0], complaint: string, fault: string): readonly string[] =>
      proofOf(name, complaint, fault).relearn.map((each) => each.after);
    expect(after("1-roof-vents", "middle-open-own", "M3:open")).toEqual(["moving", "moving", "battery", "battery"]);
    expect(after("4-horn", "low-horn", "X11-1:backed-out")).toEqual(["battery", "battery"]);
  });

  it("scales to the battery that was measured", () => {
    const circuit = sample("1-roof-vents");
    const check = circuit.checks.find(({ id }) => id === "middle-open-own")!;
    const found = possibleFaults(circuit).find(({ id }) => id === "M3:open")!;
    const [drawn, low] = [null, 11.34].map((batteryVolts) =>
      proofRun({ circuit, complaint: check, found, batteryVolts }),
    );
    if (!drawn?.ok || !low?.ok) throw new Error("refused");
    expect(low.value.rows[0]!.before / drawn.value.rows[0]!.before).toBeCloseTo(11.34 / 12.6, 6);
  });

  it("refuses a fault that the complaint does not come from", () => {
    const circuit = sample("1-roof-vents");
    const check = circuit.checks.find(({ id }) => id === "middle-open-own")!;
    const found = possibleFaults(circuit).find(({ id }) => id === "M1:open")!;
    expect(proofRun({ circuit, complaint: check, found })).toMatchObject({
      ok: false,
      refusal: { code: "proof-fault" },
    });
  });
});
