import { describe, expect, test } from "vitest";
import { FORWARD_DROPS } from "../../core/trade/diodes.ts";
import { BUDGET_LIMITS, DROP_LIMITS, dropLimit, passesBonding, testerOnModule } from "../../core/trade/limits.ts";

describe("limits", () => {
  test("every place has one limit, and the budget's come from the list", () => {
    const places = DROP_LIMITS.map((each) => each.place);
    expect(new Set(places).size).toBe(places.length);
    const listed = DROP_LIMITS.map((each) => each.volts);
    for (const limit of Object.values(BUDGET_LIMITS)) expect(listed).toContain(limit.volts);
    expect(dropLimit("module-ground").place).toBe("module-ground");
  });

  // Mercury service manuals no. 22 (2002) and no. 24 (1999): below 0.3 A; 0.1 A or less may glow
  test("0.3 A is refused on a module and 0.1 A may glow falsely", () => {
    expect(testerOnModule(0.3)).toBe("refused");
    expect(testerOnModule(0.1)).toBe("false-glow");
  });

  // AIS-038 revision 2 draft D1, September 2019, 5.1.2.2: 0.2 A or more
  test("a bonding test with too small a current tells nothing", () => expect(passesBonding(0.01, 0.1)).toBeNull());

  test("forward drops are ranges", () => {
    for (const { leastVolts, mostVolts } of FORWARD_DROPS) expect(mostVolts).toBeGreaterThan(leastVolts);
  });
});
