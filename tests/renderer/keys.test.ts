import { describe, expect, test } from "vitest";
import { type KeyPress, keyWish } from "../../renderer/canvas/keys.ts";
import { actionForKey } from "../../renderer/state/keys.ts";
import { reduce } from "../../renderer/state/reduce.ts";
import { createAppStore } from "../../renderer/state/store.ts";
import { VENTS } from "../edit/given.ts";
import { stateAfter } from "./stage.ts";

/** A key press written as `Ctrl+Shift+z`. */
function press(written: string, code = ""): KeyPress {
  const names = written.split("+");
  const key = written.endsWith("+") ? "+" : names.at(-1)!;
  return {
    key,
    code,
    ctrlKey: names.includes("Ctrl"),
    metaKey: names.includes("Cmd"),
    shiftKey: names.includes("Shift"),
    altKey: names.includes("Alt"),
  };
}

describe("keys of the window", () => {
  const bench = stateAfter(VENTS);

  test.each([
    ["Ctrl+z", { do: "undo" }],
    ["Cmd+z", { do: "undo" }],
    ["Ctrl+Shift+Z", { do: "redo" }],
    ["Ctrl+y", { do: "redo" }],
    ["Ctrl+f", { do: "open-find" }],
    ["Ctrl+p", { do: "open-print" }],
    ["Ctrl+s", { do: "save-file" }],
    ["Ctrl+o", { do: "choose-file" }],
    ["Ctrl+w", { do: "close" }],
    ["Ctrl+0", { do: "wish", want: { zoom: "full-size" } }],
    ["Ctrl+9", { do: "wish", want: { zoom: "fit" } }],
    ["Ctrl++", { do: "wish", want: { zoom: "in" } }],
    ["Ctrl+=", { do: "wish", want: { zoom: "in" } }],
    ["Ctrl+-", { do: "wish", want: { zoom: "out" } }],
  ])("%s on the bench", (written, action) => expect(actionForKey(press(written), bench)).toEqual(action));

  test.each(["z", "f", "Enter", "Ctrl+x", "Ctrl+Alt+o", "Alt+z", "Ctrl+Alt+z"])("%s is left alone", (written) =>
    expect(actionForKey(press(written), bench)).toBeNull(),
  );

  test("in the library and before the print dialog only a file can be opened", () => {
    for (const state of [createAppStore().getState(), reduce(bench, { do: "open-print" })]) {
      expect(actionForKey(press("Ctrl+z"), state)).toBeNull();
      expect(actionForKey(press("Ctrl+s"), state)).toBeNull();
      expect(actionForKey(press("Ctrl+o"), state)).toEqual({ do: "choose-file" });
    }
  });
});

describe("keys of the drawing", () => {
  test("arrows move the drawing while nothing is chosen, against the arrow's way", () => {
    expect(keyWish(press("ArrowRight"), null)).toEqual({ wish: "pan", dx: -48, dy: -0 });
    expect(keyWish(press("Shift+ArrowUp"), null)).toEqual({ wish: "pan", dx: -0, dy: 240 });
  });

  test("arrows nudge a chosen part by one grid unit, ten with Shift", () => {
    const part = { is: "part", id: "S6" } as const;
    expect(keyWish(press("ArrowDown"), part)).toEqual({ wish: "nudge", dx: 0, dy: 1 });
    expect(keyWish(press("Shift+ArrowLeft"), part)).toEqual({ wish: "nudge", dx: -10, dy: 0 });
  });

  test.each([
    ["ArrowRight", "onward"],
    ["ArrowLeft", "back"],
    ["ArrowDown", "next"],
    ["ArrowUp", "previous"],
  ])("%s walks %s from a point and from a wire", (key, way) => {
    expect(keyWish(press(key), { is: "point", id: "S6.6" })).toEqual({ wish: "walk", way });
    expect(keyWish(press(key), { is: "wire", id: "W1" })).toEqual({ wish: "walk", way });
  });

  test.each([
    ["1", { wish: "position", index: 0 }],
    ["9", { wish: "position", index: 8 }],
    ["+", { wish: "zoom", by: "in" }],
    ["-", { wish: "zoom", by: "out" }],
    ["PageDown", { wish: "part", way: "next" }],
    ["Home", { wish: "begin" }],
    ["Enter", { wish: "act" }],
    ["Shift+F10", { wish: "menu" }],
    ["w", { wish: "why" }],
    ["Escape", { wish: "leave" }],
  ])("%s", (written, wish) => expect(keyWish(press(written), null)).toEqual(wish));

  test("Shift+1 fits, whatever sign the keyboard gives it", () => {
    expect(keyWish(press("Shift+!", "Digit1"), null)).toEqual({ wish: "zoom", by: "fit" });
  });

  test.each(["Ctrl+1", "Cmd+Enter", "Alt+ArrowLeft", "F10", "q", "0", "Tab"])("%s is not the drawing's", (written) =>
    expect(keyWish(press(written), null)).toBeNull(),
  );
});
