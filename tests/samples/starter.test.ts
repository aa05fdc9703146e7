import { describe, expect, it } from "vitest";
import { crankingDropLimit, dropLimit, SOLENOID_CONTROL_LIMITS } from "../../core/trade/limits.ts";
import { failing, lossyPlaces, lost, restless, sample, stand, verdicts, volts } from "./onTheBench.ts";

const PICK_UP = sample("3-starter");
const CRANKING = "S2=pressed,S1=start,out:F3";

describe("the healthy pick-up", () => {
  const live = stand(PICK_UP, CRANKING);
  const amps = live.parts.get("M1")!.amps;

  it("passes every check", () => {
    expect(failing(PICK_UP)).toEqual([]);
  });

  it("neither chatters nor melts a fuse in any check or scene", () => {
    expect(restless(PICK_UP)).toEqual([]);
  });

  it("loses no more volts than the trade allows (core/trade/limits.ts)", () => {
    expect(lossyPlaces(PICK_UP)).toEqual([]);
  });

  it("cranks with 150 to 200 A (common practice, no source)", () => {
    expect(amps).toBeGreaterThan(150);
    expect(amps).toBeLessThan(200);
  });

  it("keeps the battery at 9.6 V or more while cranking (US Army TM 10-3930-671-24)", () => {
    expect(lost(live, "G1.+", "G1.-")).toBeGreaterThan(9.6);
    expect(lost(live, "G1.+", "G1.-")).toBeLessThan(12);
  });

  it("loses at most 0.4 V along the plus cable, and 0.20 V for each 100 A (US Army TM 10-3930-671-24)", () => {
    const cable = lost(live, "G1.+", "K2.30");
    expect(cable).toBeGreaterThan(0.1);
    expect(cable).toBeLessThanOrEqual(dropLimit("positive-cable-cranking").volts);
    expect(lost(live, "G1.+", "M1.1")).toBeLessThanOrEqual(crankingDropLimit(amps).volts);
  });

  it("loses at most 0.3 V over the solenoid's contact and 0.1 V at each ground stud (Bentley Publishers service manual)", () => {
    expect(lost(live, "K2.30", "K2.45")).toBeLessThanOrEqual(dropLimit("contact").volts);
    for (const ground of ["GP7", "GP3", "GP4", "GP5", "GP1"])
      expect(Math.abs(lost(live, `${ground}.stud`, `${ground}.body`))).toBeLessThanOrEqual(
        dropLimit("high-current-connection").volts,
      );
  });

  it("loses at most 0.3 V from the starter's stud to the negative post (common practice, no source)", () => {
    expect(lost(live, "M1.2", "G1.-")).toBeLessThanOrEqual(dropLimit("starter-ground-side").volts);
  });

  it("loses at most 1.0 V on both sides of the solenoid's coil (US Army TM 5-2420-230-24-2)", () => {
    const both = lost(live, "G1.+", "K2.50") + lost(live, "K2.31", "G1.-");
    expect(both).toBeGreaterThan(0.1);
    expect(both).toBeLessThanOrEqual(SOLENOID_CONTROL_LIMITS[12].volts);
  });

  it("keeps the fuel shut while F3 is out for a cranking test", () => {
    expect(live.parts.get("Y1")!.doing).toBe("released");
    expect(stand(PICK_UP, "S2=pressed,S1=start").parts.get("Y1")!.doing).toBe("pulled-in");
  });
});

describe("what the drops tell (common practice, no source)", () => {
  it("finds 0.02 ohm in the plus cable by its drop, while the ground side stays good", () => {
    const live = stand(PICK_UP, CRANKING, "W1:ohms=0.02");
    expect(verdicts(PICK_UP, "W1:ohms=0.02").cranks).toBe("weak");
    expect(lost(live, "G1.+", "K2.30")).toBeGreaterThan(2);
    expect(lost(live, "M1.2", "G1.-")).toBeLessThan(dropLimit("starter-ground-side").volts);
  });

  it("finds an open engine ground by its drop alone: the straps still carry it, and get hot", () => {
    const live = stand(PICK_UP, CRANKING, "W5:open");
    expect(verdicts(PICK_UP, "W5:open").cranks).toBe("works");
    expect(lost(live, "M1.2", "G1.-")).toBeGreaterThan(dropLimit("starter-ground-side").volts);
    expect(live.wires.get("W7")!.amps).toBeGreaterThan(150);
  });

  it("finds 0.02 ohm at the starter's flange on the starter's side, while the engine block stays at ground", () => {
    expect(volts(stand(PICK_UP, CRANKING, "GP7:corroded=0.02"), "K2.31")).toBeGreaterThan(2);
    expect(volts(stand(PICK_UP, CRANKING, "GP7:corroded=0.02"), "GP3.stud")).toBeLessThan(0.2);
  });

  it("draws far more when the engine or starter is stuck, and dims the lamp", () => {
    const stuck = stand(PICK_UP, `S3=on,${CRANKING}`, "M1:seized");
    const healthy = stand(PICK_UP, `S3=on,${CRANKING}`);
    expect(stuck.parts.get("M1")!.amps).toBeGreaterThan(300);
    expect(volts(stuck, "E1.1")).toBeLessThan(volts(healthy, "E1.1") - 1.5);
  });

  it("leaves the lamp bright when the solenoid's contact does not close", () => {
    const open = stand(PICK_UP, `S3=on,${CRANKING}`, "K2:stuck-open-30-45");
    expect(open.parts.get("K2")!.doing).toBe("pulled-in");
    expect(open.parts.get("M1")!.doing).toBe("off");
    expect(volts(open, "E1.1")).toBeGreaterThan(12);
  });
});

describe("the three circuits in a row", () => {
  it.each([
    ["clutch switch open", "S2:stuck-open-1-2", ["cranks", "solenoid", "relay"]],
    ["relay contact burnt", "K1:stuck-open-30-87", ["cranks", "solenoid"]],
    ["F2 blown", "F2:blown", ["cranks", "solenoid"]],
    ["engine joint pin out", "X10-2:backed-out", ["cranks", "solenoid"]],
    ["solenoid contact burnt", "K2:stuck-open-30-45", ["cranks"]],
    ["starter open", "M1:open", ["cranks"]],
    ["clutch switch welded", "S2:stuck-closed-1-2", ["clutch-up"]],
    ["fuel pin out", "X10-1:backed-out", ["fuel-open"]],
  ])("parts at the right place: %s", (_name, fault, fails) => {
    expect(failing(PICK_UP, fault)).toEqual(fails);
  });

  it("feeds 50 of the key, and nothing behind the clutch switch, with the clutch up", () => {
    const live = stand(PICK_UP, "S1=start,out:F3");
    expect(live.points.get("X5-1")!.state).toBe("powered");
    expect(live.points.get("X5-2")!.state).toBe("grounded-through-load");
  });

  it("has 30 of the solenoid always fed, with no fuse and no switch before it", () => {
    expect(stand(PICK_UP, "").points.get("K2.30")).toMatchObject({ state: "powered", alwaysFed: true });
    expect(stand(PICK_UP, "out:F1,out:F2,out:F3,out:F4").points.get("K2.30")!.state).toBe("powered");
    expect(stand(PICK_UP, "battery:off").points.get("K2.30")!.state).not.toBe("powered");
  });
});

describe("a poor battery (common practice, no source)", () => {
  it("cranks slowly with 0.05 ohm inside, and under 9.6 V", () => {
    expect(verdicts(PICK_UP, "G1:ohms=0.05").cranks).toBe("weak");
    expect(volts(stand(PICK_UP, CRANKING, "G1:ohms=0.05"), "G1.+")).toBeLessThan(9.6);
  });

  it("rattles with 0.5 ohm: what the solenoid switches takes away what holds it", () => {
    const live = stand(PICK_UP, CRANKING, "G1:ohms=0.5");
    expect(live.settled).toBe(false);
    expect(live.happenings.map(({ what }) => what)).toContain("chatters");
  });
});
