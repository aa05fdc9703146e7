import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Giving, giveBack, giveKey, ownKeysProblem } from "../../core/edit/keys/giveKey.ts";
import { bound, holderOf, keysOf, type OwnKeys } from "../../core/edit/keys/ownKeys.ts";
import { CHANGEABLE, type ChangeableId, KEY_ROWS } from "../../core/edit/keys/rows.ts";
import { settingsShape } from "../../schemas/settings.ts";

function given(own: OwnKeys, id: ChangeableId, key: string): Giving {
  const giving = giveKey(own, id, key);
  if (!giving.ok) throw new Error(giving.refusal.code);
  return giving.value;
}
const refusedFor = (id: ChangeableId, key: string): string => {
  const giving = giveKey({}, id, key);
  return giving.ok ? "taken" : giving.refusal.code;
};
const pressed = (key: string) => ({ key, code: "", shiftKey: false, ctrlKey: false, metaKey: false, altKey: false });

describe("a key that a person gives", () => {
  test("is the row's only key, and the given one is free", () => {
    const { own, swap } = given({}, "turn", "R");
    expect({ own, swap }).toEqual({ own: { turn: "R" }, swap: null });
    expect(bound("drawing", pressed("r"), own)).toBe("turn");
    expect(bound("drawing", pressed("t"), own)).toBeNull();
    expect(bound("pen", pressed("r"), own)).toBe("pen-turn");
    expect(holderOf("T", "flip", own)).toBeNull();
  });

  test("that another row has is swapped with the old one, and swapped back both are as given", () => {
    const { own, swap } = given({}, "turn", "M");
    expect(swap).toEqual({ other: "Mirror", key: "M", old: "T" });
    expect(own).toEqual({ turn: "M", flip: "T" });
    const back = giveBack(own, "flip");
    expect(back.ok && back.value.own).toEqual({});
    expect(back.ok && back.value.swap).toEqual({ other: "Turn", key: "M", old: "T" });
  });

  test("goes back to all that the row was given", () => {
    const { own } = given({}, "redo", "Ctrl+G");
    expect(keysOf("redo", own)).toEqual(["Ctrl+G"]);
    const back = giveBack(own, "redo");
    expect(back.ok && keysOf("redo", back.value.own)).toEqual(["Ctrl+Y", "Ctrl+Shift+Z"]);
  });

  test.each([
    ["turn", "Escape", "key-standing"],
    ["turn", "Tab", "key-standing"],
    ["turn", "Shift+Enter", "key-standing"],
    ["turn", "ArrowUp", "key-standing"],
    ["turn", "Space", "key-standing"],
    ["turn", "r", "key-standing"],
    ["turn", "Ctrl+W", "key-system"],
    ["turn", "Ctrl+Shift+N", "key-system"],
    ["turn", "Alt+R", "key-system"],
    ["turn", "F5", "key-system"],
    ["turn", "Ctrl+C", "key-system"],
    ["find", "G", "key-bare"],
    ["turn", "3", "key-stays"],
    ["duplicate", "Ctrl+Z", "taken"],
    ["library", "Ctrl+D", "key-no-swap"],
    ["turn", "Ctrl+F", "key-no-swap"],
    ["turn", "F4", "taken"],
    ["find", "Ctrl+Shift+F", "taken"],
  ] as const)("%s cannot have just anything: %s is %s", (id, key, code) => expect(refusedFor(id, key)).toBe(code));

  test("never leaves a press with two meanings, whatever is given and given back in whatever order", () => {
    const keys = [...KEY_ROWS.flatMap((row): readonly string[] => row.keys), "R", "G", "F4", "Ctrl+G", "Ctrl+Shift+F"];
    const step = fc.tuple(fc.constantFrom(...CHANGEABLE), fc.option(fc.constantFrom(...keys)));
    fc.assert(
      fc.property(fc.array(step, { maxLength: 12 }), (steps) => {
        let own: OwnKeys = {};
        for (const [id, key] of steps) {
          const giving = key === null ? giveBack(own, id) : giveKey(own, id, key);
          if (giving.ok) own = giving.value.own;
        }
        expect(ownKeysProblem(own)).toBeNull();
        expect(settingsShape.shape.keys.safeParse(own).success).toBe(true);
        for (const id of CHANGEABLE) {
          const now = keysOf(id, own);
          expect(now.length).toBeGreaterThan(0);
          for (const key of now) expect(holderOf(key, id, own), `${id} ${key}`).toBeNull();
        }
      }),
      { seed: 7, numRuns: 300 },
    );
  });
});

describe("keys from elsewhere", () => {
  const fits = (keys: unknown): boolean => settingsShape.shape.keys.safeParse(keys).success;

  test("are taken where the person could have given them", () => {
    expect(fits({})).toBe(true);
    expect(fits({ turn: "R", find: "Ctrl+G" })).toBe(true);
    expect(fits({ turn: "M" })).toBe(true);
    expect(keysOf("flip", { turn: "M" })).toEqual([]);
  });

  test.each([
    ["a row that is not there", { teapot: "R" }],
    ["a row that keeps its key", { leave: "R" }],
    ["a key of the system", { turn: "Ctrl+W" }],
    ["no key", { turn: "" }],
    ["no text", { turn: 7 }],
    ["one key twice", { turn: "R", flip: "R" }],
    ["a key of the window on the drawing too", { find: "Ctrl+G", turn: "Ctrl+G" }],
    ["a key that stays", { turn: "3" }],
    ["a long one", { turn: "Ctrl+Shift+".repeat(9) }],
    ["a name that every object has", JSON.parse('{"__proto__": "R", "constructor": "G"}')],
  ])("are refused with %s", (_, keys) => expect(fits(keys)).toBe(false));
});
