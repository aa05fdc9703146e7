import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { armsOf } from "../../core/parts/contactArms.ts";
import { busDistance, type ContactLayout, layOut } from "../../core/parts/contactLayout.ts";
import { contactGroups } from "../../core/parts/contacts.ts";
import type { Around, Part, Position } from "../../core/parts/kind.ts";
import { handSwitch } from "../../core/parts/switch.ts";
import { viewOf } from "../../core/parts/view.ts";
import { PANEL, position, STALK, VENT_SWITCH } from "../contracts/sampleParts.ts";

function standing(positions: Readonly<Record<string, string>>): Around {
  return { positions, drive: {}, engineRunning: false, ambientC: 20, nominalVolts: 12 };
}

function closed(part: Part, positions: Readonly<Record<string, string>> = {}): readonly string[] {
  return handSwitch.closed(viewOf(handSwitch, part, 12), "", standing(positions));
}

function modes(part: Part): readonly string[] {
  return handSwitch.faults(viewOf(handSwitch, part, 12)).map(({ mode }) => mode);
}

describe("a continuity table", () => {
  test("closes the joins of the present position, and of rest where none is known", () => {
    expect(closed(VENT_SWITCH, { "": "open" })).toEqual(["4-6", "5-2"]);
    expect(closed(VENT_SWITCH, { "": "close" })).toEqual(["4-1", "5-6"]);
    expect(closed(VENT_SWITCH)).toEqual(["4-1", "5-2"]);
    expect(closed(VENT_SWITCH, { "": "halfway" })).toEqual(["4-1", "5-2"]);
  });

  test("breaks before it makes: in no position is a motor lead on feed and return at once", () => {
    for (const name of ["rest", "open", "close"]) {
      const keys = closed(VENT_SWITCH, { "": name });
      expect(keys.filter((key) => key.startsWith("4-"))).toHaveLength(1);
      expect(keys.filter((key) => key.startsWith("5-"))).toHaveLength(1);
    }
  });

  test("knows a pair by the way it was first written", () => {
    const part: Part = { id: "S1", kind: "switch", positions: [position("a", "1-2"), position("b", "2-1")] };
    expect(closed(part, { "": "b" })).toEqual(["1-2"]);
  });

  test("adds up the controls of a panel", () => {
    expect(closed(PANEL, { left: "open" })).toEqual(["L-O", "1-F", "2-R", "3-R", "4-R"]);
  });

  test("gives a pair that two controls join a contact for each", () => {
    const part: Part = {
      id: "S1",
      kind: "switch",
      controls: [
        { name: "front", positions: [position("off"), position("on", "1-2")] },
        { name: "Rear seat", positions: [position("off"), position("on", "2-1")] },
      ],
    };
    expect(closed(part, { front: "on" })).toEqual(["1-2"]);
    expect(closed(part, { "Rear seat": "on" })).toEqual(["2-1-in-rear-seat"]);
  });

  test("leaves out joins of terminals that the part does not have, or of one with itself", () => {
    const part: Part = {
      id: "S1",
      kind: "switch",
      terminals: ["1", "2"],
      positions: [position("on", "1-2", "1-9", "2-2")],
    };
    expect(closed(part)).toEqual(["1-2"]);
  });

  test("of a part without positions is empty, and the part has two terminals", () => {
    const part: Part = { id: "S1", kind: "switch" };
    const view = viewOf(handSwitch, part, 12);
    expect([view.controls, view.terminals, handSwitch.model(view), handSwitch.faults(view)]).toEqual([
      [],
      ["1", "2"],
      [],
      [],
    ]);
  });
});

describe("the faults of a switch", () => {
  test("name each contact by itself, and no stuck-closed where it is closed in every position", () => {
    const part: Part = { id: "S1", kind: "switch", positions: [position("off", "1-2"), position("on", "1-2", "1-3")] };
    expect(modes(part)).toEqual([
      "left-in-off",
      "left-in-on",
      "stuck-open-1-2",
      "ohms-1-2",
      "stuck-open-1-3",
      "ohms-1-3",
      "stuck-closed-1-3",
    ]);
  });

  test("leave out positions that spring back", () => {
    expect(modes(VENT_SWITCH).filter((mode) => mode.startsWith("left-in"))).toEqual(["left-in-rest"]);
  });

  test("name the control where there are several", () => {
    expect(modes(PANEL).filter((mode) => mode.startsWith("left-in"))).toEqual([
      "left-in-lock-out-off",
      "left-in-lock-out-on",
      "left-in-left-rest",
      "left-in-right-rest",
    ]);
  });
});

/** The arms of a part as text: foot, then throws from left to right, the one of rest in brackets. */
function drawn(part: Part): readonly string[] {
  const { groups } = armsOf(contactGroups(viewOf(handSwitch, part, 12)));
  return groups.flat().map(({ foot, rest, throws }) => {
    const names = throws.map(({ key, terminal }) => (key === rest ? `(${terminal})` : terminal));
    return `${foot}: ${names.join(" ")}`;
  });
}

describe("the blades of a continuity table", () => {
  test("of a vent switch are two change-overs with the feed shared between them", () => {
    expect(drawn(VENT_SWITCH)).toEqual(["4: (1) 6", "5: 6 (2)"]);
  });

  test("of a panel turn the shared feed inwards for each pair", () => {
    expect(drawn(PANEL)).toEqual(["O: (L)", "1: (R) F", "2: F (R)", "3: (R) F", "4: F (R)"]);
  });

  test("of a fan switch are one arm with a throw for each speed", () => {
    const part: Part = {
      id: "S9",
      kind: "switch",
      positions: [position("off"), position("1", "B-1"), position("2", "B-2"), position("3", "B-3")],
    };
    expect(drawn(part)).toEqual(["B: 1 2 3"]);
  });

  test("of contacts closed together are make contacts with what they share at the top", () => {
    const part: Part = {
      id: "S8",
      kind: "switch",
      positions: [position("off"), position("park", "30-58"), position("low", "30-58", "30-56")],
    };
    expect(drawn(part)).toEqual(["58: 30", "56: 30"]);
  });

  test("of a stalk are a pole and a make contact side by side", () => {
    expect(drawn(STALK)).toEqual(["53: (31b) 53a", "53b: 53a"]);
  });
});

interface Run {
  readonly terminal: string;
  readonly way: "level" | "upright";
  /** The y of a level run, the x of an upright one. */
  readonly at: number;
  readonly from: number;
  readonly to: number;
}

/** Every lead and bus of a field, by the terminal it belongs to. */
function leads(layout: ContactLayout): readonly Run[] {
  const runs: Run[] = [];
  const add = (terminal: string, way: Run["way"], at: number, ends: readonly number[]): void => {
    runs.push({ terminal, way, at, from: Math.min(...ends), to: Math.max(...ends) });
  };
  const risers = new Map<string, number[]>();
  for (const row of ["top", "foot"] as const) {
    const [ringY, outline, away] = row === "top" ? [layout.topY, 0, -1] : [layout.footY, layout.height, 1];
    for (const { level, riser, rings, stands, terminal } of layout.rows[row]) {
      const busY = level === null ? ringY : ringY + away * busDistance(level);
      for (const x of rings) add(terminal, "upright", x, [ringY, busY]);
      if (stands !== null) add(terminal, "upright", stands, [outline, busY]);
      if (level === null) continue;
      const at = [...rings, stands ?? rings[0]!, riser ?? rings[0]!];
      add(terminal, "level", busY, at);
      if (riser !== null) risers.set(terminal, [...(risers.get(terminal) ?? []), riser, busY]);
    }
  }
  for (const [terminal, [x, one, , other]] of risers)
    if (other !== undefined) add(terminal, "upright", x!, [one!, other]);
  return runs;
}

const NAMES = ["1", "2", "3", "4", "5", "6"];
const join = fc.tuple(fc.constantFrom(...NAMES), fc.constantFrom(...NAMES)).filter(([a, b]) => a !== b);
const tables = fc
  .array(fc.array(join, { maxLength: 4 }), { minLength: 1, maxLength: 5 })
  .map((positions) => positions.map((joins, index): Position => ({ name: `${index}`, joins })));
const parts = fc.oneof(
  tables.map((positions): Part => ({ id: "S1", kind: "switch", terminals: NAMES, positions })),
  fc.tuple(tables, tables).map(
    ([one, two]): Part => ({
      id: "S1",
      kind: "switch",
      terminals: NAMES,
      controls: [
        { name: "one", positions: one },
        { name: "two", label: "A label of some length", positions: two },
      ],
    }),
  ),
);
const SEED = { seed: 552, numRuns: 400 };

describe("the symbol of any continuity table", () => {
  test("stands every terminal on a whole grid point of its outline, four or more from the next in its row", () => {
    fc.assert(
      fc.property(parts, (part) => {
        const view = viewOf(handSwitch, part, 12);
        const { height, terminals, width } = handSwitch.symbol(
          view,
          { closed: new Set(), rest: new Set(), state: "" },
          "iec",
        );
        expect(Object.keys(terminals).sort()).toEqual(NAMES);
        for (const row of [0, height]) {
          const xs = Object.values(terminals)
            .flatMap(({ x, y }) => (y === row ? [x] : []))
            .sort((one, other) => one - other);
          for (const x of xs) expect(Number.isInteger(x) && x >= 2 && x <= width - 2).toBe(true);
          for (let index = 1; index < xs.length; index++) expect(xs[index]! - xs[index - 1]!).toBeGreaterThanOrEqual(4);
        }
      }),
      SEED,
    );
  });

  test("draws each contact once, as one throw of one arm, and never two of an arm that close together", () => {
    fc.assert(
      fc.property(parts, (part) => {
        const groups = contactGroups(viewOf(handSwitch, part, 12));
        armsOf(groups).groups.forEach((arms, index) => {
          const { contacts, positions } = groups[index]!;
          const keys = arms.flatMap(({ throws }) => throws.map(({ key }) => key));
          expect([...keys].sort()).toEqual(contacts.map(({ key }) => key).sort());
          for (const { throws } of arms) {
            for (const { keys: now } of positions) {
              expect(throws.filter(({ key }) => now.includes(key)).length).toBeLessThanOrEqual(1);
            }
          }
        });
      }),
      SEED,
    );
  });

  test("lets the leads of two terminals cross, but never run over one another or end on one another", () => {
    fc.assert(
      fc.property(parts, (part) => {
        const view = viewOf(handSwitch, part, 12);
        const labels = view.controls.length > 1;
        const runs = leads(layOut(contactGroups(view), view.terminals, { left: 2, under: 0, labels }));
        for (const one of runs) {
          for (const other of runs) {
            if (one.terminal === other.terminal || one.way !== other.way || Math.abs(one.at - other.at) > 0.2) continue;
            expect(one.to < other.from - 0.2 || other.to < one.from - 0.2, JSON.stringify([part, one, other])).toBe(
              true,
            );
          }
        }
      }),
      SEED,
    );
  });

  test("draws a bold blade for each closed contact, and a ghost where rest is another place", () => {
    const view = viewOf(handSwitch, VENT_SWITCH, 12);
    const pose = { closed: new Set(["4-6", "5-2"]), rest: new Set(["4-1", "5-2"]), state: "" };
    const roles = handSwitch
      .symbol(view, pose, "iec")
      .marks.map(({ mark, ...rest }) => ("role" in rest ? `${mark} ${rest.role}` : mark));
    expect(roles.filter((role) => role === "line contact-now")).toHaveLength(2);
    expect(roles.filter((role) => role === "line contact-rest")).toHaveLength(1);
    expect(roles.filter((role) => role === "line link")).toHaveLength(1);
  });
});
