import { describe, expect, it } from "vitest";
import type { Observed } from "../../core/live/judge.ts";
import { living } from "../diagnose/living.ts";
import { failing, lossyPlaces, lost, restless, sample, stand, verdicts, volts } from "./onTheBench.ts";

const VAN = sample("2-exterior-lights");

function observed(id: string, word: Observed) {
  return { check: VAN.checks.find((check) => check.id === id)!, word };
}

describe("the healthy van", () => {
  it("passes every check", () => {
    expect(failing(VAN)).toEqual([]);
  });

  it("neither chatters nor melts a fuse in any check or scene", () => {
    expect(restless(VAN)).toEqual([]);
  });

  it("loses no more volts than the trade allows (core/trade/limits.ts)", () => {
    expect(lossyPlaces(VAN)).toEqual([]);
  });

  it("keeps the shared rear ground under 0.10 V with all rear lamps lit (FenderBender, 25 November 2019)", () => {
    const live = stand(VAN, "S1=parking,S3=pressed");
    expect(volts(live, "SP7.2")).toBeLessThan(0.1);
    expect(volts(live, "SP7.2")).toBeGreaterThan(0.02);
  });

  it("draws by a brake filament what the P21/5W sheet of UN R37 gives: 25 W at 13.5 V, 6 % either way", () => {
    const live = stand(VAN, "S3=pressed");
    const across = lost(live, "E5.54", "E5.31");
    const amps = (25 / 13.5) * (across / 13.5) ** 0.55;
    expect(Math.abs(live.parts.get("E5")!.amps / amps - 1)).toBeLessThan(0.06);
  });
});

describe("switches and relay", () => {
  it("sends the low beams over the relay and only its coil over the stalk (common practice, no source)", () => {
    const live = stand(VAN, "S1=low");
    expect(live.wires.get("W12")!.amps).toBeLessThan(0.2);
    expect(live.wires.get("W4")!.amps).toBeGreaterThan(8.5);
  });

  it.each([
    ["S1=low", "powered", "grounded-through-load"],
    ["S1=low,S2=high", "grounded-through-load", "powered"],
    ["S2=flash", "grounded-through-load", "powered"],
    ["S1=low,S2=flash", "powered", "powered"],
    ["", "grounded-through-load", "grounded-through-load"],
  ])("has X2-56b and X2-56a in %j as %s and %s", (condition, low, high) => {
    const live = stand(VAN, condition);
    expect([live.points.get("X2-56b")!.state, live.points.get("X2-56a")!.state]).toEqual([low, high]);
  });

  it("flashes by the stalk's own feed: without the light switch's contact 30-56 low and high fail, flash works", () => {
    expect(failing(VAN, "S1:stuck-open-30-56")).toEqual([
      "low-left",
      "low-right",
      "high-left",
      "high-right",
      "tell-tale",
    ]);
  });

  it("loses both low beams and nothing else with the relay out", () => {
    expect(failing(VAN, "K1:coil-open")).toEqual(["low-left", "low-right"]);
  });

  it("darkens one side and the number plate with F3 out", () => {
    expect(failing(VAN, "F3:blown")).toEqual(["position-left", "tail-left", "plate"]);
  });

  it("loses tail or brake light by itself when one filament burns out", () => {
    expect(failing(VAN, "E5:burnt-out-second")).toEqual(["tail-left"]);
    expect(failing(VAN, "E6:burnt-out-main")).toEqual(["brake-right", "brake-right-lit"]);
  });
});

describe("the shared rear ground open (common practice, no source)", () => {
  it("feeds back while braking: tail, plate, instruments and front glow, pin 31 reads a middle voltage", () => {
    const live = stand(VAN, "S3=pressed,apart:X9");
    for (const lamp of ["E5", "E6", "E7", "E10", "E3", "E4"]) expect(live.parts.get(lamp)!.doing).toBe("dim");
    expect(live.points.get("SP7.2")!.state).toBe("between");
    expect(volts(live, "SP7.2")).toBeGreaterThan(9);
    expect(live.parts.get("E8")!.doing).toBe("on");
  });

  it("turns the current round in the tail lamp's wire", () => {
    expect(stand(VAN, "S1=parking").wires.get("W63")!.amps).toBeGreaterThan(0.3);
    expect(stand(VAN, "S3=pressed,apart:X9").wires.get("W63")!.amps).toBeLessThan(-0.1);
  });

  it("lights the tail filaments by some volts, against both ways of the brake filaments", () => {
    const live = stand(VAN, "S3=pressed,apart:X9");
    expect(lost(live, "E5.31", "E5.58")).toBeGreaterThan(5);
    expect(lost(live, "E5.54", "E5.31")).toBeLessThan(2);
  });

  it("dims the tail lamps with the lights on and makes the top brake lamp glow with the pedal up", () => {
    const live = stand(VAN, "S1=parking,apart:X9");
    for (const lamp of ["E5", "E6", "E7", "E8"]) expect(live.parts.get(lamp)!.doing).toBe("dim");
  });

  it("darkens the rear the moment the brake is pressed with the lights on", () => {
    const live = stand(VAN, "S1=parking,S3=pressed,apart:X9");
    for (const lamp of ["E5", "E6", "E7"]) expect(live.parts.get(lamp)!.doing).toBe("off");
    expect(live.parts.get("E8")!.doing).toBe("on");
  });

  it.each(["GP6:off", "X9-1:backed-out", "SP7:leg-2-open", "W67:open", "W68:open"])(
    "shows the same signs with %s",
    (fault) => {
      expect(verdicts(VAN, fault)).toMatchObject({
        "brake-left": "dead",
        "brake-right": "dead",
        "brake-top": "works",
        "front-dark": "wrong",
        "top-dark": "wrong",
        "low-left": "works",
      });
    },
  );

  it("is all that is left of the suspects when front lamps glow on the brake and both rear brake lamps are dead", () => {
    const complaint = observed("front-dark", "wrong");
    const suspects = living(VAN, complaint, [
      observed("brake-left", "dead"),
      observed("brake-right", "dead"),
      observed("brake-top", "works"),
    ]);
    expect(suspects.length).toBeGreaterThan(4);
    expect([...new Set(suspects.map(({ faults }) => faults[0]!.target))].sort()).toEqual([
      "GP6",
      "SP7",
      "W67",
      "W68",
      "X9-1",
    ]);
  });

  it("leaves the right lamp sound when only the left lamp's own pin 31 is out", () => {
    expect(verdicts(VAN, "X5-31:backed-out")).toMatchObject({
      "brake-right": "works",
      "tail-right": "works",
      plate: "works",
    });
    expect(verdicts(VAN, "X5-31:backed-out")["brake-left"]).not.toBe("works");
  });
});
