import { describe, expect, test } from "vitest";
import { PLAIN_WEIGHING } from "../../core/diagnose/weighing.ts";
import { plantFault } from "../../core/edit/commands/plantFault.ts";
import { setUp } from "../../core/edit/commands/setUp.ts";
import { takeOut } from "../../core/edit/commands/takeOut.ts";
import { throwControl } from "../../core/edit/commands/throwControl.ts";
import { faultTitle } from "../../core/live/fault.ts";
import { liveOf } from "../../core/live/live.ts";
import { partNow } from "../../renderer/state/views.ts";
import { failsAs, OBSERVED_TITLES, VERDICT_TITLES } from "../../renderer/words/check.ts";
import { colourWords } from "../../renderer/words/colour.ts";
import { conditionList, conditionPhrase, positionTitle, thrownWords } from "../../renderer/words/condition.ts";
import { modesOf, targetsOf } from "../../renderer/words/fault.ts";
import {
  ampsText,
  counted,
  minutesText,
  rangeText,
  unbroken,
  unitSign,
  voltsText,
} from "../../renderer/words/figures.ts";
import { partWords, pointWords, wireWords } from "../../renderer/words/live.ts";
import { partStands, partTitle } from "../../renderer/words/part.ts";
import { drivenPins, fusesOf, hasEngine, plugsOf } from "../../renderer/words/pulls.ts";
import { saidBetween, undoneWords } from "../../renderer/words/said.ts";
import { leadWords, movedIn, settingWords, sweepSetting } from "../../renderer/words/step.ts";
import { allSame, columnTitle, sameAs, withControlNames } from "../../renderer/words/table.ts";
import { answerTo } from "../../renderer/workers/answer.ts";
import type { Answers } from "../../renderer/workers/question.ts";
import { after, afterAll, VENTS } from "../edit/given.ts";
import { stateAfter } from "./stage.ts";

/** A space that does not break is set between a figure and its unit; here it is written as `_`. */
const plain = (words: string): string => words.replaceAll("\u00A0", "_");

describe("figures", () => {
  test.each([
    [12.094, "12.09_V"],
    [0, "0.00_V"],
    [-0.001, "0.00_V"],
    [-1.5, "−1.50_V"],
    [null, "floating"],
  ])("%s volts", (volts, words) => expect(plain(voltsText(volts))).toBe(words));

  test("a range of volts", () => {
    expect(plain(rangeText(12.4, 12.81))).toBe("12.4–12.8_V");
    expect(plain(rangeText(0, 0))).toBe("0.0_V");
    expect(plain(rangeText(-0.3, 0.3))).toBe("−0.3–0.3_V");
  });

  test.each([
    [0.0004, "no current"],
    [0.0852, "85_mA"],
    [-4.24, "4.2_A"],
    [130.4, "130_A"],
  ])("%s amps", (amps, words) => expect(plain(ampsText(amps))).toBe(words));

  test.each([
    [0.6, "0.6_min"],
    [2, "2_min"],
    [2.04, "2_min"],
    [12.4, "12_min"],
  ])("%s minutes", (minutes, words) => expect(plain(minutesText(minutes))).toBe(words));

  test("counts and units", () => {
    expect([counted(1, "loose end"), counted(0, "step"), counted(2, "body", "bodies")].map(plain)).toEqual([
      "1_loose end",
      "0_steps",
      "2_bodies",
    ]);
    expect(["ohm", "degC", "mm2", "V"].map(unitSign)).toEqual(["Ω", "°C", "mm²", "V"]);
  });
});

describe("a condition", () => {
  test("all that differs from rest, each in its words", () => {
    const list = conditionList(VENTS, {
      set: { S1: "on", S6: "open", "S2.rear": "close", "S2.lock-out": "on", S5: "rest" },
      apart: ["X5"],
      out: ["F3"],
      batteryOff: true,
      drive: { "U1.2": "on" },
      running: true,
      ambientC: -10,
    });
    expect(list.map(plain)).toEqual([
      "Key on",
      "S6 held open",
      "S2 Rear held close",
      "S2 Lock-out on",
      "X5 apart",
      "F3 out",
      "battery off",
      "U1.2 driven on",
      "engine running",
      "−10_°C",
    ]);
  });

  test("as one phrase", () => {
    expect(conditionPhrase(VENTS, {})).toBe("All at rest");
    expect(conditionPhrase(VENTS, { set: { S1: "off" } })).toBe("All at rest");
    expect(conditionPhrase(VENTS, { set: { S1: "on", S6: "open" } })).toBe("Key on, S6 held open");
    expect(conditionPhrase(VENTS, { batteryOff: true })).toBe("Battery off");
  });

  test("positions and throws", () => {
    expect(positionTitle("speed-1")).toBe("Speed 1");
    expect(thrownWords(VENTS, "S2.lock-out", "on")).toBe("S2 Lock-out on");
    expect(thrownWords(VENTS, "S99", "on")).toBe("S99 on");
  });
});

describe("live state", () => {
  const live = liveOf(VENTS, { set: { S1: "on", S6: "open" } });

  test("of parts, wires and points", () => {
    expect(plain(partWords(live.parts.get("M4")))).toMatch(/^runs forward, \d\.\d_A$/);
    expect(partWords(live.parts.get("M1"))).toBe("off");
    expect(plain(wireWords(live.wires.get("W1")))).toMatch(/^powered, always fed, 12\.\d\d_V, \d\.\d_A$/);
    expect(plain(wireWords(live.wires.get("W16")))).toMatch(/^grounded, 0\.\d\d_V$/);
    expect(plain(pointWords(live.points.get("F1.1")))).toMatch(/^powered, 12\.\d\d_V$/);
  });

  test("of what lets current through, whether it does and how much", () => {
    const open = liveOf(VENTS, { set: { S1: "on", S6: "open" } }, []);
    const part = (id: string) => VENTS.parts.find((each) => each.id === id)!;
    expect(plain(partStands(VENTS, open, part("F4")))).toMatch(/^whole, \d\.\d_A$/);
    expect(partStands(VENTS, open, part("F5"))).toMatch(/^whole, /);
    expect(plain(partStands(VENTS, open, part("GP2")))).toMatch(/^grounded, 0\.\d\d_V, \d\.\d_A$/);
    expect(plain(partStands(VENTS, open, part("L3")))).toMatch(/^powered, \d\d\.\d\d_V, \d\.\d_A$/);
    const melted = liveOf(VENTS, { set: { S1: "on" } }, [{ target: "F4", mode: "blown" }]);
    expect(partStands(VENTS, melted, part("F4"))).toBe("melted");
    const out = afterAll(VENTS, (bench) => takeOut(bench, "F4"));
    expect(out.condition.out).toEqual(["F4"]);
    const pulled = stateAfter(VENTS, { do: "make", command: (bench) => takeOut(bench, "F4") });
    expect(partNow(pulled, "F4")).toBe("pulled");
  });

  test("a page link is called by what it links and where it goes on", () => {
    const title = (id: string) => plain(partTitle(VENTS, VENTS.parts.find((each) => each.id === id)!));
    expect(title("L3")).toBe("Vent feed, to L1 on page_1");
    expect(title("L4")).toBe("Lock-out on, to L10 on page_4");
    expect(title("F4")).toBe("Own switches");
  });

  test("of a wire that is open in its middle, both ends are told", () => {
    const broken = liveOf(VENTS, { set: { S1: "on", S6: "open" } }, [{ target: "W48", mode: "open" }]);
    expect(plain(wireWords(broken.wires.get("W48")))).toMatch(/^powered to grounded through a load/);
  });

  test("of what is not there, nothing", () => {
    expect([partWords(undefined), wireWords(undefined), pointWords(undefined)]).toEqual(["", "", ""]);
  });
});

describe("what a screen reader is told", () => {
  const rest = afterAll(VENTS);
  const keyOn = afterAll(VENTS, (bench) => throwControl(bench, "S1", "on"));

  test("one throw with what it changed", () => {
    const held = afterAll(
      VENTS,
      (bench) => throwControl(bench, "S1", "on"),
      (bench) => throwControl(bench, "S6", "open"),
    );
    expect(saidBetween(keyOn, held, "throw S6")).toBe(
      "S6 held open. 2 wires changed: W46 powered, W48 powered. M4 runs forward.",
    );
    expect(saidBetween(held, keyOn, "throw S6")).toMatch(/^S6 rest\. 2 wires changed: .* M4 goes off\.$/);
  });

  test("several at once as the condition they come to", () => {
    const scene = afterAll(VENTS, (bench) => setUp(bench, { set: { S1: "on", S5: "open" } }));
    expect(saidBetween(rest, scene, "set up")).toMatch(/^Key on, S5 held open\. /);
  });

  test("an edit by its name; nothing where nothing was done", () => {
    const broken = after(rest, plantFault(rest, "W46:open"));
    expect(saidBetween(rest, broken, "put in W46:open")).toMatch(/^Put in W46:open\. /);
    expect(saidBetween(broken, rest, undoneWords("put in W46:open"))).toMatch(/^Undone: put in W46:open\. /);
    expect(saidBetween(rest, rest, "anything")).toBeNull();
    expect(undoneWords(null)).toBeNull();
  });
});

describe("faults", () => {
  test("by target and title, with their value", () => {
    expect(faultTitle(VENTS, { target: "W13", mode: "open" })).toBe("W13 broken");
    expect(plain(unbroken(faultTitle(VENTS, { target: "X5-6", mode: "corroded", value: 20 })))).toBe(
      "X5-6 corroded, ohms added, 20_ohm",
    );
    expect(faultTitle(VENTS, { target: "Z1", mode: "worn-out" })).toBe("Z1 worn out");
  });

  test("modes of what is there, none of what is not", () => {
    expect(modesOf(VENTS, "W13").map(({ mode }) => mode)).toContain("open");
    expect(modesOf(VENTS, "Z1")).toEqual([]);
  });

  test("every target that is offered can fail in some way", () => {
    const targets = targetsOf(VENTS);
    expect(targets.filter(({ id }) => modesOf(VENTS, id).length === 0)).toEqual([]);
    expect(targets.map(({ id }) => id)).not.toContain("L1");
    expect(targetsOf(VENTS)).toContainEqual({ id: "W13", about: "wire OG/BK, SP1.3 to X5-6" });
    expect(targetsOf(VENTS)).toContainEqual({ id: "X5-6", about: "pin 6 of X5" });
  });
});

describe("steps", () => {
  const { order } = answerTo(VENTS, {
    ask: "order",
    complaint: "rear-open-own",
    observed: {},
    readings: [],
    batteryVolts: null,
    sleepingAmps: null,
    when: [],
    wiggled: [],
    weighing: PLAIN_WEIGHING,
  }) as Answers["order"];
  const step = order.steps.find(({ sweepOf }) => sweepOf === "S6")!;
  const lamp = order.steps.find(({ lampTo }) => lampTo === "battery -")!;
  const plus = order.steps.find(({ lampTo }) => lampTo === "battery +")!;

  test("what to set names what other rows move", () => {
    expect(movedIn(order)).toEqual(["S1", "S6"]);
    expect(settingWords(VENTS, { set: { S1: "on" } }, ["S1", "S6"])).toBe("Key on, S6 at rest");
    expect(settingWords(VENTS, {}, ["S1", "S6"])).toBe("Key off, S6 at rest");
    expect(settingWords(VENTS, {}, [])).toBe("All at rest");
    expect(sweepSetting(VENTS, step)).toBe("Key on");
    expect(sweepSetting(VENTS, lamp)).toBe("");
  });

  test("where the leads and the lamp go", () => {
    expect(leadWords(step)).toEqual({ red: step.point, black: "battery −", lamp: null });
    expect(leadWords(lamp).lamp).toBe(`4 A lamp: ${lamp.point} to battery −`);
    expect(leadWords(plus).lamp).toBe(`4 A lamp: battery + to ${plus.point}`);
  });
});

describe("tables", () => {
  const column = { title: "S2.rear open", under: "held", condition: {}, plugged: true, merged: [] };

  test("controls go by their names", () => {
    expect(withControlNames(VENTS, "S1 on and S2.lock-out on")).toBe("Key on and S2 Lock-out on");
    expect(columnTitle(VENTS, column)).toBe("S2 Rear open, held");
    expect(columnTitle(VENTS, { ...column, title: "At rest", under: "S1 off" })).toBe("At rest, Key off");
    expect(columnTitle(VENTS, { ...column, title: "X5-6", under: "" })).toBe("X5-6");
  });

  test("what reads the same is named, or counted", () => {
    expect(sameAs(VENTS, column)).toBe("");
    expect(sameAs(VENTS, { ...column, merged: ["S6 open"] })).toBe("same: S6 open");
    expect(sameAs(VENTS, { ...column, merged: ["S6 open", "B1 wet"] })).toBe("same in 2 other positions");
    expect(allSame(VENTS, { ...column, merged: ["S2.rear open", "B1 wet"] })).toBe("S2 Rear open\nB1 wet");
  });
});

describe("what can be pulled or driven", () => {
  test("plugs once each, fuses and relays, module outputs", () => {
    const plugs = plugsOf(VENTS).map(({ id }) => id);
    expect(plugs).toEqual([...new Set(plugs)]);
    expect(plugs).toEqual(expect.arrayContaining(["X5", "X30"]));
    expect(fusesOf(VENTS).map(({ id }) => id)).toEqual(expect.arrayContaining(["F1", "F5", "K1"]));
    expect(drivenPins(VENTS, "S6")).toEqual([]);
    expect(drivenPins(VENTS)).toEqual(drivenPins(VENTS, "U1"));
    expect(hasEngine(VENTS)).toBe(false);
  });
});

describe("colours and checks", () => {
  test("colours in words", () => {
    expect(colourWords("OG/BK", "iec60757")).toBe("orange with black");
    expect(colourWords("??", "iec60757")).toBe("");
    expect(colourWords("tan", "free")).toBe("tan");
  });

  test("every word for a check is a word of its own", () => {
    const titles = Object.values(OBSERVED_TITLES);
    expect(new Set(titles).size).toBe(titles.length);
    expect(VERDICT_TITLES.wrong).toBe("does the wrong thing");
    const [own] = VENTS.checks;
    expect(failsAs(own!)).toBe("dead");
    expect(failsAs({ ...own!, expect: "off" })).toBe("wrong");
  });
});
