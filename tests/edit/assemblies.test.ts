import { describe, expect, test } from "vitest";
import { ASSEMBLY_WORDS } from "../../core/base/words/edit.ts";
import { problemsOf } from "../../core/circuit/check.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { ASSEMBLY_IDS, type AssemblyId, assembly } from "../../core/edit/assemblies.ts";
import { benchFor } from "../../core/edit/bench.ts";
import { letGo } from "../../core/edit/commands/letGo.ts";
import { paste } from "../../core/edit/commands/paste.ts";
import { pullApart } from "../../core/edit/commands/pullApart.ts";
import { throwControl } from "../../core/edit/commands/throwControl.ts";
import { liveNow } from "../../core/edit/liveNow.ts";
import { shapeAt } from "../../core/edit/standOnPage.ts";
import type { Part } from "../../core/parts/kind.ts";
import { fragmentText, readFragment } from "../../schemas/fragment.ts";
import { makeSwitch, vehicle } from "../live/vehicle.ts";
import { after, got } from "./given.ts";

const VOLTS = [12, 24] as const;
const PAGE = { id: "p1", title: "Bench", widthMm: 420, heightMm: 297 };
/** Ids that no assembly uses, so that it keeps its own. */
const BATTERY: readonly Part[] = [
  { id: "G9", kind: "battery" },
  { id: "GP9", kind: "ground" },
];

const empty = benchFor(vehicle([], [], { pages: [PAGE] }));

/** The assembly in a vehicle with a battery, and wires that a person would draw to it. */
function wired(id: AssemblyId, nominalVolts: number, parts: readonly Part[], wires: readonly string[]): Circuit {
  const bare = vehicle([...BATTERY, ...parts], ["W90 G9.- GP9.stud"], { nominalVolts, pages: [PAGE] });
  const bench = benchFor(bare);
  const pasted = after(bench, paste(bench, assembly(id, nominalVolts), "p1", 10, 10)).circuit;
  return { ...pasted, wires: [...pasted.wires, ...vehicle([], wires).wires] };
}

describe.each(ASSEMBLY_IDS)("%s", (id) => {
  test("is a fragment that its text brings back, and has a title", () => {
    expect(got(readFragment(fragmentText(assembly(id, 12))))).toEqual(assembly(id, 12));
    expect(ASSEMBLY_WORDS[id]).not.toBe("");
  });

  test("lies at the top left and no part of it on another", () => {
    const places = Object.values(assembly(id, 12).places);
    const { circuit } = after(empty, paste(empty, assembly(id, 12), "p1", 0, 0));
    const boxes = circuit.parts.map((part) => shapeAt(circuit, part, circuit.placement.parts[part.id]!).outline);
    const isOver = boxes.some((one, index) =>
      boxes
        .slice(index + 1)
        .some(
          (other) =>
            one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom,
        ),
    );
    expect(isOver).toBe(false);
    expect(Math.min(...places.map(({ x }) => x))).toBe(0);
    expect(Math.min(...places.map(({ y }) => y))).toBe(0);
  });
});

describe.each(VOLTS)("at %d V", (volts) => {
  test("the relay pulls in when its coil is fed and feeds what hangs on it", () => {
    const circuit = wired(
      "relay-with-fuse",
      volts,
      [makeSwitch("S9"), { id: "E9", kind: "lamp" }, { id: "GP8", kind: "ground" }],
      ["W91 G9.+ F1.1", "W92 G9.+ S9.1", "W93 S9.2 K1.86", "W94 K1.87 E9.1", "W95 E9.2 GP8.stud"],
    );
    expect(problemsOf(circuit).filter(({ severity }) => severity === "problem")).toEqual([]);
    const bench = benchFor(circuit);
    const { parts } = liveNow(bench).shown;
    expect([parts.get("K1")?.doing, parts.get("E9")?.doing]).toEqual(["released", "off"]);
    const on = liveNow(after(bench, throwControl(bench, "S9", "on"))).shown.parts;
    expect([on.get("K1")?.doing, on.get("E9")?.doing]).toEqual(["pulled-in", "on"]);
  });

  test("the motor runs either way while the switch is held, and stops when it is let go", () => {
    const circuit = wired("reversing-switch", volts, [], ["W91 G9.+ S1.6"]);
    expect(problemsOf(circuit).filter(({ severity }) => severity === "problem")).toEqual([]);
    const bench = benchFor(circuit);
    const forward = after(bench, throwControl(bench, "S1", "forward"));
    const reverse = after(forward, throwControl(forward, "S1", "reverse"));
    const rest = after(reverse, letGo(reverse, "S1"));
    expect([bench, forward, reverse, rest].map((each) => liveNow(each).shown.parts.get("M1")?.doing)).toEqual([
      "off",
      "forward",
      "reverse",
      "off",
    ]);
  });

  test("both lamps light, and neither without the ground they share", () => {
    const circuit = wired("lamp-pair", volts, [], ["W91 G9.+ E1.1", "W92 G9.+ E2.1"]);
    const doing = (of: Circuit) => {
      const { parts } = liveNow(benchFor(of)).shown;
      return [parts.get("E1")?.doing, parts.get("E2")?.doing];
    };
    expect(doing(circuit)).toEqual(["on", "on"]);
    expect(doing({ ...circuit, wires: circuit.wires.filter(({ id }) => id !== "W3") })).toEqual(["off", "off"]);
  });

  test("a lamp lights through both connectors, and not with either apart", () => {
    const circuit = wired(
      "connector-pair",
      volts,
      [{ id: "E9", kind: "lamp" }],
      ["W91 G9.+ X1-1a", "W92 X2-1b E9.1", "W93 E9.2 X2-2b", "W94 X1-2a G9.-"],
    );
    const bench = benchFor(circuit);
    const lamp = (of: typeof bench) => liveNow(of).shown.parts.get("E9")?.doing;
    expect(lamp(bench)).toBe("on");
    for (const id of ["X1", "X2"]) expect(lamp(after(bench, pullApart(bench, id)))).toBe("off");
  });
});
