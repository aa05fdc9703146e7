import { describe, expect, it } from "vitest";
import type { Circuit, Condition } from "../../core/circuit/circuit.ts";
import type { Question } from "../../core/lesson/question.ts";
import { questionsOf } from "../../core/lesson/questions.ts";
import { meterOn, meterShows } from "../../core/live/instruments/meter.ts";
import { burns, lampOn } from "../../core/live/instruments/testLamp.ts";
import { liveOf } from "../../core/live/live.ts";
import { Rig } from "../../core/live/rig.ts";
import { reach } from "../../core/live/settle.ts";
import { failing, LESSON_NAMES, lossyPlaces, restless, sample, stand, volts } from "./onTheBench.ts";

const [GROUND, UNLOADED, MOTOR, LAMPS] = LESSON_NAMES.map(sample) as [Circuit, Circuit, Circuit, Circuit];
const BOARDS = [GROUND, UNLOADED, MOTOR, LAMPS].map((circuit) => [circuit.title, circuit] as const);

/** A meter as close as a learner reads it, V. */
const MISREAD = 0.15;

/** Numbers of the choices that agree with the circuit solved with the instrument clipped on. */
function rightChoices(circuit: Circuit, { asked, condition, choices }: Question): readonly number[] {
  const agrees = choices.map(({ answer, volts }): boolean => {
    if (asked.asks === "state") return liveOf(circuit, condition).points.get(asked.point)!.state === answer;
    if (asked.asks === "lamp") {
      const rig = new Rig(circuit, [], [lampOn("heavy", asked.point, asked.lampTo, circuit.nominalVolts)]);
      reach(rig, condition);
      return burns(rig) === answer;
    }
    const rig = new Rig(circuit, [], [meterOn(asked.point, asked.black)]);
    reach(rig, condition);
    return volts !== null && Math.abs(meterShows(rig) - volts) <= MISREAD;
  });
  return agrees.flatMap((isRight, index) => (isRight ? [index] : []));
}

describe.each(BOARDS)("%s", (_, board) => {
  it("works, and neither chatters nor melts a fuse in any check or scene", () => {
    expect(failing(board)).toEqual([]);
    expect(restless(board)).toEqual([]);
  });

  it("loses no more volts than the trade allows, but where a lesson is made of it", () => {
    expect(lossyPlaces(board)).toEqual([]);
  });

  it("tells something in every scene, and leads from one to the next", () => {
    for (const { label, caption = "" } of board.scenes) expect(caption.length, label).toBeGreaterThan(60);
    expect(board.scenes.length).toBeGreaterThanOrEqual(4);
  });

  it("asks what the circuit answers, one choice alone being right by the solver", () => {
    for (const scene of board.scenes) {
      const questions = questionsOf(board, scene);
      expect(questions.map(({ asked }) => asked)).toEqual(scene.questions ?? []);
      for (const question of questions) expect(rightChoices(board, question), question.text).toEqual([question.right]);
    }
  });

  it("asks for at least two of the wrong ideas", () => {
    const questions = board.scenes.flatMap((scene) => questionsOf(board, scene));
    const ideas = questions.flatMap(({ choices }) => choices.flatMap((choice) => choice.ideas));
    expect(new Set(ideas).size).toBeGreaterThanOrEqual(2);
  });
});

// What the captions say, held against the solver.
describe("power, ground and floating", () => {
  it("has wires that differ beside lamps that are dark, 0 V on both sides of the one, 12 V of the other", () => {
    const rest = stand(GROUND, "");
    const state = (wire: string) => rest.wires.get(wire)!.state[0];
    expect(["W4", "W5", "W9", "W11"].map(state)).toEqual([
      "powered",
      "grounded-through-load",
      "powered-through-load",
      "grounded",
    ]);
    expect(["E1", "E2"].map((lamp) => rest.parts.get(lamp)!.doing)).toEqual(["off", "off"]);
    expect(["E1.1", "E1.2"].map((point) => Math.round(volts(rest, point)))).toEqual([0, 0]);
    for (const point of ["E2.1", "E2.2"]) expect(volts(rest, point)).toBeGreaterThan(12.4);
  });

  it("has power on one side and ground on the other where a lamp works", () => {
    const left = stand(GROUND, "S1=on");
    expect(left.wires.get("W5")!.state).toEqual(["powered", "powered"]);
    expect(left.wires.get("W7")!.state).toEqual(["grounded", "grounded"]);
    const right = stand(GROUND, "S2=on");
    expect(volts(right, "X2-1a")).toBeLessThan(0.2);
    expect([left.parts.get("E1")!.doing, right.parts.get("E2")!.doing]).toEqual(["on", "on"]);
  });

  it("floats between an open switch and an open joint, and 12 V stand before the other one", () => {
    const floating = { state: ["floating", "floating"], volts: [null, null] };
    expect(stand(GROUND, "apart:X1").wires.get("W5")).toMatchObject(floating);
    const right = stand(GROUND, "apart:X2");
    expect(right.wires.get("W10")).toMatchObject(floating);
    expect(volts(right, "X2-1a")).toBeGreaterThan(12.4);
  });
});

describe("why unloaded tests mislead", () => {
  const lampAtPump = ({ set = {}, apart = [], out = [] }: Condition): string => {
    const rig = new Rig(UNLOADED, [], [lampOn("heavy", "X1-1", "battery -", 12)]);
    reach(rig, { set, apart, out });
    return burns(rig);
  };

  it("shows battery volts at the plug without its fuse, which a 4 A lamp does not believe", () => {
    const without = { set: { S1: "on" }, apart: ["X1"], out: ["F1"] };
    expect(volts(stand(UNLOADED, "S1=on,apart:X1,out:F1"), "X1-1")).toBeGreaterThan(12.5);
    expect(volts(stand(UNLOADED, "apart:X1"), "X1-1")).toBeGreaterThan(12.5);
    expect(lampAtPump(without)).toBe("dark");
    expect(lampAtPump({ ...without, out: [] })).toBe("bright");
    expect(volts(stand(UNLOADED, "S1=on,out:F1"), "X1-1")).toBeLessThan(0.1);
    expect(stand(UNLOADED, "apart:X1,out:F2").points.get("X1-1")!.state).toBe("floating");
  });

  it("lights the tell-tale through the pump while it stands, and not while it runs", () => {
    const [off, on] = [stand(UNLOADED, ""), stand(UNLOADED, "S1=on")];
    expect([off, on].map((live) => live.parts.get("E1")!.doing)).toEqual(["on", "off"]);
    expect([off, on].map((live) => live.parts.get("M1")!.doing)).toEqual(["off", "forward"]);
    expect(off.parts.get("E1")!.amps).toBeCloseTo(0.1, 2);
    expect(on.parts.get("M1")!.amps).toBeCloseTo(4, 0);
    expect(["W9", "W10"].map((wire) => on.wires.get(wire)!.state[0])).toEqual(["powered", "powered"]);
  });
});

describe("a reversing motor and its switch", () => {
  it("has the same volts on both sides when it stands: 0 at rest, the battery's without its ground", () => {
    const both = (condition: string) =>
      ["M1.1", "M1.2"].map((point) => Math.round(volts(stand(MOTOR, condition), point)));
    expect(both("")).toEqual([0, 0]);
    expect(both("S1=up")).toEqual([12, 0]);
    expect(both("S1=down")).toEqual([0, 12]);
    expect(both("S1=up,apart:X7")).toEqual([13, 13]);
    expect(both("S1=down,apart:X7")).toEqual([13, 13]);
    expect(both("S1=up,out:F1")).toEqual([0, 0]);
  });

  it("is fed and grounded up to its joint where that is apart", () => {
    const apart = stand(MOTOR, "S1=up,apart:X3");
    expect(["X3-1a", "X3-2a", "X3-1b"].map((point) => apart.points.get(point)!.state)).toEqual([
      "powered",
      "grounded",
      "floating",
    ]);
  });
});

describe("two unlike lamps in a row", () => {
  it("have one current; the small one takes nearly all of the volts and looks whole, the large one looks dead", () => {
    const on = stand(LAMPS, "S1=on");
    const [large, small] = ["E1", "E2"].map((lamp) => on.parts.get(lamp)!);
    expect(large!.amps).toBeCloseTo(small!.amps, 6);
    expect([large!.doing, small!.doing]).toEqual(["off", "on"]);
    expect(volts(on, "SP1.2") - volts(on, "SP2.3")).toBeLessThan(1);
    const bridged = stand(LAMPS, "S1=on,S2=closed").parts.get("E2")!;
    expect(bridged.amps / small!.amps).toBeLessThan(1.06);
  });
});
