import { expect, test } from "vitest";
import { roomIn } from "../../renderer/panels/room.ts";

test("the room is what the window leaves at the size that everything is set to", () => {
  expect(roomIn(1920, 1080, 1)).toEqual({ width: "broad", height: "high" });
  expect(roomIn(1280, 800, 1)).toEqual({ width: "wide", height: "high" });
  expect(roomIn(1024, 700, 1)).toEqual({ width: "close", height: "high" });
  expect(roomIn(1280, 800, 2)).toEqual(roomIn(640, 400, 1));
  expect(roomIn(853, 533, 1)).toEqual({ width: "narrow", height: "low" });
  expect(roomIn(420, 800, 1)).toEqual({ width: "slim", height: "high" });
});
