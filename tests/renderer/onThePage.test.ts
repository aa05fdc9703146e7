import { describe, expect, test } from "vitest";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { controlsOf } from "../../core/circuit/points.ts";
import { sheetOf } from "../../core/circuit/sheet.ts";
import { liveOf } from "../../core/live/live.ts";
import { SheetIndex } from "../../renderer/canvas/sheetIndex.ts";
import type { Shown } from "../../renderer/canvas/shown.ts";
import { standingOn } from "../../renderer/canvas/standing.ts";
import { nextPosition, standsIn, thrownTo, throwsOn } from "../../renderer/canvas/throwPlaces.ts";
import { HAND } from "../../renderer/canvas/tool.ts";
import { NO_MARGINS } from "../../renderer/canvas/viewport.ts";
import { firstPoint, nextPart, readingOrder, walked } from "../../renderer/canvas/walking.ts";
import { got, VENTS } from "../edit/given.ts";
import { SAMPLE_NAMES, sample } from "../samples/onTheBench.ts";

const SAMPLES: readonly (readonly [string, Circuit])[] = SAMPLE_NAMES.map((name) => [name, sample(name)] as const);
const LOOKS = ["iec", "na"] as const;

/** What is met on a page of the vents, at rest and in black of IEC. */
function indexOf(page: string) {
  const live = liveOf(VENTS);
  const { marks } = got(sheetOf({ circuit: VENTS, page, live, framed: false }));
  const standing = standingOn(VENTS, page, "iec");
  const { places } = throwsOn(VENTS, page, "iec");
  return {
    marks,
    standing,
    places,
    index: new SheetIndex(marks, new Set(VENTS.wires.map(({ id }) => id)), standing, places),
  };
}

describe("what a pointer meets", () => {
  const { index, standing, places } = indexOf("p2");
  /** A pixel at 100 %, in grid units of 2.5 mm. */
  const pixel = 25.4 / 96 / 2.5;

  test("a pin is met within 12 pixels on every side, and no farther, at any zoom", () => {
    const points = [...standing.points];
    const lone = points.find(([, { x, y }]) => {
      const others = [
        ...points.map(([, at]) => at),
        ...places.map(({ tip }) => tip),
        ...places.map(({ foot }) => foot),
      ];
      return others.every((at) => (at.x === x && at.y === y) || Math.hypot(at.x - x, at.y - y) > 3.9);
    });
    const [id, { x, y }] = lone!;
    for (const size of [pixel, pixel / 4]) {
      const hits = [11.9, -11.9].flatMap((off) => [
        index.hitAt({ x: x + off * size, y }, size),
        index.hitAt({ x, y: y + off * size }, size),
      ]);
      expect(hits.map((hit) => hit?.thing)).toEqual(hits.map(() => ({ is: "point", id })));
      const beyond = [12.1, -12.1].map((off) => index.hitAt({ x: x + off * size, y: y + off * size }, size));
      expect(beyond.filter((hit) => hit?.thing.is === "point")).toEqual([]);
    }
  });

  test("every pin of every page is met where it stands", () => {
    for (const { id: page } of VENTS.pages) {
      const on = indexOf(page);
      for (const [id, at] of on.standing.points) {
        const met = on.index.hitAt(at, pixel)?.thing;
        const lies = met && on.standing.points.get(met.id);
        expect({ id, at: lies && [lies.x, lies.y] }).toEqual({ id, at: [at.x, at.y] });
      }
    }
  });

  test("between two pins the nearer is met", () => {
    const [[, real] = []] = standing.points;
    const points = new Map([3, 5].map((x) => [`P${x}`, { ...real!, x, y: 4 }]));
    const place = { ...places[0]!, foot: { x: 4, y: 9 }, tip: { x: 4, y: 5 } };
    const two = new SheetIndex([], new Set(), { parts: new Map(), points, spots: points }, [place]);
    const met = (x: number, y: number) => {
      const hit = two.hitAt({ x, y }, pixel);
      return hit?.place ? "place" : hit?.thing.id;
    };
    expect([met(3.1, 4), met(3.9, 3.5), met(4.1, 3.5), met(4.9, 4)]).toEqual(["P3", "P3", "P5", "P5"]);
    expect([met(4, 4.9), met(3.3, 4.2), met(4, 8.9)]).toEqual(["place", "P3", undefined]);
  });

  test("the tip of every blade's place is met as that place or one on the same tip", () => {
    for (const place of places) {
      const met = index.hitAt(
        { x: place.foot.x * 0.3 + place.tip.x * 0.7, y: place.foot.y * 0.3 + place.tip.y * 0.7 },
        pixel / 6,
      );
      expect(met?.place?.control).toBe(place.control);
    }
  });

  test("a wire is met beside its line, and bare paper is nothing", () => {
    expect(index.hitAt({ x: -50, y: -50 }, pixel)).toBeNull();
    const { marks } = indexOf("p2");
    const line = marks.find((mark) => mark.mark === "line" && mark.of === "W13");
    if (line?.mark !== "line") throw new Error("W13 is not drawn");
    const [from, to] = line.spots.slice(0, 2) as [{ x: number; y: number }, { x: number; y: number }];
    const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
    expect(index.hitAt(middle, pixel / 8)?.thing).toEqual({ is: "wire", id: "W13" });
  });
});

describe.each(SAMPLES)("places to throw to on %s", (_, circuit) => {
  test.each(LOOKS)("every control with blades can be thrown to each of its positions and back (%s)", (look) => {
    for (const { id: page } of circuit.pages) {
      const { places, controls } = throwsOn(circuit, page, look);
      for (const control of controls.values()) {
        const own = places.filter((place) => place.control === control.key);
        if (own.length === 0) continue;
        // By clicks alone: on a blade's other place, or again and again on the one it lies in.
        const reached = new Set([control.positions[0]!]);
        for (let round = 0; round < control.positions.length; round++) {
          for (const now of [...reached]) for (const place of own) reached.add(thrownTo(place, control, now));
        }
        expect([...reached].toSorted()).toEqual(control.positions.toSorted());
      }
    }
  });

  test.each(LOOKS)("a click where the blade would lie brings it there (%s)", (look) => {
    for (const { id: page } of circuit.pages) {
      const { places, controls } = throwsOn(circuit, page, look);
      for (const place of places) {
        const control = controls.get(place.control)!;
        for (const now of control.positions.filter((position) => !place.positions.includes(position)))
          expect(place.positions).toContain(thrownTo(place, control, now));
      }
    }
  });

  test("positions and springs are those of the circuit", () => {
    const known = new Map(controlsOf(circuit).map((control) => [control.key, control]));
    for (const { id: page } of circuit.pages) {
      for (const { key, positions, springs } of throwsOn(circuit, page, "iec").controls.values()) {
        const { control } = known.get(key)!;
        expect(positions).toEqual(control.positions.map(({ name }) => name));
        expect([...springs.keys()]).toEqual(
          control.positions.filter(({ springsBackTo }) => springsBackTo !== undefined).map(({ name }) => name),
        );
      }
    }
  });
});

describe("throwing by clicks", () => {
  const { controls, places } = throwsOn(VENTS, "p2", "iec");
  const control = controls.get("S6")!;

  test("goes round, and lets go of what springs back", () => {
    expect(nextPosition(control, "rest")).toBe("open");
    expect(nextPosition(control, "open")).toBe("rest");
    const latching = controls.get("S2.lock-out")!;
    expect([nextPosition(latching, "off"), nextPosition(latching, "on")]).toEqual(["on", "off"]);
  });

  test("where it stands is what the condition sets, else its rest", () => {
    expect(standsIn(control, {})).toBe("rest");
    expect(standsIn(control, { set: { S6: "close" } })).toBe("close");
  });

  test("a place that is left at rest throws back to rest", () => {
    const resting = places.find((place) => place.control === "S6" && place.positions.includes("rest"))!;
    const other = control.positions.find((position) => !resting.positions.includes(position))!;
    expect(thrownTo(resting, control, other)).toBe("rest");
  });
});

describe("walking by the keys", () => {
  const live = liveOf(VENTS, { set: { S1: "on", S6: "open" } });
  const shown = (selection: Shown["selection"]): Shown => ({
    circuit: VENTS,
    page: "p2",
    live,
    palette: "light",
    look: "iec",
    keys: {},
    viewport: null,
    selection,
    also: [],
    tool: HAND,
    hover: null,
    knots: [],
    readings: [],
    leads: [],
    faults: [],
    flagged: [],
    suspects: [],
    different: new Set(),
    full: null,
    wish: null,
    papers: [],
    margins: NO_MARGINS,
  });

  test("onward along a wire and back again comes to where it began", () => {
    const wire = { is: "wire", id: "W46" } as const;
    const ahead = walked(shown(wire), "onward");
    const behind = walked(shown(wire), "back");
    expect(ahead?.is).toBe("point");
    expect(behind?.is).toBe("point");
    expect(ahead).not.toEqual(behind);
  });

  test("onward from the battery comes to its other post, never in a circle", () => {
    const been: string[] = [];
    let at: Shown["selection"] = { is: "point", id: "G1.+" };
    while (at && !been.includes(at.id) && been.length < 200) {
      been.push(at.id);
      at = walked(shown(at), "onward");
    }
    expect(been.length).toBeGreaterThan(3);
    expect(at === null || at.id === "G1.-" || been.at(-1) === "G1.-").toBe(true);
  });

  test("neighbours at a branching go round", () => {
    const branch = { is: "point", id: "SP1.3" } as const;
    const seen: string[] = [];
    let at: Shown["selection"] = branch;
    do {
      at = walked(shown(at), "next");
      if (at) seen.push(at.id);
    } while (at && at.id !== branch.id && seen.length < 20);
    expect(seen.toSorted()).toEqual(["SP1.1", "SP1.2", "SP1.3", "SP1.4"]);
    expect(walked(shown(branch), "previous")?.id).toBe(seen.at(-2));
  });

  test("a part or nothing leads nowhere", () => {
    expect(walked(shown(null), "onward")).toBeNull();
    expect(walked(shown({ is: "part", id: "S6" }), "onward")).toBeNull();
    expect(walked(shown({ is: "wire", id: "W999" }), "onward")).toBeNull();
    expect(walked(shown({ is: "wire", id: "W46" }), "next")).toBeNull();
  });

  test("parts are read row by row, round and round", () => {
    const standing = standingOn(VENTS, "p2", "iec");
    const order = readingOrder(standing).map(({ part }) => part.id);
    expect(order.toSorted()).toEqual([...standing.parts.keys()].toSorted());
    let at: Shown["selection"] = null;
    for (const part of [...order, order[0]]) {
      const next: string | null = nextPart(standing, at, "next");
      expect(next).toBe(part);
      at = { is: "part", id: next! };
    }
    expect(nextPart(standing, null, "previous")).toBe(order.at(-1));
    expect(nextPart(standing, { is: "part", id: order[0]! }, "previous")).toBe(order.at(-1));
  });

  test("a part begins at one of its own points", () => {
    const standing = standingOn(VENTS, "p2", "iec");
    expect(standing.points.get(firstPoint(standing, "S6")!)?.part).toBe("S6");
    expect(firstPoint(standing)).not.toBeNull();
    expect(firstPoint(standing, "S1")).toBeNull();
  });
});
