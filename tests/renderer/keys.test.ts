import { describe, expect, test } from "vitest";
import { COMMANDS } from "../../core/edit/commands/index.ts";
import { bound } from "../../core/edit/keys/ownKeys.ts";
import { type KeyPress, printed, spelled } from "../../core/edit/keys/press.ts";
import { KEY_ROWS, type KeyPlace } from "../../core/edit/keys/rows.ts";
import { keyCommand } from "../../renderer/canvas/keyCommands.ts";
import { keyWish } from "../../renderer/canvas/keys.ts";
import { keyGroups } from "../../renderer/keys/keySearch.ts";
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
    ["F1", { do: "open-help" }],
    ["Shift+F1", { do: "open-keys" }],
    ["?", { do: "open-keys" }],
    ["Shift+?", { do: "open-keys" }],
  ])("%s on the bench", (written, action) => expect(actionForKey(press(written), bench)).toEqual(action));

  test("a key that the person gave is heard in place of the given one", () => {
    const own = reduce(bench, { do: "set", settings: { keys: { find: "Ctrl+G" } } });
    expect(actionForKey(press("Ctrl+g"), own)).toEqual({ do: "open-find" });
    expect(actionForKey(press("Ctrl+f"), own)).toBeNull();
  });

  test.each(["z", "f", "Enter", "Ctrl+x", "Ctrl+Alt+o", "Alt+z", "Ctrl+Alt+z"])("%s is left alone", (written) =>
    expect(actionForKey(press(written), bench)).toBeNull(),
  );

  test("in the library and before the print dialog only a file can be opened", () => {
    const covered = (["open-print", "open-keys"] as const).map((done) => reduce(bench, { do: done }));
    for (const state of [createAppStore().getState(), ...covered]) {
      expect(actionForKey(press("Ctrl+z"), state)).toBeNull();
      expect(actionForKey(press("Ctrl+s"), state)).toBeNull();
      expect(actionForKey(press("Ctrl+o"), state)).toEqual({ do: "choose-file" });
    }
  });
});

describe("keys of the drawing", () => {
  test("arrows move the drawing while nothing is chosen, against the arrow's way", () => {
    expect(keyWish(press("ArrowRight"), null, {})).toEqual({ wish: "pan", dx: -48, dy: -0 });
    expect(keyWish(press("Shift+ArrowUp"), null, {})).toEqual({ wish: "pan", dx: -0, dy: 240 });
  });

  test("arrows nudge a chosen part by one grid unit, ten with Shift", () => {
    const part = { is: "part", id: "S6" } as const;
    expect(keyWish(press("ArrowDown"), part, {})).toEqual({ wish: "nudge", dx: 0, dy: 1 });
    expect(keyWish(press("Shift+ArrowLeft"), part, {})).toEqual({ wish: "nudge", dx: -10, dy: 0 });
  });

  test.each([
    ["ArrowRight", "onward"],
    ["ArrowLeft", "back"],
    ["ArrowDown", "next"],
    ["ArrowUp", "previous"],
  ])("%s walks %s from a point and from a wire", (key, way) => {
    expect(keyWish(press(key), { is: "point", id: "S6.6" }, {})).toEqual({ wish: "walk", way });
    expect(keyWish(press(key), { is: "wire", id: "W1" }, {})).toEqual({ wish: "walk", way });
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
  ])("%s", (written, wish) => expect(keyWish(press(written), null, {})).toEqual(wish));

  test("Shift+1 fits, whatever sign the keyboard gives it", () => {
    expect(keyWish(press("Shift+!", "Digit1"), null, {})).toEqual({ wish: "zoom", by: "fit" });
  });

  test.each(["Ctrl+1", "Cmd+Enter", "Alt+ArrowLeft", "F10", "q", "0", "Tab"])("%s is not the drawing's", (written) =>
    expect(keyWish(press(written), null, {})).toBeNull(),
  );
});

describe("the table of keys", () => {
  test("has every key once in a place, and spells it as a press is spelled", () => {
    for (const place of new Set<KeyPlace>(KEY_ROWS.map((row) => row.place))) {
      const keys = KEY_ROWS.flatMap((row): readonly string[] => (row.place === place ? row.keys : []));
      expect(new Set(keys).size, place).toBe(keys.length);
      for (const key of keys) {
        const made = key === "Shift+1" ? press("Shift+!", "Digit1") : press(key.replace("Space", " "));
        expect(spelled(made)).toBe(key);
        expect(bound(place, made, {}), key).not.toBeNull();
      }
    }
  });

  test("every row of the drawing is met: it moves what is seen, or makes an edit, or takes a tool", () => {
    const elsewhere = [
      "add-part",
      "wire",
      "arrange",
      "begin-traces",
      "changed",
      "time",
      "choose-all",
      "choose-net",
      "choose-connector",
      "edit",
      "copy",
      "cut",
      "paste",
    ];
    for (const row of KEY_ROWS) {
      if (row.place !== "drawing" || elsewhere.includes(row.id)) continue;
      const made = row.id === "fit" ? press("Shift+!", "Digit1") : press(row.keys[0]);
      const part = { is: "part", id: "X7" } as const;
      const bench = stateAfter(VENTS).open!.desk.bench;
      const moves = keyWish(made, part, {}) !== null;
      const edits = keyCommand(row.id, bench, [part, { is: "part", id: "F3" }]) !== null;
      expect(moves !== edits, row.id).toBe(true);
    }
  });

  test("the key that core gives a command is the key that the page has for it", () => {
    for (const { id, key } of COMMANDS) {
      const rows = KEY_ROWS.filter((row) => "commands" in row && (row.commands as readonly string[]).includes(id));
      if (key !== null)
        expect(
          rows.flatMap((row): readonly string[] => row.keys),
          id,
        ).toContain(key);
    }
  });

  test("the sheet has every row and every command, each once", () => {
    const lines = keyGroups("", false, {}).flatMap((group) => group.lines);
    const named = KEY_ROWS.flatMap((row): readonly string[] => ("commands" in row ? row.commands : []));
    const without = COMMANDS.filter(({ id }) => !named.includes(id));
    expect(lines).toHaveLength(KEY_ROWS.length + without.length);
  });

  test.each([
    ["duplicate", "duplicate"],
    ["ctrl+d", "duplicate"],
    ["Ctrl D", "duplicate"],
    ["t", "turn"],
    ["page down", "next-part"],
    ["Ctrl +", "nearer"],
    ["align", "align-things"],
  ])("%s finds it", (typed, id) => {
    const [group] = keyGroups(typed, false, {});
    expect(group?.lines[0]?.id).toBe(id);
  });

  test("a letter alone is a key, and what is not there finds nothing", () => {
    const lines = keyGroups("b", false, {}).flatMap((group) => group.lines);
    expect(lines.map(({ id }) => id)).toEqual(["battery", "class-blank"]);
    expect(keyGroups("teapot", false, {})).toEqual([]);
  });

  test("the sheet shows the person's key, which the tool in hand shares, and keeps a line whose key was just changed", () => {
    const own = { turn: "R" };
    const lines = keyGroups("r", false, own).flatMap((group) => group.lines);
    expect(lines.map(({ id, changes }) => [id, changes])).toEqual([
      ["turn", "turn"],
      ["pen-turn", null],
    ]);
    expect(keyGroups("t", false, own)).toEqual([]);
    expect(keyGroups("t", false, own, "turn").flatMap((group) => group.lines)).toMatchObject([{ id: "turn" }]);
  });

  test("keys are printed for the platform", () => {
    expect(printed("Ctrl+Shift+Z", false)).toBe("Ctrl Shift Z");
    expect(printed("Ctrl+Shift+Z", true)).toBe("Cmd Shift Z");
    expect(printed("Ctrl++", true)).toBe("Cmd +");
    expect(printed("+", false)).toBe("+");
    expect(keyGroups("cmd d", true, {})[0]?.lines[0]?.keys).toEqual(["Cmd D"]);
  });
});
