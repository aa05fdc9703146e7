import { describe, expect, test } from "vitest";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { partAt, terminalsOf, wireSideOf } from "../../core/circuit/points.ts";
import { benchFor } from "../../core/edit/bench.ts";
import type { Part } from "../../core/parts/kind.ts";
import { pinRoles } from "../../core/parts/module.ts";
import { partAbout } from "../../renderer/editor/partAbout.ts";
import { pinsNamed, roleChanged } from "../../renderer/editor/pinActs.ts";
import { minutesChanged } from "../../renderer/editor/reaching.ts";
import { symbolPicture } from "../../renderer/editor/symbolPicture.ts";
import { after, codeOf, VENTS } from "../edit/given.ts";
import { G1, vehicle } from "../live/vehicle.ts";

const BENCH = benchFor(VENTS);

function partOf(circuit: Circuit, id: string): Part {
  const part = partAt(circuit, id);
  if (!part) throw new Error(`no part ${id}`);
  return part;
}

describe("a part in one line", () => {
  test.each([
    ["S6", "switch, five terminals, springs back both ways"],
    ["S2", "switch, 13 terminals, five controls"],
    ["S1", "ignition switch, two terminals"],
    ["F1", "fuse, two terminals"],
    ["K1", "relay, four terminals"],
  ])("%s is told as %s", (id, words) => {
    expect(partAbout(VENTS, partOf(VENTS, id))).toBe(words);
  });

  test("a module has pins, and some positions spring back where others stay", () => {
    expect(partAbout(VENTS, partOf(VENTS, "U1"))).toMatch(/^control module, \w+ pins$/);
    const key: Part = {
      ...partOf(VENTS, "S1"),
      positions: [
        { name: "off", joins: [] },
        { name: "on", joins: [["30", "15"]] },
        { name: "start", joins: [["30", "15"]], springsBackTo: "on" },
      ],
    };
    expect(partAbout(VENTS, key)).toBe("ignition switch, two terminals, three positions, springs back from start");
  });
});

describe("the picture of a switch", () => {
  test("in another position turns the blades, and the sheet round them keeps its size", () => {
    const [rest, open] = ["rest", "open"].map(
      (name) =>
        symbolPicture(partOf(VENTS, "S6"), 12, { now: undefined, positions: { "": name }, condition: {} }, "iec")!,
    );
    expect(open!.blades).toHaveLength(rest!.blades.length);
    expect(open!.blades).not.toEqual(rest!.blades);
    expect(open!.box).toEqual(rest!.box);
  });
});

describe("names of the pins of a module", () => {
  const U1 = partOf(VENTS, "U1");
  const rolesOf = (circuit: Circuit) => {
    const part = partOf(circuit, "U1");
    return pinRoles({ part, terminals: terminalsOf(circuit, part) });
  };
  const roles = rolesOf(VENTS);
  const names = [...roles.keys()];

  test("a number in place of a word keeps place, role and wires", () => {
    const word = names.find((name) => !/^\d+$/.test(name))!;
    const renamed = names.map((each) => (each === word ? "7" : each));
    const { circuit } = after(BENCH, pinsNamed(U1, roles, renamed)(BENCH));
    expect([...rolesOf(circuit).keys()]).toEqual(renamed);
    expect(rolesOf(circuit).get("7")).toBe(roles.get(word));
    expect(circuit.wires).toHaveLength(VENTS.wires.length);
    expect(wireSideOf(circuit, "U1.7")).toBe(wireSideOf(VENTS, `U1.${word}`).replace(`U1.${word}`, "U1.7"));
  });

  test("what the pins of a new module are follows their names, though it is not written yet", () => {
    const fresh: Part = { id: "U1", kind: U1.kind };
    const bare = vehicle([G1, fresh], []);
    const bench = benchFor(bare);
    const [[first, role]] = [...rolesOf(bare)] as [[string, string]];
    const renamed = [...rolesOf(bare).keys()].map((each) => (each === first ? "rain" : each));
    const { circuit } = after(bench, pinsNamed(fresh, rolesOf(bare), renamed)(bench));
    expect(rolesOf(circuit).get("rain")).toBe(role);
  });

  test("two pins of one name are refused", () => {
    expect(codeOf(pinsNamed(U1, roles, [names[0]!, ...names.slice(0, -1)])(BENCH))).toBe("twice");
  });

  test("a new pin comes last and is not known until it is told", () => {
    const bench = after(BENCH, pinsNamed(U1, roles, [...names, "99"])(BENCH));
    expect([...rolesOf(bench.circuit)].at(-1)).toEqual(["99", "unknown"]);
    const part = partOf(bench.circuit, "U1");
    const told = after(bench, roleChanged(part, rolesOf(bench.circuit), "99", "input")(bench));
    expect(rolesOf(told.circuit).get("99")).toBe("input");
  });
});

describe("minutes to reach a part", () => {
  test("are typed as people write them, and the empty text says nothing of them", () => {
    const timed = after(BENCH, minutesChanged("K1", "4,5")(BENCH));
    expect(timed.circuit.reach.K1).toEqual({ ...VENTS.reach.K1, minutes: 4.5 });
    const silent = after(timed, minutesChanged("K1", " ")(timed));
    expect(silent.circuit.reach.K1).not.toHaveProperty("minutes");
    expect(codeOf(minutesChanged("K1", "soon")(timed))).toMatch(/^amount/);
  });
});
