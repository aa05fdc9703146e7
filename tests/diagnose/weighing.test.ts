import { describe, expect, test } from "vitest";
import { against, shareOf } from "../../core/diagnose/against.ts";
import { probeOrder } from "../../core/diagnose/order.ts";
import { possibleFaults } from "../../core/diagnose/possible.ts";
import { parseReading } from "../../core/diagnose/readingText.ts";
import { MOST_BY_FINDS, PLAIN_WEIGHING, type Weighing, weighedBy } from "../../core/diagnose/weighing.ts";
import { parseWeight, weightText } from "../../core/diagnose/weightText.ts";
import { codeOf, got, VENTS } from "../edit/given.ts";

const complaint = { check: VENTS.checks.find(({ id }) => id === "middle-open-own")!, word: "dead" } as const;
const orderWith = (weighing: Partial<Weighing>) =>
  probeOrder(VENTS, complaint, { weighing: { ...PLAIN_WEIGHING, ...weighing } });
const odds = (order: ReturnType<typeof orderWith>, id: string, other: string) =>
  shareOf(order, id) / shareOf(order, other);
const factor = (of: string, times: number) => ({ of, factor: times, source: "records" });
const possible = (id: string) => possibleFaults(VENTS).find((each) => each.id === id)!;

describe("weights that somebody set", () => {
  const plain = orderWith({});

  test("multiply the odds of what they are set for, and say where they come from", () => {
    for (const of of ["M3", "M3:seized"]) {
      const order = orderWith({ circuit: [factor(of, 4)] });
      expect(odds(order, "M3:seized", "W13:open")).toBeCloseTo(4 * odds(plain, "M3:seized", "W13:open"), 6);
      const notes = order.suspects.find(({ id }) => id === "M3:seized")!.notes;
      expect(notes).toEqual([`Weighed 4 times on this circuit (${of}): records.`]);
    }
    const shop = orderWith({ shop: [factor("motor:seized", 0.5), factor("wire", 2)] });
    expect(odds(shop, "M3:seized", "W13:open")).toBeCloseTo(0.25 * odds(plain, "M3:seized", "W13:open"), 6);
    expect(plain.suspects.every(({ notes }) => notes.length === 0)).toBe(true);
  });

  test("of a plug reach its pins, of a pin only that pin", () => {
    const plug = { ...PLAIN_WEIGHING, circuit: [factor("X5", 3)] };
    const pin = { ...PLAIN_WEIGHING, circuit: [factor("X5-6", 3)] };
    expect(weighedBy(VENTS, possible("X5-6:backed-out"), plug).factor).toBe(3);
    expect(weighedBy(VENTS, possible("X5-6:backed-out"), pin).factor).toBe(3);
    expect(weighedBy(VENTS, possible("X5-4:backed-out"), pin).factor).toBe(1);
  });

  test("are read as they are typed, and refused with a code", () => {
    const read = got(parseWeight("X5-6:corroded=20=1,5: bulletin 12 of 2024", VENTS));
    expect(read).toEqual({ of: "X5-6:corroded=20", factor: 1.5, source: "bulletin 12 of 2024" });
    expect(got(parseWeight(weightText(read), VENTS))).toEqual(read);
    expect(got(parseWeight("motor=2: own records", null)).of).toBe("motor");
    expect(codeOf(parseWeight("M3", VENTS))).toBe("weight-spelling");
    expect(codeOf(parseWeight("M99=3: records", VENTS))).toBe("weight-of");
    expect(codeOf(parseWeight("M3=3: records", null))).toBe("weight-of-shop");
    expect(codeOf(parseWeight("M3=500: records", VENTS))).toBe("weight-limits");
    expect(codeOf(parseWeight("M3=3: ", VENTS))).toBe("weight-source");
  });
});

describe("what was found here before", () => {
  test("makes n finds n + 1 times as likely, whatever value was filed, and 8 times at most", () => {
    const found = (count: number) =>
      weighedBy(VENTS, possible("X5-6:corroded=20"), { ...PLAIN_WEIGHING, solved: finds(count) });
    const finds = (count: number) => Array.from({ length: count }, () => "X5-6:corroded=2");
    expect([0, 1, 2, 30].map((count) => found(count).factor)).toEqual([1, 2, 3, MOST_BY_FINDS]);
    expect(found(2).notes).toEqual(["Found here in 2 earlier jobs."]);
    expect(found(1).notes).toEqual(["Found here in 1 earlier job."]);
    const other = weighedBy(VENTS, possible("W13:open"), { ...PLAIN_WEIGHING, solved: finds(3) });
    expect(other).toEqual({ factor: 1, notes: [] });
  });

  test("moves the order but never rules anything out", () => {
    const plain = orderWith({});
    const order = orderWith({ solved: ["W13:open", "W13:open"] });
    expect(odds(order, "W13:open", "M3:seized")).toBeCloseTo(3 * odds(plain, "W13:open", "M3:seized"), 6);
    expect(order.suspects).toHaveLength(plain.suspects.length);
  });
});

test("what speaks against a verdict: a likelier repair, the reading that cleared it, or that it is no suspect at all", () => {
  const readings = [got(parseReading(VENTS, "X5-6 @ S1=on : 0.02V")), got(parseReading(VENTS, "X5-6 @ S1=on : dark"))];
  const order = probeOrder(VENTS, complaint, { readings });
  const [leader] = order.suspects;
  expect(against(order, leader!.id)).toEqual([]);
  const other = order.suspects.find(({ repairGroup }) => repairGroup !== leader!.repairGroup)!;
  expect(against(order, other.id)[0]).toMatch(/^Likelier by the readings/);
  const cleared = order.clearedBy.find(({ by }) => by > 0)!;
  expect(against(order, cleared.suspect.id)[0]).toMatch(/^Reading \d speaks against it/);
  expect(against(order, "M1:seized")[0]).toMatch(/does not bring this complaint about/);
});
