import { describe, expect, test } from "vitest";
import type { Circuit } from "../../core/circuit/circuit.ts";
import {
  type Branch,
  type BranchLine,
  type BranchRequest,
  branchFrom,
  branchOf,
  loadsOf,
} from "../../core/live/branch.ts";
import { otherPositions } from "../../core/live/branchElsewhere.ts";
import { partsOf, wiresOf } from "../../core/live/branchRow.ts";
import { liveOf } from "../../core/live/live.ts";
import { Rig } from "../../core/live/rig.ts";
import { reach } from "../../core/live/settle.ts";
import { statesOf } from "../../core/live/standing.ts";
import { wireOhms } from "../../core/trade/wire.ts";
import { SAMPLE_NAMES as SAMPLES, sample } from "../samples/onTheBench.ts";
import { G1, makeSwitch, ROW, vehicle } from "./vehicle.ts";

function branch(circuit: Circuit, request: BranchRequest): Branch {
  const outcome = branchOf(circuit, request);
  if (!outcome.ok) throw new Error(`${request.load} was refused: ${outcome.refusal.code}`);
  return outcome.value;
}

function named({ rows }: BranchLine): readonly string[] {
  return rows.map((row) => (row.is === "link" ? `link ${row.name}` : row.name));
}

/** The wires of a row's taps with what they lead to: `W7 > F3`. */
function tapsOf(line: BranchLine, id: string): readonly string[] {
  const row = line.rows.find((each) => each.name === id);
  return (row?.taps ?? []).map(({ wire, to }) => `${wire ?? "inside"} > ${to.join(" ")}`);
}

describe.each(SAMPLES)("Every load of sample %s", (name) => {
  const circuit = sample(name);
  const branches = loadsOf(circuit).map((load) => branch(circuit, { load }));

  test("has a line from a source through the load and back, without a gap", () => {
    expect(branches.length).toBeGreaterThan(0);
    for (const { load, lines } of branches) {
      const [line] = lines;
      const [first, last] = [line!.rows[0]!, line!.rows.at(-1)!];
      expect(first.entry.goodVolts).toBeCloseTo(last.exit.goodVolts!, 6);
      line!.rows.slice(1).forEach((row, index) => {
        expect(Math.abs(row.entry.goodVolts! - line!.rows[index]!.exit.goodVolts!)).toBeLessThan(1e-6);
      });
      expect(line!.rows.some((row) => row.is === "part" && row.part === load && row.isLoad)).toBe(true);
    }
  });

  test("loses along its line, part by part and wire by wire, just what the source gives", () => {
    for (const { lines } of branches) {
      const rows = lines[0]!.rows;
      const isRise = (row: (typeof rows)[number]) => row.exit.goodVolts! > row.entry.goodVolts!;
      const sum = (list: typeof rows) =>
        list.reduce((all, { entry, exit }) => all + entry.goodVolts! - exit.goodVolts!, 0);
      const drops = sum(rows.filter((row) => !isRise(row)));
      expect(Math.abs(drops + sum(rows.filter(isRise)))).toBeLessThan(1e-6);
      expect(drops).toBeGreaterThan(10);
    }
  });

  test("drops over a wire what its ohms and its amps make", () => {
    for (const { condition, lines } of branches) {
      const live = liveOf(circuit, condition);
      for (const row of lines.flatMap(({ rows }) => rows)) {
        if (row.is !== "wire") continue;
        const wire = circuit.wires.find(({ id }) => id === row.wire)!;
        const ohms = wire.ohms ?? wireOhms({ mm2: wire.mm2!, metres: wire.metres!, celsius: 20 });
        expect(Math.abs(live.wires.get(row.wire)!.amps)).toBeCloseTo(row.goodAmps, 6);
        expect(row.entry.goodVolts! - row.exit.goodVolts!).toBeCloseTo(row.goodAmps * ohms, 6);
      }
    }
  });

  test("carries its amps in every wire, or a stated share of them beside other lines", () => {
    for (const { goodAmps, lines } of branches) {
      const [main, ...beside] = lines;
      const most = beside.reduce((sum, { rows }) => sum + Math.max(...rows.map(({ share }) => share)), 0);
      for (const row of main!.rows) {
        expect(row.share).toBeLessThanOrEqual(row.goodAmps + 1e-6);
        expect(row.share).toBeLessThanOrEqual(goodAmps + 1e-6);
        expect(row.share + most).toBeGreaterThan(0.95 * goodAmps);
      }
    }
  });

  test("shows what the drawing shows", () => {
    for (const { condition, lines } of branches) {
      const live = liveOf(circuit, condition);
      for (const { exit } of lines.flatMap(({ rows }) => rows)) {
        const point = exit.point === null ? undefined : live.points.get(exit.point);
        if (!point) continue;
        expect(exit.state).toBe(point.state);
        expect(exit.volts).toBe(point.volts);
      }
    }
  });
});

describe("The middle vent's branch", () => {
  const vents = sample("1-roof-vents");
  const opening = branch(vents, { load: "M3", condition: { set: { S1: "on", S5: "open" } } });
  const [line] = opening.lines;

  test("passes from battery to ground in the order of the picture", () => {
    expect(named(line!).join(" ")).toBe(
      "G1 W1 F1 W2 K1 W3 link Vent feed W4 F4 W5 S2 W6 SP1 W13 S5 W16 X32-1 W18 M3 W19 X32-2 W17 S5 W15 S2 W20 X7-1 W21 GP2 GP1 W30",
    );
  });

  test("says what else hangs on a stud and on a splice", () => {
    expect(tapsOf(line!, "W4")).toEqual(["W7 > F3"]);
    expect(tapsOf(line!, "SP1")).toEqual(["inside > S3 S4 S6"]);
  });

  test("tells the contacts passed, where they rest, and which hand holds them", () => {
    const own = line!.rows.filter((row) => row.is === "part" && row.part === "S5");
    expect(own).toMatchObject([
      { terminals: ["6", "4"], isRest: false, restTerminal: "1", isClosed: true },
      { terminals: ["5", "2"], isRest: true, restTerminal: null, isClosed: true },
    ]);
    expect(own[0]).toMatchObject({ controls: [{ key: "S5", position: "open", rest: "rest", isHeld: true }] });
  });

  test("names the relay's coil with its own feed and return", () => {
    expect(opening.controls.map(({ part, sort }) => `${part} ${sort}`)).toEqual(["K1 coil"]);
    const [coil] = opening.controls;
    expect(partsOf(coil!.lines[0]!)).toEqual(["G1", "F1", "S1", "F2", "K1"]);
    expect(coil!.goodAmps).toBeCloseTo(12.541 / 90, 3);
    expect(coil!.pin).toMatchObject({ point: "K1.86", state: "powered" });
  });

  test("stays the same with a fault in it, and shows the states that the fault makes", () => {
    const open = branch(vents, {
      load: "M3",
      condition: opening.condition,
      faults: [{ target: "X32-1", mode: "backed-out" }],
    });
    expect(named(open.lines[0]!)).toEqual(named(line!));
    expect(open.goodAmps).toBeCloseTo(opening.amps, 6);
    expect(open.amps).toBeLessThan(1e-3);
    const wire = (id: string) => open.lines[0]!.rows.find((row) => row.is === "wire" && row.wire === id)!;
    expect(wire("W16").exit).toMatchObject({ state: "powered" });
    expect(wire("W18").entry).toMatchObject({ state: "grounded-through-load" });
    expect(wire("W18").entry.volts).toBeCloseTo(0, 3);
  });

  test("names what carries the current in the other direction only", () => {
    const others = otherPositions(vents, opening);
    const closing = others.find(({ check }) => check.load === "M3" && check.expect === "reverse");
    expect(closing?.wires).toEqual(expect.arrayContaining(["W14"]));
    for (const { wires } of others) for (const id of wires) expect(wiresOf(line!)).not.toContain(id);
  });
});

describe("A branch", () => {
  test("stands in the condition asked for where the load carries current there, else in its own first check", () => {
    const vents = sample("1-roof-vents");
    const [first] = vents.checks.filter(({ load }) => load === "M3");
    expect(branch(vents, { load: "M3", condition: { set: { S1: "on" } } }).condition).toEqual(first!.condition);
    const closing = { set: { S1: "on", S5: "close" } };
    expect(branch(vents, { load: "M3", condition: closing }).condition).toEqual(closing);
  });

  test("refuses a part that is not there, and a load that nothing makes work", () => {
    const refusal = (circuit: Circuit, load: string) => {
      const outcome = branchOf(circuit, { load });
      return outcome.ok ? null : outcome.refusal.code;
    };
    expect(refusal(ROW, "M9")).toBe("branch-load");
    expect(refusal({ ...ROW, checks: [] }, "M1")).toBe("branch-no-current");
  });

  test("shows two ways back as two lines whose shares make up the load's amps", () => {
    const { goodAmps, lines } = branch(sample("3-starter"), { load: "M1" });
    expect(lines).toHaveLength(2);
    const [main, strap] = lines;
    expect(strap).toMatchObject({ from: "engine", to: "G1.-" });
    expect(main!.rows.at(-1)!.share + strap!.rows.at(-1)!.share).toBeCloseTo(goodAmps, 6);
  });

  test("names of a module the ground and the input that close the contact now, with what must be there", () => {
    const { controls } = branch(sample("9-liftgate"), {
      load: "H1",
      condition: { set: { S1: "on", "S2.up": "pressed" } },
    });
    expect(controls.map(({ part, what, sort, wanted }) => ({ part, what, sort, wanted }))).toEqual([
      { part: "U1", what: "31", sort: "ground", wanted: null },
      { part: "U1", what: "up", sort: "input", wanted: "high" },
    ]);
    expect(partsOf(controls[1]!.lines[0]!)).toEqual(expect.arrayContaining(["F1", "S2", "S4"]));
  });

  test("names the stud on which two of its wires meet, though no current passes its part", () => {
    const [line] = branch(sample("5-blower"), { load: "E1" }).lines;
    expect(named(line!).slice(-4)).toEqual(["GP5", "W3", "GP1", "W2"]);
  });

  test("names the relay behind a relay", () => {
    const { controls } = branch(sample("3-starter"), { load: "M1" });
    expect(controls.map(({ part }) => part)).toEqual(["K2", "K1"]);
  });

  test("follows a circuit from where it stands: what a latch holds counts", () => {
    const latch = vehicle(
      [
        G1,
        makeSwitch("S1"),
        { id: "K1", kind: "relay" },
        { id: "M1", kind: "motor" },
        { id: "GP1", kind: "ground" },
        { id: "GP2", kind: "ground" },
      ],
      [
        "W1 G1.+ S1.1",
        "W2 S1.2 K1.86",
        "W3 K1.85 GP1.stud",
        "W4 G1.+ K1.30",
        "W5 K1.87 M1.1",
        "W6 M1.2 GP1.stud",
        "W7 GP2.stud G1.-",
        "W8 K1.87 K1.86",
      ],
    );
    const rig = new Rig(latch);
    reach(rig, { set: { S1: "on" } });
    const held = { condition: {}, states: statesOf(rig) };
    const found = branchFrom(latch, "M1", held, liveOf(latch));
    expect(found && partsOf(found.lines[0]!)).toEqual(["G1", "K1", "M1"]);
    expect(branchFrom(latch, "M1", { condition: {}, states: {} }, liveOf(latch))).toBeNull();
  });
});
