import { describe, expect, it } from "vitest";
import { fitOf, likelihoodOf, mistakenAt, WRONG } from "../../core/diagnose/likelihood.ts";
import { probeOrder } from "../../core/diagnose/order.ts";
import { possibleFaults } from "../../core/diagnose/possible.ts";
import type { Reading } from "../../core/diagnose/reading.ts";
import { parseReading } from "../../core/diagnose/readingText.ts";
import type { ProbeOrder } from "../../core/diagnose/step.ts";
import { sample } from "../samples/onTheBench.ts";
import { search } from "./simulate.ts";

const vents = sample("1-roof-vents");
const complaint = { check: vents.checks.find(({ id }) => id === "middle-open-own")!, word: "dead" } as const;

function read(text: string): Reading {
  const reading = parseReading(vents, text);
  if (!reading.ok) throw new Error(reading.refusal.code);
  return reading.value;
}

function after(readings: readonly Reading[], batteryVolts: number | null = null): ProbeOrder {
  return probeOrder(vents, complaint, { readings, batteryVolts });
}

function shareOf({ suspects, cleared }: ProbeOrder, id: string): number {
  return [...suspects, ...cleared].find((each) => each.id === id)?.probability ?? Number.NaN;
}

const DEAD = read("X5-6 @ S1=on : 0.02V");

describe("a look", () => {
  const at = (red: string) => mistakenAt(vents, { red, instrument: "look" });

  it("into a plug hides more than one at a control, whatever that one's position is called", () => {
    expect(at("X5")).toBeGreaterThan(at("S5"));
    const [out, pushed] = ["pulled out", "as set"].map((word) => ({ volts: null, word }));
    expect(fitOf(out!, pushed!, "volts", at("S5"))).toBe(at("S5"));
    expect(fitOf(out!, pushed!, "volts", at("X5"))).toBe(at("X5"));
  });

  it("is the only thing that goes by the plug: a lamp or a meter there is read as anywhere", () => {
    for (const instrument of ["meter volts", "4 A lamp", "listen"] as const)
      expect(mistakenAt(vents, { red: "X5", instrument })).toBe(at("S5"));
  });
});

describe("what a reading does to the suspects", () => {
  it("leaves every one some weight, and all together one", () => {
    const { suspects, cleared, elsewhere } = after([DEAD, read("X5-6 @ S1=on : dark"), read("F4.2 @ S1=on : 12.5V")]);
    const all = [...suspects, ...cleared].map(({ probability }) => probability);
    expect(all.every((share) => share > 0)).toBe(true);
    expect(all.reduce((sum, share) => sum + share, elsewhere)).toBeCloseTo(1, 9);
  });

  it("raises what shows it and lowers what does not", () => {
    const [before, now] = [after([]), after([DEAD])];
    expect(shareOf(now, "W13:open")).toBeGreaterThan(shareOf(before, "W13:open"));
    expect(shareOf(now, "M3:seized")).toBeLessThan(shareOf(before, "M3:seized") / 10);
  });

  it("counts for nothing struck out, and for less doubted", () => {
    const struck = after([{ ...DEAD, standing: "struck" }]);
    expect(shareOf(struck, "W13:open")).toBeCloseTo(shareOf(after([]), "W13:open"), 9);
    const doubted = after([{ ...DEAD, standing: "doubted" }]);
    expect(shareOf(doubted, "M3:seized")).toBeGreaterThan(shareOf(after([DEAD]), "M3:seized"));
    expect(shareOf(doubted, "M3:seized")).toBeLessThan(shareOf(after([]), "M3:seized"));
  });

  it("buys little by being repeated: a wrong pin is wrong again", () => {
    const wrongs = [0.05, 0.05, 0.05, 0.05, 0.05];
    const five = likelihoodOf(
      [0, 0, 0, 0, 0],
      wrongs,
      wrongs.map(() => false),
    );
    // However often it is read, the share of wrong pins is left.
    expect(five).toBeGreaterThanOrEqual(WRONG.always * 0.05 ** 5);
    const often = after(Array.from({ length: 6 }, () => DEAD));
    expect(shareOf(often, "M3:seized")).toBeGreaterThan(0);
  });

  it("is taken against the battery that was measured", () => {
    const fed = after([read("X5-6 @ S1=on : 11.4V")], 11.5);
    const sagging = after([read("X5-6 @ S1=on : 11.4V")], 12.6);
    expect(shareOf(fed, "M3:seized")).toBeGreaterThan(shareOf(sagging, "M3:seized"));
  });

  it("takes it against what the drawing's battery shows at rest, not against its nominal volts", () => {
    const nominal = {
      ...vents,
      parts: vents.parts.map((part) => (part.id === "G1" ? { ...part, settings: { volts: 12 } } : part)),
    };
    const reading = read("X5-6 @ S1=on : 12.5V");
    const measured = probeOrder(nominal, complaint, { readings: [reading], batteryVolts: 12.6 });
    const plain = probeOrder(nominal, complaint, { readings: [reading] });
    expect(shareOf(measured, "M3:seized")).toBeCloseTo(shareOf(plain, "M3:seized"), 9);
  });

  it("names two readings that cannot both be right, and none where all agree", () => {
    expect(after([read("SP1.3 @ S1=on : 0.0V"), read("X5-6 @ S1=on : 12.6V")]).clashes).toEqual([[1, 2]]);
    expect(after([DEAD, read("SP1.3 @ S1=on : 12.6V")]).clashes).toEqual([]);
  });

  it("keeps what the drawing does not explain in sight", () => {
    const odd = after([read("X5-6 @ S1=on : 5.0V"), read("X5-1 @ S1=on : 7.0V"), read("F4.2 @ S1=on : 3.0V")]);
    expect(odd.elsewhere).toBeGreaterThan(0.3);
  });

  it("is kept, and not counted, where the drawing has no such point any more", () => {
    const gone = { ...DEAD, red: "X99-1" };
    expect(shareOf(after([gone]), "W13:open")).toBeCloseTo(shareOf(after([]), "W13:open"), 9);
    expect(after([gone, DEAD]).clearedBy.every(({ by }) => by !== 1)).toBe(true);
  });
});

describe("the end of a search", () => {
  it("is certain of a broken wire, and says which reading cleared the others", () => {
    const truth = possibleFaults(vents).find(({ id }) => id === "W13:open")!;
    const { order } = search(vents, complaint, truth);
    expect(order.progress).toBe("certain");
    expect(order.suspects[0]!.id).toBe("W13:open");
    expect(order.clearedBy.length).toBeGreaterThan(50);
    expect(order.clearedBy.every(({ by }) => by > 0)).toBe(true);
  });

  it("orders now where more proof costs more than a wrong part would", () => {
    const truth = possibleFaults(vents).find(({ id }) => id === "M3:seized")!;
    const { order } = search(vents, complaint, truth);
    expect(["certain", "tied"]).toContain(order.progress);
    const hurried = probeOrder(vents, complaint, { wrongPartMinutes: 1 });
    expect(hurried.progress).toBe("order-now");
  });
});
