import { describe, expect, test } from "vitest";
import { EDIT_WORDS } from "../../core/base/words/edit.ts";
import { WORDS } from "../../core/base/words.ts";
import { changesBetween, saidChanges } from "../../core/edit/changesBetween.ts";
import { liveOf } from "../../core/live/live.ts";
import { vehicle } from "../live/vehicle.ts";
import { LATCH, ROW, VENTS } from "./given.ts";

const ON = { set: { S1: "on" } };

describe("what changed", () => {
  test("names the wires with the state of both ends, and the loads with what they do", () => {
    const changes = changesBetween(liveOf(ROW), liveOf(ROW, ON));
    expect(changes).toEqual({
      wires: [{ wire: "W3", state: ["powered", "powered"] }],
      parts: [{ part: "M1", doing: "forward" }],
      chattering: [],
    });
    expect(saidChanges("S1 to on", changes)).toBe("S1 to on. 1 wire changed: W3 powered. M1 runs forward.");
  });

  test("is nothing between two live states that are alike", () => {
    const changes = changesBetween(liveOf(ROW), liveOf(ROW));
    expect(saidChanges("S1 to off", changes)).toBe("S1 to off. Nothing else changed.");
  });

  test("tells of both ends of a wire that is broken", () => {
    const changes = changesBetween(liveOf(ROW, ON), liveOf(ROW, ON, [{ target: "W3", mode: "open" }]));
    expect(saidChanges("", changes)).toBe(
      "1 wire changed: W3 powered at one end, grounded through a load at the other. M1 goes off.",
    );
  });

  test("puts what melted first, and says nothing of the battery", () => {
    const changes = changesBetween(liveOf(ROW, ON), liveOf(ROW, ON, [{ target: "W3", mode: "short-to-ground" }]));
    expect(changes.parts).toEqual([
      { part: "F1", doing: "melted" },
      { part: "M1", doing: "off" },
    ]);
    expect(
      saidChanges("", changesBetween(liveOf(ROW, ON, [{ target: "F1", mode: "blown" }]), liveOf(ROW, ON))),
    ).toContain("F1 is whole again");
  });

  test("is a short list however much changed", () => {
    const changes = changesBetween(liveOf(VENTS), liveOf(VENTS, ON));
    expect(changes.wires.length).toBeGreaterThan(6);
    const said = saidChanges("S1 to on", changes);
    expect(said).toMatch(
      new RegExp(`${changes.wires.length} wires changed: W\\d+ [^,]+(, W\\d+ [^,]+){2}, \\d+ more\\.`),
    );
    expect(said).toContain("K1 pulls in");
    expect(said.length).toBeLessThan(250);
  });

  test("names what does not come to rest", () => {
    const buzzer = vehicle(
      [
        LATCH.parts[0]!,
        { id: "K1", kind: "relay", settings: { form: "change-over" } },
        {
          id: "S1",
          kind: "switch",
          terminals: ["1", "2"],
          positions: [
            { name: "off", joins: [] },
            { name: "on", joins: [["1", "2"]] },
          ],
        },
      ],
      ["W1 G1.+ S1.1", "W2 S1.2 K1.30", "W3 K1.87a K1.86", "W4 K1.85 G1.-"],
    );
    const changes = changesBetween(liveOf(buzzer), liveOf(buzzer, ON));
    expect(changes.chattering).toEqual(["K1"]);
    expect(saidChanges("", changes)).toContain("K1 chatters");
  });
});

test("no code of an edit's refusal is said in two ways", () => {
  for (const code of Object.keys(EDIT_WORDS))
    expect(
      WORDS.filter((words) => Object.hasOwn(words, code)),
      code,
    ).toHaveLength(1);
});
