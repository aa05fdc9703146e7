import { describe, expect, test } from "vitest";
import { controlsOf, partAt, wireSideOf } from "../../core/circuit/points.ts";
import { boundsOfAll } from "../../core/drawing/measure.ts";
import { type Bench, benchFor } from "../../core/edit/bench.ts";
import { relabelPart } from "../../core/edit/commands/relabelPart.ts";
import { apply } from "../../core/edit/edit.ts";
import { KINDS } from "../../core/parts/catalogue.ts";
import type { Part } from "../../core/parts/kind.ts";
import { pinRoles } from "../../core/parts/module.ts";
import { arranged, arrangements, firstRows, placeNamed, rowsWords } from "../../renderer/editor/faceRows.ts";
import { inTurn } from "../../renderer/editor/inTurn.ts";
import { asked, rowWords } from "../../renderer/editor/moduleWords.ts";
import { pinsNamed, roleChanged } from "../../renderer/editor/pinActs.ts";
import { looseTerminals, plugAdded, takesPlug } from "../../renderer/editor/plugs.ts";
import { behindNew, minutesChanged, reachChanged, reachKey } from "../../renderer/editor/reaching.ts";
import { symbolPicture, withOne } from "../../renderer/editor/symbolPicture.ts";
import { tableControls } from "../../renderer/editor/tableControls.ts";
import type { Command } from "../../renderer/state/action.ts";
import { plugsOf } from "../../renderer/state/places.ts";
import { after, codeOf, got, VENTS } from "../edit/given.ts";

const BENCH = benchFor(VENTS);

function part(id: string, { circuit }: Bench = BENCH): Part {
  return partAt(circuit, id)!;
}

function made(command: Command, bench: Bench = BENCH): Bench {
  return after(bench, command(bench));
}

describe("several commands as one edit", () => {
  const twice = inTurn(
    (bench) => relabelPart(bench, "S6", "One"),
    (bench) => relabelPart(bench, "S6", `${part("S6", bench).label} and two`),
  );

  test("each is asked of the bench that those before it leave, and one inverse takes all back", () => {
    const edit = got(twice(BENCH));
    const { bench, inverse } = got(apply(BENCH, edit));
    expect(part("S6", bench).label).toBe("One and two");
    expect(edit.name).toBe(got(relabelPart(BENCH, "S6", "One")).name);
    expect(got(apply(bench, inverse)).bench.circuit).toEqual(VENTS);
  });

  test("a later refusal refuses all", () => {
    const command = inTurn(
      (bench) => relabelPart(bench, "S6", "One"),
      (bench) => relabelPart(bench, "nothing", "Two"),
    );
    expect(codeOf(command(BENCH))).toBe("part-unknown");
  });
});

describe("the face of a connector", () => {
  const SIX = [
    ["1", "2", "3"],
    ["4", "5", "6"],
  ];

  test("in words", () => {
    expect(rowsWords(SIX)).toBe("2 rows of 3");
    expect(rowsWords([["1", "2"]])).toBe("1 row of 2");
    expect(
      rowsWords([
        ["1", "2", "3"],
        ["4", "5"],
      ]),
    ).toBe("rows of 3 and 2");
  });

  test("set out otherwise keeps the places in order; fewer lose the last, more are numbered on", () => {
    expect(arranged(SIX, 1, 6)).toEqual([["1", "2", "3", "4", "5", "6"]]);
    expect(arranged(SIX, 2, 2)).toEqual([
      ["1", "2"],
      ["3", "4"],
    ]);
    expect(arranged([["30", "L"]], 2, 2)).toEqual([
      ["30", "L"],
      ["31", "32"],
    ]);
  });

  test("every full arrangement is offered, and the one that is there", () => {
    expect(arrangements(SIX).map(rowsWords)).toEqual(["1 row of 6", "2 rows of 3", "3 rows of 2"]);
    expect(
      arrangements([
        ["1", "2", "3"],
        ["4", "5", ""],
      ])[0],
    ).toEqual([
      ["1", "2", "3"],
      ["4", "5", ""],
    ]);
  });

  test("a place called otherwise stays where it is; one that goes leaves a gap, at the end of a row none", () => {
    expect(placeNamed(SIX, "2", "L")).toEqual([
      ["1", "L", "3"],
      ["4", "5", "6"],
    ]);
    expect(placeNamed(SIX, "2", "")).toEqual([
      ["1", "", "3"],
      ["4", "5", "6"],
    ]);
    expect(placeNamed(SIX, "6", "")).toEqual([
      ["1", "2", "3"],
      ["4", "5"],
    ]);
    expect(placeNamed([["1"], ["2"]], "2", "")).toEqual([["1"]]);
  });

  test("a new one bears the numbers of the terminals where all have one", () => {
    expect(firstRows(["2", "1", "6", "4", "5"])).toEqual([
      ["1", "2", "4"],
      ["5", "6"],
    ]);
    expect(firstRows(["30", "L"])).toEqual([["1", "2"]]);
  });
});

describe("the connectors of a part", () => {
  test("are those that carry its terminals, or the face of a joint", () => {
    expect(plugsOf(VENTS, part("S6")).map(({ id }) => id)).toEqual(["X6"]);
    expect(plugsOf(VENTS, part("X7")).map(({ id }) => id)).toEqual(["X7"]);
    expect(looseTerminals(VENTS, part("S6"))).toEqual([]);
    expect(takesPlug(part("SP1"))).toBe(false);
  });

  test("a new one carries every loose terminal, and the wires go over to it, in one edit", () => {
    const bench = made(plugAdded(VENTS, part("S2")));
    const loose = looseTerminals(VENTS, part("S2"));
    expect(loose.length).toBeGreaterThan(4);
    expect(looseTerminals(bench.circuit, part("S2"))).toEqual([]);
    const [plug] = plugsOf(bench.circuit, part("S2"));
    expect(Object.values(plug!.cavities!)).toEqual(loose.map((terminal) => `S2.${terminal}`));
    const ends = bench.circuit.wires.flatMap(({ from, to }) => [from, to]);
    expect(ends.filter((end) => end.startsWith("S2."))).toEqual([]);
    expect(ends).toContain(wireSideOf(bench.circuit, "S2.30"));
  });
});

describe("how a part is reached", () => {
  test("is written of its plug where only that says it, else of itself", () => {
    const { X6: _, S6: __, ...others } = VENTS.reach;
    expect(reachKey({ ...VENTS, reach: { ...others, X6: { minutes: 1 } } }, part("S6"))).toBe("X6");
    expect(reachKey({ ...VENTS, reach: { ...others, X6: { minutes: 1 }, S6: {} } }, part("S6"))).toBe("S6");
    expect(reachKey({ ...VENTS, reach: others }, part("S6"))).toBe("S6");
  });

  test("one thing changes and the rest stays", () => {
    const bench = made(minutesChanged("K1", "4 min"));
    expect(bench.circuit.reach.K1).toEqual({ ...VENTS.reach.K1, minutes: 4 });
    expect(made(minutesChanged("K1", ""), bench).circuit.reach.K1).toEqual(VENTS.reach.K1);
    expect(codeOf(minutesChanged("K1", "soon")(BENCH))).toBe("amount-spelling");
    expect(made(reachChanged("K1", "access", undefined)).circuit.reach.K1).toBeUndefined();
  });

  test("a new group and the part behind it are one edit", () => {
    const { access, reach } = made(behindNew("K1", "Glove box out", "6")).circuit;
    expect(access.at(-1)).toMatchObject({ label: "Glove box out", minutes: 6 });
    expect(reach.K1?.access).toBe(access.at(-1)?.id);
    expect(codeOf(behindNew("K1", " ", "6")(BENCH))).toBe("label-empty");
  });
});

describe("which parts have a table", () => {
  test("every control of the sample that joins anything, none of what keeps its own", () => {
    for (const { part: each } of controlsOf(VENTS)) expect(tableControls(BENCH, each).length).toBeGreaterThan(0);
    for (const id of ["K1", "M1", "F1", "U1", "SP1"]) expect(tableControls(BENCH, part(id))).toEqual([]);
  });

  test("a switch that writes none yet begins with its rest; a potentiometer has none", () => {
    const bench: Bench = {
      ...BENCH,
      circuit: {
        ...VENTS,
        parts: [...VENTS.parts, { id: "S90", kind: "switch" }, { id: "R90", kind: "potentiometer" }],
      },
    };
    expect(tableControls(bench, part("S90", bench))).toEqual([{ name: "", positions: [{ name: "rest", joins: [] }] }]);
    expect(tableControls(bench, part("R90", bench))).toEqual([]);
  });
});

describe("the pins of a module", () => {
  const U1 = part("U1");
  const roles = pinRoles({ part: U1, terminals: Object.keys(U1.pins!) });

  test("one is said to be another thing, and the rest stay", () => {
    const now = part("U1", made(roleChanged(U1, roles, "lock", "unknown")));
    expect(now.pins).toEqual({ ...U1.pins, lock: "unknown" });
  });

  test("a name takes its wire and its place in the table along", () => {
    const names = [...roles.keys()].map((pin) => (pin === "rain" ? "wet" : pin));
    const bench = made(pinsNamed(U1, roles, names));
    const { pins, table } = part("U1", bench);
    expect(Object.entries(pins!).sort()).toEqual(
      Object.entries(U1.pins!)
        .map(([pin, role]) => [pin === "rain" ? "wet" : pin, role])
        .sort(),
    );
    expect(table?.[0]?.when).toHaveProperty("wet");
    expect(wireSideOf(bench.circuit, "U1.wet")).toBe(wireSideOf(VENTS, "U1.rain"));
  });

  test("a row in words, and asked otherwise", () => {
    const row = { when: { rain: "high", lock: "low" }, joins: [["30", "close"]] } as const;
    expect(rowWords(row)).toBe("rain high and lock low: 30 and close joined");
    expect(rowWords({ when: {}, joins: [] })).toBe("always: nothing joined");
    expect(asked(row, "lock", null).when).toEqual({ rain: "high" });
    expect(asked(row, "lock", "high").when).toEqual({ rain: "high", lock: "high" });
  });
});

describe("the picture of a part", () => {
  const stand = { now: undefined, positions: null, condition: {} };

  test("every kind has one, with all of its ink in the box", () => {
    for (const kind of KINDS) {
      const picture = symbolPicture({ id: "A1", kind: kind.name }, 12, stand, "iec");
      const { under, blades, over, box } = picture!;
      const ink = boundsOfAll([...under, ...blades, ...over])!;
      const [left, top, width, height] = box;
      expect(left, kind.name).toBeLessThan(ink.left);
      expect(top, kind.name).toBeLessThan(ink.top);
      expect(left + width, kind.name).toBeGreaterThan(ink.right);
      expect(top + height, kind.name).toBeGreaterThan(ink.bottom);
    }
  });

  test("blades lie as the position says", () => {
    const tips = (position: string) =>
      symbolPicture(part("S6"), 12, { ...stand, positions: { "": position } }, "iec")!.blades.map(
        ({ spots }) => spots.at(-1)!.x,
      );
    expect(tips("open")).not.toEqual(tips("rest"));
    expect(tips("close")).not.toEqual(tips("open"));
  });

  test("of a panel one control is drawn, with the terminals that it joins", () => {
    const S2 = part("S2");
    const [first] = S2.controls!;
    const one = withOne(S2, first!);
    expect(one.positions).toBe(first!.positions);
    expect(new Set(one.terminals)).toEqual(new Set(first!.positions.flatMap(({ joins }) => joins.flat())));
    expect(withOne(part("S6"), { name: "", positions: [] })).toBe(part("S6"));
  });
});
