import { describe, expect, test } from "vitest";
import { lotsFrom } from "../../core/base/seed.ts";
import type { Places } from "../../core/circuit/arrange.ts";
import { answeredPlaces, arrangeRoom, presentPlaces } from "../../core/circuit/arrangePlaces.ts";
import { polished, WARM } from "../../core/circuit/arrangePolish.ts";
import { arrangeQuestion } from "../../core/circuit/arrangeQuestion.ts";
import { refined } from "../../core/circuit/arrangeRefine.ts";
import { boxOf, spreadAt } from "../../core/circuit/arrangeSpread.ts";
import { bendsOf, plainWay } from "../../core/circuit/arrangeWay.ts";
import { heightsOf } from "../../core/circuit/heights.ts";
import { overlaps } from "../../core/circuit/sheetRoom.ts";
import { SMALL, VENTS } from "../edit/given.ts";

const PAGE = VENTS.pages[0]!;
const STANDING = VENTS.parts.map(({ id }) => id).filter((id) => VENTS.placement.parts[id]?.page === PAGE.id);
const question = arrangeQuestion(VENTS, PAGE.id, new Set(STANDING));
const room = arrangeRoom(VENTS, PAGE, question);

describe("heights", () => {
  test("lie between ground and feed, and every wire of the sample that carries current falls towards ground", () => {
    const heights = heightsOf(VENTS);
    for (const height of heights.values()) expect(height >= 0 && height <= 1).toBe(true);
    expect(heights.get("G1.+")).toBe(1);
    const at = (point: string): number => heights.get(point)!;
    expect(at("F1.1")).toBeGreaterThan(0);
    for (const { from, to } of VENTS.wires) if (from === "G1.+") expect(at(to)).toBeLessThan(1);
  });

  test("do not depend on where parts stand", () => {
    const moved = { ...VENTS, placement: { parts: {}, wires: {} } };
    expect([...heightsOf(moved)]).toEqual([...heightsOf(VENTS)]);
  });
});

describe("the layout question", () => {
  test("has every part of the page with its wired terminals on its edge, and every wire between two of them", () => {
    expect(question.nodes.map(({ id }) => id)).toEqual(STANDING);
    const ports = new Set(question.nodes.flatMap(({ poses }) => poses[0].ports.map(({ id }) => id)));
    expect(question.edges.length).toBeGreaterThan(3);
    for (const { from, to } of question.edges) expect(ports.has(from) && ports.has(to)).toBe(true);
    for (const { poses } of question.nodes) {
      for (const { width, height, ports: own } of poses) {
        for (const { x, y } of own) expect(x >= 0 && x <= width && y >= 0 && y <= height).toBe(true);
      }
    }
  });

  test("turns a battery plus up, a ground stud up and a fuse with its feed side up or left", () => {
    const upsideDown = Object.fromEntries(
      Object.entries(VENTS.placement.parts).map(([id, place]) => [id, { ...place, turn: 180 as const }]),
    );
    const turned = { ...VENTS, placement: { parts: upsideDown, wires: {} } };
    const { nodes } = arrangeQuestion(turned, PAGE.id, new Set(STANDING));
    const sideOf = (part: string, terminal: string) =>
      nodes.find(({ id }) => id === part)!.poses[0].ports.find(({ id }) => id === `${part} ${terminal}`)?.side;
    expect(sideOf("G1", "+")).toBe("up");
    expect(sideOf("GP1", "stud")).toBe("up");
  });

  test("leaves out parts that stay and are wired to none that move, and keeps the turn of those that stay", () => {
    const [one] = STANDING;
    const few = arrangeQuestion(VENTS, PAGE.id, new Set([one!]));
    expect(few.nodes.length).toBeLessThan(question.nodes.length);
    for (const { id, isFixed, poses } of few.nodes) {
      expect(isFixed).toBe(id !== one);
      if (isFixed) expect(poses[0].turn).toBe(VENTS.placement.parts[id]!.turn ?? 0);
    }
  });
});

describe("places", () => {
  test("are on the page whatever the answer says, and null where the page has no room", () => {
    const lots = lotsFrom(3);
    const answer = Object.fromEntries(STANDING.map((id) => [id, { x: lots() * 900 - 300, y: lots() * 900 - 300 }]));
    const places = answeredPlaces(question, answer, room)!;
    expect([...places.keys()].toSorted()).toEqual(STANDING.toSorted());
    for (const { x, y } of places.values()) {
      expect(Number.isInteger(x) && Number.isInteger(y)).toBe(true);
      expect(x >= room.area.left && y >= room.area.top).toBe(true);
    }
    const tight = { ...room, area: { ...room.area, right: room.area.left + 9 } };
    expect(answeredPlaces(question, answer, tight)).toBeNull();
  });

  test("straightened from one seed twice are the same places", () => {
    const present = presentPlaces(question, room)!;
    const twice = [polished(question, present, room, 5, WARM), polished(question, present, room, 5, WARM)];
    expect([...twice[0]!]).toEqual([...twice[1]!]);
  });

  test("refined are never dearer than those given, laid no more often than allowed, and lie on nothing", () => {
    const given = presentPlaces(question, room)!;
    // Anything that can be priced will do: here, how far from the left the parts stand.
    let asked = 0;
    const price = (places: Places): number => {
      asked += 1;
      return [...places.values()].reduce((sum, { x }) => sum + x, 0);
    };
    const better = refined(question, given, room, price, 30);
    expect(asked).toBeLessThanOrEqual(31);
    expect(price(better)).toBeLessThan(price(given));
    const boxes = question.nodes.map((node) => boxOf(spreadAt(node, better)));
    for (const [index, box] of boxes.entries()) {
      for (const other of boxes.slice(0, index)) expect(overlaps(box, other)).toBe(false);
    }
  });

  test("of parts that all stay are none", () => {
    const still = arrangeQuestion(SMALL, "p1", new Set());
    expect(still.nodes).toEqual([]);
    expect(still.edges).toEqual([]);
  });
});

describe("the plain way between two terminals", () => {
  const from = { x: 0, y: 0, side: "down" } as const;

  test("bends no more than it must", () => {
    expect(bendsOf(plainWay(from, { x: 0, y: 20, side: "up" }, 0))).toBe(0);
    expect(bendsOf(plainWay(from, { x: 10, y: 20, side: "left" }, 0))).toBe(1);
    expect(bendsOf(plainWay(from, { x: 10, y: 20, side: "up" }, 3))).toBe(2);
    expect(bendsOf(plainWay(from, { x: 10, y: 0, side: "down" }, 0))).toBe(2);
  });

  test("goes round its own two parts", () => {
    const body = { left: -5, top: -6, right: 5, bottom: 0 };
    const above = { x: -12, y: -20, side: "down" } as const;
    const way = plainWay(from, above, 0, [body]);
    for (const [index, b] of way.slice(1).entries()) {
      const a = way[index]!;
      const isThrough = a.x === b.x && Math.abs(a.x) < 5 && Math.min(a.y, b.y) < -1 && Math.max(a.y, b.y) > -5;
      expect(isThrough).toBe(false);
    }
    expect(bendsOf(way)).toBeLessThanOrEqual(4);
  });

  test("runs level and upright from end to end", () => {
    const way = plainWay(from, { x: 13, y: -7, side: "right" }, 2);
    expect(way[0]).toEqual(from);
    for (const [index, spot] of way.slice(1).entries()) {
      expect(spot.x === way[index]!.x || spot.y === way[index]!.y).toBe(true);
    }
  });
});
