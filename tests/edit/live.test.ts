import { describe, expect, test } from "vitest";
import { problemsOf } from "../../core/circuit/check.ts";
import { controlsOf } from "../../core/circuit/points.ts";
import { type Bench, benchFor } from "../../core/edit/bench.ts";
import { changeOhms } from "../../core/edit/commands/changeOhms.ts";
import { healAll } from "../../core/edit/commands/healAll.ts";
import { healFault } from "../../core/edit/commands/healFault.ts";
import { letGo } from "../../core/edit/commands/letGo.ts";
import { movePart } from "../../core/edit/commands/movePart.ts";
import { observeCheck } from "../../core/edit/commands/observeCheck.ts";
import { plantFault } from "../../core/edit/commands/plantFault.ts";
import { recolourWire } from "../../core/edit/commands/recolourWire.ts";
import { replaceFuse } from "../../core/edit/commands/replaceFuse.ts";
import { restAll } from "../../core/edit/commands/restAll.ts";
import { setEngine } from "../../core/edit/commands/setEngine.ts";
import { setUp } from "../../core/edit/commands/setUp.ts";
import { showFaults } from "../../core/edit/commands/showFaults.ts";
import { throwControl } from "../../core/edit/commands/throwControl.ts";
import { apply } from "../../core/edit/edit.ts";
import { liveNow } from "../../core/edit/liveNow.ts";
import { probeOrderNow, tableNow, whyAt } from "../../core/edit/views.ts";
import { faultText } from "../../core/live/fault.ts";
import { type Live, liveOf } from "../../core/live/live.ts";
import { whyOf } from "../../core/live/why.ts";
import { makeSwitch, vehicle } from "../live/vehicle.ts";
import { lotsOf } from "../lots.ts";
import { harness } from "../reference/harness.ts";
import { randomFaults } from "../reference/trials.ts";
import { after, afterAll, codeOf, frozen, got, LATCH, ROW, SMALL, VENTS } from "./given.ts";

const state = (bench: Bench, part: string, which: "now" | "good" = "now") =>
  liveNow(bench)[which].parts.get(part)?.state;

/** States alike, volts and amps to within rounding: a rig that goes on comes from other guesses than a new one. */
function expectAlike(one: Live, other: Live): void {
  const plain = ({ condition: _, before: __, ...live }: Live) => live;
  const rounded = (live: Live): unknown =>
    JSON.parse(
      JSON.stringify(plain(live), (_, value) => {
        if (value instanceof Map) return [...value];
        if (value instanceof Set) return [...value].toSorted();
        if (typeof value !== "number") return value;
        const text = Number(value.toPrecision(5)).toFixed(6);
        return Number(text) === 0 ? "0.000000" : text;
      }),
    );
  expect(rounded(one)).toEqual(rounded(other));
}

const on = (control: string, position: string) => (bench: Bench) => throwControl(bench, control, position);

describe("what a bench shows", () => {
  test("is the live state from rest, where nothing holds itself", () => {
    const bench = afterAll(VENTS, on("S1", "on"), on("S5", "open"));
    expectAlike(liveNow(bench).now, liveOf(VENTS, { set: { S1: "on", S5: "open" } }));
    expect(liveNow(bench).good).toBe(liveNow(bench).now);
    expect(liveNow(bench).differs).toEqual({ wires: new Set(), parts: new Set(), points: new Set() });
  });

  test("keeps a latched relay in after the button is let go, until all is put at rest", () => {
    const held = afterAll(LATCH, on("S1", "in"));
    const latched = after(held, letGo(held, "S1"));
    expect(latched.condition).toEqual({});
    expect(state(latched, "K1")).toBe("pulled-in");
    expect(liveOf(LATCH).parts.get("K1")?.state).toBe("released");
    const rest = after(latched, restAll(latched));
    expect(state(rest, "K1")).toBe("released");
    expect(codeOf(restAll(rest))).toBe("at-rest");
    expect(state(after(latched, setUp(latched, {})), "K1")).toBe("released");
  });

  test("comes back as it was when throws are undone, latches and all", () => {
    const benches: Bench[] = [benchFor(LATCH)];
    const inverses = [];
    for (const command of [on("S1", "in"), (bench: Bench) => letGo(bench, "S1"), (bench: Bench) => restAll(bench)]) {
      const applied = got(apply(benches.at(-1)!, got(command(benches.at(-1)!))));
      benches.push(applied.bench);
      inverses.push(applied.inverse);
    }
    const shown = benches.map((bench) => state(bench, "K1"));
    expect(shown).toEqual(["released", "pulled-in", "pulled-in", "released"]);
    let bench = benches.pop()!;
    while (inverses.length > 0) {
      bench = got(apply(bench, inverses.pop()!)).bench;
      const was = benches.pop()!;
      expect(bench).toEqual(was);
      expect(state(bench, "K1")).toBe(shown[benches.length]);
      expectAlike(liveNow(bench).now, liveNow(frozen(was)).now);
    }
  });

  test("is the same for the same data, however it came about", () => {
    let bench = afterAll(VENTS, on("S1", "on"), (each) => plantFault(each, "W13:ohms=2"));
    const throws = [on("S5", "open"), on("S2.middle", "close"), on("S5", "rest"), on("S1", "off")];
    for (const command of throws) {
      bench = after(bench, command(bench));
      const again = frozen(bench);
      expectAlike(liveNow(bench).now, liveNow(again).now);
      expectAlike(liveNow(bench).good, liveNow(again).good);
      expect(liveNow(again).differs).toEqual(liveNow(bench).differs);
    }
  });
});

describe("a latch", () => {
  const S2 = makeSwitch("S2");
  const S3 = makeSwitch("S3");

  test("fed by a switch that stays on holds from kept data too, when something else is thrown", () => {
    const fed = vehicle(
      [...LATCH.parts, S2, S3],
      [
        "W1 G1.+ S2.1",
        "W2 S2.2 S1.1",
        "W3 S1.2 K1.86",
        "W4 K1.85 G1.-",
        "W5 S2.2 K1.30",
        "W6 K1.87 K1.86",
        "W7 K1.87 S3.1",
        "W8 S3.2 E1.1",
        "W9 E1.2 G1.-",
      ],
    );
    const latched = afterAll(fed, on("S2", "on"), on("S1", "in"), (bench) => letGo(bench, "S1"));
    const lit = after(latched, throwControl(latched, "S3", "on"));
    expect(liveNow(lit).now.parts.get("E1")?.doing).toBe("on");
    expect(liveNow(frozen(lit)).now.parts.get("E1")?.doing).toBe("on");
  });

  test("is not set by trying out what an unset output could do", () => {
    const unset = vehicle(
      [
        ...LATCH.parts,
        S2,
        { id: "U1", kind: "module", pins: { "30": "supply", "31": "ground", out: "drives-high" }, table: [] },
      ],
      [
        "W1 G1.+ U1.30",
        "W2 U1.31 G1.-",
        "W3 U1.out K1.86",
        "W4 K1.85 G1.-",
        "W5 G1.+ K1.30",
        "W6 K1.87 K1.86",
        "W7 G1.+ S2.1",
      ],
    );
    const bench = benchFor(unset);
    expect(liveNow(bench).now.points.get("K1.86")?.state).toBe("undecided");
    expect(state(bench, "K1")).toBe("released");
    expect(state(after(bench, throwControl(bench, "S2", "on")), "K1")).toBe("released");
  });
});

test("latches, melted fuses and alternators go on the same from kept data as from a rig that goes on", () => {
  for (let seed = 0; seed < 40; seed++) {
    const lots = lotsOf(seed);
    const circuit = harness(seed, 60);
    let bench = benchFor(circuit);
    for (const fault of randomFaults(circuit, lots)) {
      const planted = plantFault(bench, faultText(fault));
      if (planted.ok) bench = after(bench, planted);
    }
    for (let count = 0; count < 12; count++) {
      const { key, control } = lots.oneOf(controlsOf(circuit));
      const command = lots.happens(0.2)
        ? setEngine(bench, bench.condition.running !== true)
        : throwControl(bench, key, lots.oneOf(control.positions).name);
      if (!command.ok) continue;
      bench = after(bench, command);
      expect(liveNow(frozen(bench)).after, `${seed} ${count}`).toEqual(liveNow(bench).after);
    }
  }
});

describe("faults", () => {
  const shorted = () => afterAll(ROW, on("S1", "on"), (bench) => plantFault(bench, "W3:short-to-ground"));

  test("are told apart from the good circuit in wires, parts and points", () => {
    const bench = afterAll(ROW, on("S1", "on"), (each) => plantFault(each, "W3:open"));
    const { good, now, shown, differs } = liveNow(bench);
    expect(good.parts.get("M1")?.doing).toBe("forward");
    expect(now.parts.get("M1")?.doing).toBe("off");
    expect(shown).toBe(now);
    expect([...differs.parts]).toEqual(["M1"]);
    expect([...differs.wires]).toEqual(["W3"]);
    expect([...differs.points]).toEqual(["M1.1"]);
    const hidden = after(bench, showFaults(bench, false));
    expect(liveNow(hidden).shown).toBe(liveNow(hidden).good);
    expect(liveNow(hidden).good).toBe(good);
  });

  test("melt a fuse that stays melted when they are mended, until it is replaced", () => {
    const bench = shorted();
    expect(liveNow(bench).now.happenings).toMatchObject([{ what: "melted", part: "F1" }]);
    expect(liveNow(bench).now.before?.parts.get("F1")?.state).toBe("good");
    expect(state(bench, "F1")).toBe("melted");
    expect(state(bench, "F1", "good")).toBe("good");
    const mended = after(bench, healFault(bench, "W3:short-to-ground"));
    expect(state(mended, "F1")).toBe("melted");
    expect([...liveNow(mended).differs.parts]).toEqual(["F1", "M1"]);
    const rest = after(mended, restAll(mended));
    expect(state(rest, "F1")).toBe("melted");
    const good = after(mended, replaceFuse(mended, "F1"));
    expect(state(good, "F1")).toBe("good");
    expect(liveNow(good).now.parts.get("M1")?.doing).toBe("forward");
    expect(codeOf(replaceFuse(good, "F1"))).toBe("fuse-whole");
  });

  test("melt the new fuse again while they are there", () => {
    const bench = shorted();
    const replaced = after(bench, replaceFuse(bench, "F1"));
    expect(state(replaced, "F1")).toBe("melted");
    expect(liveNow(replaced).now.happenings).toMatchObject([{ what: "melted", part: "F1" }]);
  });

  test("of a fuse go with the fuse", () => {
    const bench = afterAll(ROW, (each) => plantFault(each, "F1:blown"));
    const replaced = after(bench, replaceFuse(bench, "F1"));
    expect(replaced.faults).toEqual([]);
    expect(state(replaced, "F1")).toBe("good");
  });

  test("that only held a part leave it as it begins: a mended blown fuse is good, a welded relay lets go", () => {
    const blown = afterAll(ROW, (each) => plantFault(each, "F1:blown"));
    expect(state(after(blown, healFault(blown, "F1:blown")), "F1")).toBe("good");
    const welded = afterAll(LATCH, (each) => plantFault(each, "K1:coil-open"));
    expect(state(after(welded, healFault(welded, "K1:coil-open")), "K1")).toBe("released");
  });

  test("are all mended with their fuses, and the latches of the good circuit kept", () => {
    const bench = shorted();
    const mended = after(bench, healAll(bench));
    expect(state(mended, "F1")).toBe("good");
    expect(liveNow(mended).now).toBe(liveNow(mended).good);
    expect(codeOf(healAll(mended))).toBe("no-faults");
    const latched = afterAll(
      LATCH,
      on("S1", "in"),
      (each) => letGo(each, "S1"),
      (each) => plantFault(each, "W2:open"),
      healAll,
    );
    expect(state(latched, "K1")).toBe("pulled-in");
  });

  test("drop a latch out for good when they come while it holds", () => {
    const latched = afterAll(LATCH, on("S1", "in"), (each) => letGo(each, "S1"));
    const faulty = after(latched, plantFault(latched, "W4:open"));
    expect(state(faulty, "K1")).toBe("released");
    expect(state(faulty, "K1", "good")).toBe("pulled-in");
    expect(state(after(faulty, healFault(faulty, "W4:open")), "K1")).toBe("released");
  });
});

describe("what is computed is kept", () => {
  test("live state is solved anew when a wire changes and the parts do not", () => {
    const bench = afterAll(SMALL, on("S1", "on"));
    const poor = after(bench, changeOhms(bench, "W4", "1"));
    expect(poor.circuit.parts).toBe(bench.circuit.parts);
    expect(liveNow(poor).now.wires.get("W4")!.amps).toBeLessThan(0.95 * liveNow(bench).now.wires.get("W4")!.amps);
  });

  test("live state stays the same object when a part moves or a check is noted", () => {
    const bench = afterAll(SMALL, on("S1", "on"));
    const { now } = liveNow(bench);
    const moved = after(bench, movePart(bench, "M1", { x: 61, y: 22 }));
    expect(liveNow(moved).now).toBe(now);
    const noted = after(moved, observeCheck(moved, "wiper-on", "dead"));
    expect(liveNow(noted).now).toBe(now);
  });

  test("the probe order and a table are not made again when a part moves", () => {
    const bench = { ...benchFor(SMALL), complaint: "wiper-on" };
    const order = probeOrderNow(bench);
    const table = tableNow(bench, "X1");
    expect(order?.steps.length).toBeGreaterThan(1);
    const moved = after(bench, movePart(bench, "M1", { x: 61, y: 22 }));
    expect(probeOrderNow(moved)).toBe(order);
    expect(tableNow(moved, "X1")).toBe(table);
    expect(probeOrderNow(benchFor(SMALL))).toBeNull();
  });

  test("the probe order follows what was seen", () => {
    const bench = { ...benchFor(SMALL), complaint: "wiper-on" };
    const weak = after(bench, observeCheck(bench, "wiper-on", "weak"));
    expect(probeOrderNow(weak)?.complaint).not.toBe(probeOrderNow(bench)?.complaint);
  });

  test("the table shows the faults where they are shown", () => {
    const bench = afterAll(SMALL, (each) => plantFault(each, "W1:open"));
    const faulty = tableNow(bench, "X1");
    const good = tableNow(after(bench, showFaults(bench, false)), "X1");
    expect(faulty.rows[0]!.cells[0]!.state).not.toBe(good.rows[0]!.cells[0]!.state);
  });
});

describe("why", () => {
  test("is that of a condition from rest, where nothing holds itself", () => {
    const bench = afterAll(VENTS, on("S1", "on"), on("S5", "open"));
    const { volts: _, amps: __, ...why } = whyAt(bench, "X32-1a")!;
    expect(whyOf(VENTS, "X32-1a", { set: { S1: "on", S5: "open" } })).toMatchObject(why);
    expect(whyAt(bench, "X32-1a")).toBe(whyAt(bench, "X32-1a"));
    expect(whyAt(bench, "M9.1")).toBeNull();
  });

  test("knows that a latched relay feeds the point", () => {
    const latched = afterAll(LATCH, on("S1", "in"), (each) => letGo(each, "S1"));
    expect(whyAt(latched, "E1.1")?.feed?.map(({ part }) => part)).toEqual(["G1", "K1"]);
    expect(whyAt(benchFor(LATCH), "E1.1")?.state).toBe("grounded-through-load");
  });
});

test("loose ends are those of the circuit, and follow an edit", () => {
  const bench = benchFor(SMALL);
  expect(problemsOf(SMALL)).toEqual([]);
  expect(problemsOf(after(bench, recolourWire(bench, "W1", "")).circuit)).toMatchObject([
    { code: "wire-without-colour", at: "W1" },
  ]);
});
