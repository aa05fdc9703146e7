import { describe, expect, test } from "vitest";
import { flasher } from "../../core/parts/flasher.ts";
import { battery, filament, ohms, onBench, type Wired } from "./bench.ts";

const FEED: Wired = ["49", "-", battery(12)];
const BOTH: Wired = ["49a", "-", filament(42)];

describe("a flasher", () => {
  test("is idle with its contact closed while no lamp is on", () => {
    const stood = onBench(flasher, { wired: [FEED, ["49a", "-", ohms(1e6)]] });
    expect([stood.state, stood.doing?.doing]).toEqual(["idle", "off"]);
    expect(stood.volts("49a")).toBeCloseTo(12, 1);
  });

  test("flashes with its lamps on, and they are judged lit", () => {
    const stood = onBench(flasher, { wired: [FEED, BOTH] });
    expect(stood.doing).toMatchObject({ doing: "flashing", work: 1 });
    expect(stood.volts("49a")).toBeGreaterThan(11.5);
  });

  // NAVEDTRA 14050, chapter 4: lamps steady and not flashing, the flasher unit first
  test("stuck closed leaves the lamps lit without flashing", () => {
    const stood = onBench(flasher, { wired: [FEED, BOTH], fault: ["stuck-closed"] });
    expect(stood.doing).toMatchObject({ doing: "on", work: 0 });
    expect(stood.volts("49a")).toBeGreaterThan(11.5);
  });

  test("stuck open leaves them dark", () => {
    const stood = onBench(flasher, { wired: [FEED, BOTH], fault: ["stuck-open"] });
    expect(stood.doing).toMatchObject({ doing: "off", work: 0 });
    expect(Math.abs(stood.volts("49a"))).toBeLessThan(0.01);
  });

  test("with too little load is lit but steady", () => {
    expect(onBench(flasher, { wired: [FEED, ["49a", "-", filament(5)]] }).state).toBe("steady");
  });
});

describe("an electronic flasher", () => {
  const part = { settings: { electronic: true } };

  test("flashes with terminal 31 grounded and stays dark with 31 open", () => {
    expect(onBench(flasher, { part, wired: [FEED, BOTH, ["31", "-", ohms(0.01)]] }).state).toBe("flashing");
    const open = onBench(flasher, { part, wired: [FEED, BOTH] });
    expect([open.state, open.doing?.doing]).toEqual(["dark", "off"]);
  });
});
