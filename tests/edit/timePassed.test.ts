import { describe, expect, test } from "vitest";
import { suspicion } from "../../core/diagnose/order.ts";
import { complaintOf } from "../../core/diagnose/seen.ts";
import { benchFor } from "../../core/edit/bench.ts";
import { clipLead } from "../../core/edit/commands/clipLead.ts";
import { layInstrument } from "../../core/edit/commands/layInstrument.ts";
import { letGo } from "../../core/edit/commands/letGo.ts";
import { plantFault } from "../../core/edit/commands/plantFault.ts";
import { setUp } from "../../core/edit/commands/setUp.ts";
import { throwControl } from "../../core/edit/commands/throwControl.ts";
import { instrumentsNow } from "../../core/edit/instrumentsNow.ts";
import { liveNow } from "../../core/edit/liveNow.ts";
import { areButForTime, nextComing, timePassed } from "../../core/edit/timePassed.ts";
import { sample } from "../samples/onTheBench.ts";
import { after, afterAll, LATCH } from "./given.ts";

const MOTOR = sample("12-reversing-motor");
const SHAKY = afterAll(
  MOTOR,
  (at) => setUp(at, { set: { S1: "up" } }),
  (at) => plantFault(at, "X3-1:backed-out~5"),
  (at) => layInstrument(at, "voltmeter"),
  (at) => clipLead(at, at.clipped[0]!.id, "red", "X2-1"),
);
const doing = (bench: typeof SHAKY, part = "M1") => liveNow(bench).now.parts.get(part)!.doing;

describe("time that passes", () => {
  test("brings a fault and takes it away, in what every wire and instrument shows", () => {
    const next = nextComing(SHAKY, 0)!;
    const away = timePassed(SHAKY, next);
    expect([doing(SHAKY), doing(away)]).toEqual(["off", "forward"]);
    const volts = [SHAKY, away].map((bench) => [...instrumentsNow(bench).values()][0] as { volts: number });
    expect(volts[0]!.volts).toBeLessThan(0.1);
    expect(volts[1]!.volts).toBeGreaterThan(12);
    const back = timePassed(away, nextComing(away, next)!);
    expect([back.gone, doing(back)]).toEqual([[], "off"]);
  });

  test("leaves a bench itself where nothing comes or goes", () => {
    const bench = benchFor(MOTOR);
    expect(timePassed(bench, 7)).toBe(bench);
    expect(nextComing(bench, 7)).toBeNull();
    expect(timePassed(SHAKY, 0)).toBe(SHAKY);
  });

  test("is no edit: but for it the bench is the same", () => {
    const away = timePassed(SHAKY, nextComing(SHAKY, 0)!);
    expect(areButForTime(SHAKY, away)).toBe(true);
    expect(areButForTime(away, after(away, throwControl(away, "S1", "down")))).toBe(false);
  });

  test("lets a relay drop that held itself in, and does not pull it in again when the fault is away", () => {
    const shaky = after(benchFor(LATCH), plantFault(benchFor(LATCH), "W5:open~5"));
    const away = timePassed(shaky, nextComing(shaky, 0)!);
    const pressed = after(away, throwControl(away, "S1", "in"));
    const held = after(pressed, letGo(pressed, "S1"));
    expect(doing(held, "E1")).toBe("on");
    const there = timePassed(held, nextComing(held, nextComing(shaky, 0)!)!);
    expect(doing(there, "E1")).toBe("off");
    let steps = nextComing(there, nextComing(held, nextComing(shaky, 0)!)!)!;
    const gone = timePassed(there, steps++);
    expect([gone.gone, doing(gone, "E1")]).toEqual([["W5:open~5"], "off"]);
  });

  test("changes nothing for who searches: the fault is suspected as what it is while it is there", () => {
    const complaint = complaintOf(MOTOR, MOTOR.checks[0]!, "sometimes");
    const ids = suspicion(MOTOR, complaint, {}).suspects.map(({ id }) => id);
    expect(ids).toContain("X3-1:backed-out");
    expect(ids.filter((id) => id.includes("~"))).toEqual([]);
  });
});
