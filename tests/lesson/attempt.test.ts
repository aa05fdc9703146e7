import { inspect } from "node:util";
import { describe, expect, test } from "vitest";
import { sentence } from "../../core/base/words.ts";
import { type Attempt, begun, evidentIn, moved, readingsIn, toldOf, verdictOf } from "../../core/lesson/attempt.ts";
import { cupboardFor } from "../../core/lesson/cupboard.ts";
import { exerciseFor } from "../../core/lesson/exercise.ts";
import type { Move } from "../../core/lesson/move.ts";
import { moveText, parseMoves } from "../../core/lesson/moveText.ts";
import { plantOf } from "../../core/lesson/plant.ts";
import { replayed } from "../../core/lesson/replay.ts";
import { routeLines } from "../../core/lesson/routeText.ts";
import { vehicleOf } from "../../core/lesson/vehicle.ts";
import { codeOf, got } from "../edit/given.ts";
import { exerciseWith, HORN, LAMP, worked } from "./given.ts";

const last = ({ route }: Attempt) => route.at(-1)!;
const typed = (text: string): Move => got(parseMoves(LAMP, text, {})).at(-1)!;

describe("work on a vehicle", () => {
  const given = exerciseWith(LAMP, "W4:open");

  test("each move costs its minutes, trim once, and ways between places count", () => {
    const route = [
      ["throw S1=on", 0.1],
      ["probe F1.2", 0.5],
      ["open panel", 5],
      // 0.5 at the point and 0.5 to get there.
      ["probe X1-1", 1],
      // The lamp takes 0.3 more.
      ["lamp battery+/X1-2", 0.8],
      // To millivolts across the fuse: 0.2 to turn the meter.
      ["probe F1.1/F1.2", 1.2],
      ["look F1", 0.3],
      ["unplug X1", 1],
      ["plug in X1", 0.1],
    ] as const;
    const attempt = worked(given, ...route.map(([text]) => text));
    expect(attempt.route.map(({ move, minutes }) => [moveText(move), minutes])).toEqual(
      route.map(([text, minutes]) => [text.replace(/^lamp/, "4 A lamp"), minutes]),
    );
    expect(attempt.minutes).toBe(10);
  });

  test("readings are those of the vehicle with its fault: ground open, so the lamp's far side rises to battery volts", () => {
    const attempt = worked(
      given,
      "throw S1=on",
      "open panel",
      "probe X1-1",
      "probe X1-2",
      "lamp battery+/X1-2",
      "look F1",
    );
    const shows = attempt.route.flatMap(({ answer }) => (answer.shows ? [answer.shows] : []));
    expect(shows[0]!.volts).toBeCloseTo(12.6, 1);
    expect(shows[1]!.volts).toBeCloseTo(12.6, 1);
    expect(shows[2]!.word).toBe("dark");
    expect(shows[3]).toEqual({ volts: null, word: "whole" });
    expect(readingsIn(attempt).map(({ red, condition }) => [red, condition])).toEqual([
      ["X1-1", { set: { S1: "on" } }],
      ["X1-2", { set: { S1: "on" } }],
      ["X1-2", { set: { S1: "on" } }],
      ["F1", { set: { S1: "on" } }],
    ]);
  });

  test("ohms are read where the drawing is dead, amps by a clamp round one wire, each in its unit", () => {
    const attempt = worked(given, "open panel", "unplug X1", "ohms X1-2", "plug in X1", "throw S1=on", "clamp S1.2");
    const [ohms, amps] = attempt.route.flatMap(({ answer, minutes }) =>
      answer.shows ? [{ ...answer.shows, minutes }] : [],
    );
    expect(ohms).toMatchObject({ volts: null, word: null, minutes: 0.5 });
    expect(ohms!.ohms).toBeGreaterThanOrEqual(1e6);
    // The way back from the panel 0.5, the meter's other setting 0.2, the probe 0.5, the clamp 0.5.
    expect(amps).toEqual({ volts: null, amps: 0, word: null, minutes: 1.7 });
    expect(
      routeLines(attempt)
        .map(({ shown }) => shown)
        .filter((shown) => /^(open|0A)$/.test(shown)),
    ).toHaveLength(2);
    const whole = worked(exerciseWith(LAMP, "E1:burnt-out"), "open panel", "unplug X1", "ohms X1-2");
    expect(last(whole).answer.shows!.ohms).toBeLessThan(0.5);
    for (const [text, code] of [
      ["ohms F1.2", "reading-live"],
      ["clamp F1.2/S1.2", "reading-clamp"],
    ] as const)
      expect([text, codeOf(moved(attempt, given.vehicle, typed(text), null))]).toEqual([text, code]);
  });

  test("a throw shows what the loads do and which checks it tries; other checks count as seen", () => {
    expect(last(worked(given, "throw S1=on")).answer).toMatchObject({
      loads: [{ part: "E1", does: "still" }],
      checks: { lights: "dead" },
    });
    const horn = worked(exerciseWith(HORN, "H1:open"), "try high-horn");
    expect(last(horn).answer.checks).toMatchObject({ "low-horn": "dead", "high-horn": "works" });
    expect(evidentIn(horn).others.map(({ check, word }) => [check.id, word])).toContainEqual(["high-horn", "works"]);
    expect(evidentIn(horn).others.map(({ check }) => check.id)).not.toContain("low-horn");
  });

  test("a condition behind @ is reached by throws, plugs and fuses of their own", () => {
    const attempt = worked(given, "open panel", "probe F1.2 @ S1=on,apart:X1", "probe F1.2 @ rest");
    expect(attempt.route.map(({ move }) => moveText(move))).toEqual([
      "open panel",
      "throw S1=on",
      "unplug X1",
      "probe F1.2",
      "plug in X1",
      "throw S1=off",
      "probe F1.2",
    ]);
    expect(attempt.condition).toEqual({});
  });

  test("a terminal is probed behind its plug, and not at all while that is apart", () => {
    expect(typed("probe E1.1")).toMatchObject({ red: "X1-1" });
    const apart = worked(given, "open panel", "unplug X1");
    expect(codeOf(moved(apart, given.vehicle, got(parseMoves(LAMP, "probe E1.1", apart.condition))[0]!, null))).toBe(
      "move-no-point",
    );
  });

  test("the verdict ends it and is told at once, where the exercise says so", () => {
    const attempt = worked(given, "throw S1=on", "probe F1.2", "verdict W4:open by 1");
    expect(verdictOf(attempt)).toEqual({ do: "verdict", suspect: "W4:open", proof: [1] });
    expect(toldOf(attempt, given.vehicle)).toEqual({ isRight: true, was: "W4 broken" });
    expect(codeOf(moved(attempt, given.vehicle, { do: "hint" }, null))).toBe("move-over");
    const wrong = worked(given, "verdict F1:blown");
    expect(toldOf(wrong, given.vehicle)).toMatchObject({ isRight: false });
    expect(toldOf(worked(given), given.vehicle)).toBeNull();
    const silent = exerciseWith(LAMP, "W4:open", { tellsAtOnce: false });
    expect(toldOf(worked(silent, "verdict W4:open"), silent.vehicle)).toBeNull();
  });

  test("the same repair is right: other ohms at the same pin are", () => {
    const pin = exerciseWith(LAMP, "X1-1:corroded=200");
    expect(toldOf(worked(pin, "verdict X1-1:corroded=20"), pin.vehicle)?.isRight).toBe(true);
    expect(toldOf(worked(pin, "verdict X1-2:corroded=200"), pin.vehicle)?.isRight).toBe(false);
  });
});

describe("what cannot be done is refused in one sentence, and nothing is lost", () => {
  const given = exerciseWith(LAMP, "W4:open", { instruments: ["meter volts", "look", "4 A lamp", "fed direct"] });
  const on = worked(given, "throw S1=on");
  test.each([
    ["probe X1-1", "move-trim"],
    ["unplug X1", "move-trim"],
    ["feed E1", "move-trim"],
    ["throw S1=on", "move-stands"],
    ["throw S9=on", "condition-control"],
    ["open roof", "move-access"],
    ["open panel", "ok"],
    ["plug in X1", "move-home"],
    ["take out E1", "move-no-socket"],
    ["put in F1", "move-in"],
    ["lamp F1.1/F1.2", "move-fuse-in"],
    ["lamp F1.1/S1.2", "move-no-fuse"],
    ["0.25 A lamp F1.2", "move-instrument"],
    ["listen S1", "move-instrument"],
    ["probe F1.2/F1.2", "move-same-point"],
    ["probe Q7", "point-spelling"],
    ["probe Q7.1", "point-part"],
    ["look E1", "reading-part"],
    ["swap F1", "move-instrument"],
    ["feed F1", "reading-act"],
    ["engine off", "move-engine"],
    ["try nothing", "check-unknown"],
    ["hint", "move-hint"],
    ["verdict W4:gone", "fault-mode"],
    ["verdict W4:open by 3", "move-proof"],
    ["probe F1.2 @ ambient:80", "move-condition"],
    ["push it", "move-spelling"],
    ["throw apart:X1", "move-spelling"],
  ])("%s: %s", (text, code) => {
    const moves = parseMoves(given.exercise.circuit, text, on.condition);
    const outcome = moves.ok ? moved(on, given.vehicle, moves.value.at(-1)!, null) : moves;
    expect(outcome.ok ? "ok" : outcome.refusal.code).toBe(code);
    if (!outcome.ok) {
      expect(sentence(outcome.refusal)).toMatch(/^\S.*\.$/);
      expect(sentence(outcome.refusal)).not.toMatch(/[{}]/);
    }
  });

  test("what must not be touched, what no lamp may load, and what reads more than 60 V", () => {
    const forbidden = exerciseWith({ ...LAMP, reach: { ...LAMP.reach, "F1.1": { doNotProbe: "airbag" } } }, "W4:open");
    expect(codeOf(moved(begun(forbidden.exercise), forbidden.vehicle, typed("probe F1.1"), null))).toBe(
      "move-forbidden",
    );
    const high = { ...given.vehicle, shows: () => ({ volts: 72, word: null }) };
    expect(codeOf(moved(begun(given.exercise), high, typed("probe F1.2"), null))).toBe("over-60-volts");
  });

  test("an exercise that works, or with trim or instruments that are not there, is not made", () => {
    const fault = got(plantOf(LAMP, "X1-1:corroded=0.05"));
    const check = LAMP.checks[0]!;
    expect(codeOf(exerciseFor(LAMP, { check, fault }))).toBe("exercise-works");
    const dead = got(plantOf(LAMP, "W4:open"));
    expect(codeOf(exerciseFor(LAMP, { check, fault: dead, access: { roof: 3 } }))).toBe("exercise-access");
    expect(codeOf(exerciseFor(LAMP, { check, fault: dead, instruments: [] }))).toBe("exercise-instruments");
    expect(codeOf(exerciseFor({ ...LAMP, nominalVolts: 96 }, { check, fault: dead }))).toBe("over-60-volts");
    expect(exerciseWith(LAMP, "W4:open", { access: { panel: 9 } }).exercise.circuit.access[0]!.minutes).toBe(9);
  });

  test("a fault of another version is refused without being named", () => {
    for (const fault of ["W99:open", "W4:melted", "X1-1:corroded=0.05"]) {
      const outcome = vehicleOf(given.exercise, { fault, seed: null, note: "" });
      expect(codeOf(outcome)).toBe("exercise-version");
      if (!outcome.ok) expect(sentence(outcome.refusal)).not.toContain(fault.split(":")[0]);
    }
  });
});

describe("moves are spelled as they are read", () => {
  test.each([
    "throw S1=on",
    "try lights",
    "engine on",
    "open panel",
    "unplug X1",
    "plug in X1",
    "take out F1",
    "put in F1",
    "probe X1-1",
    "probe F1.1/F1.2",
    "probe battery+/X1-1",
    "ohms X1-1/X1-2",
    "clamp X1-1",
    "4 A lamp battery+/X1-2",
    "0.25 A lamp X1-1",
    "4 A lamp F1.1/F1.2",
    "look F1",
    "listen K1",
    "scan U1",
    "feed M1",
    "feed loose M1",
    "swap K1",
    "hint",
    "verdict W4:open",
    "verdict X1-1:corroded=20 by 1, 3",
  ])("%s", (text) => expect(moveText(typed(text))).toBe(text));
});

describe("a hint", () => {
  const hints = { count: 1, minutes: 5 };

  test("comes from what the learner knows alone: the same for every fault as long as all readings agree", () => {
    const said = ["W4:open", "W3:open", "E1:burnt-out"].map((fault) =>
      last(worked(exerciseWith(LAMP, fault, { hints }), "throw S1=on", "hint")),
    );
    expect(new Set(said.map(({ answer }) => answer.hint)).size).toBe(1);
    expect(said[0]).toMatchObject({ minutes: 5 });
  });

  test("names a move that can be typed, and there are no more than allowed", () => {
    const given = exerciseWith(LAMP, "W4:open", { hints });
    const attempt = worked(given, "hint");
    const leads = /^Next: (.+?) (?:at rest|with)/.exec(last(attempt).answer.hint ?? "")?.[1];
    expect(parseMoves(LAMP, leads ?? "", {}).ok).toBe(true);
    expect(codeOf(moved(attempt, given.vehicle, { do: "hint" }, null))).toBe("move-hint");
  });
});

describe("nothing shows the fault before the verdict", () => {
  const ROUTE = [
    "throw S1=pressed",
    "listen K1",
    "open bonnet",
    "open fuse-box",
    "look F2",
    "probe K1.87",
    "lamp K1.87",
    "probe F2.1/F2.2",
    "probe H9.1",
    "probe X10-1a",
    "take out F2",
    "hint",
    "unplug X11",
  ];
  const word = "dead";
  const check = HORN.checks[0]!;
  const names = [
    ...HORN.parts.map(({ id }) => id),
    ...HORN.wires.map(({ id }) => id),
    ...HORN.connectors.map(({ id }) => id),
  ];

  /** All that a learner's window or log can get of a route: answers, and sentences of what was refused. */
  function saidOf(fault: string, planted: string = fault): string {
    const { exercise } = exerciseWith(HORN, planted, { hints: { count: 0, minutes: 5 } });
    const vehicle = got(vehicleOf(exercise, { fault, seed: 7, note: "secret note" }));
    let attempt = begun(exercise);
    const said: unknown[] = [inspect(vehicle, { depth: 20, showHidden: true }), JSON.stringify(vehicle)];
    for (const text of ROUTE) {
      const moves = parseMoves(exercise.circuit, text, attempt.condition);
      const next = moves.ok ? moved(attempt, vehicle, moves.value.at(-1)!, null) : moves;
      if (next.ok) attempt = next.value;
      said.push(next.ok ? last(next.value).answer : sentence(next.refusal));
    }
    return JSON.stringify(said);
  }

  test("for every fault of the cupboard: no answer and no message has a name in it that another fault's has not", () => {
    const faults = cupboardFor(HORN, check).filter((each) => each.word === word);
    const namesIn = (said: string): string => names.filter((name) => new RegExp(`\\b${name}\\b`).test(said)).join();
    const expected = namesIn(saidOf(faults[0]!.possible.id));
    expect(faults.length).toBeGreaterThan(60);
    for (const { possible } of faults) {
      const said = saidOf(possible.id);
      expect([possible.id, namesIn(said)]).toEqual([possible.id, expected]);
      expect(said).not.toContain(possible.id);
      expect(said).not.toContain(possible.title);
      expect(said).not.toContain("secret note");
    }
  });
});

describe("a route is made again", () => {
  const given = exerciseWith(LAMP, "W4:open", { hints: { count: 2, minutes: 3 } });
  const { route } = worked(given, "throw S1=on", "probe F1.2", "hint", "open panel", "probe X1-2", "verdict W4:open");

  test("move by move to the same end", () => {
    const steps = got(replayed(given.exercise, given.vehicle, route));
    expect(steps).toHaveLength(route.length + 1);
    expect(steps.at(-1)!.route).toEqual(route);
  });

  test("and a reading, a price or a move that is not the vehicle's is found", () => {
    const changed = (number: number, change: object) => {
      const told = route.map((each, index) => (index === number - 1 ? { ...each, ...change } : each));
      const outcome = replayed(given.exercise, given.vehicle, told);
      return outcome.ok ? null : [outcome.refusal.code, outcome.refusal.about.number];
    };
    const { answer } = route[1]!;
    expect(changed(2, { answer: { ...answer, shows: { volts: 1, word: null } } })).toEqual(["route-strange", 2]);
    expect(changed(4, { minutes: 1 })).toEqual(["route-strange", 4]);
    expect(changed(4, { move: { do: "open", access: "roof" } })).toEqual(["route-strange", 4]);
    expect(changed(1, { answer: { ...route[0]!.answer, checks: { lights: "works" } } })).toEqual(["route-strange", 1]);
    expect(changed(3, { answer: { ...route[2]!.answer, hint: "no" } })).toEqual(["route-strange", 3]);
  });
});
