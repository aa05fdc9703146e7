import { expect, test } from "vitest";
import { type Besides, besidesReaction, heedBesides } from "../../renderer/state/besides.ts";
import { createAppStore } from "../../renderer/state/store.ts";
import { FIRST_SETTINGS } from "../../schemas/settings.ts";

/** Two windows whose channels are joined; what one posts comes out at the other as a copy. */
function twoWindows() {
  const ends = [0, 1].map((): Besides => ({ postMessage: () => {}, onmessage: null }));
  for (const [index, end] of ends.entries()) {
    const other = ends[1 - index]!;
    end.postMessage = (data) => other.onmessage?.({ data: structuredClone(data) } as MessageEvent<unknown>);
  }
  const stores = ends.map((end) => {
    const store = createAppStore("light", [besidesReaction(end)]);
    heedBesides(end, store);
    return store;
  });
  for (const store of stores) store.dispatch({ do: "settled", settings: FIRST_SETTINGS });
  return { one: stores[0]!, other: stores[1]!, ends };
}

test("a key and a look that are changed in one window hold in the other at once, and go no further", () => {
  const { one, other } = twoWindows();
  one.dispatch({ do: "set", settings: { keys: { find: "Ctrl+G" }, theme: "dark" } });
  expect(other.getState().settings).toEqual({ ...FIRST_SETTINGS, keys: { find: "Ctrl+G" }, theme: "dark" });
  expect(other.getState().theme).toBe("dark");
  other.dispatch({ do: "set", settings: { keys: {} } });
  expect(one.getState().settings).toEqual({ ...FIRST_SETTINGS, theme: "dark" });
});

test("what are no settings, or come before there are any here, are left alone", () => {
  const { one, ends } = twoWindows();
  for (const data of [null, "dark", { theme: "plaid" }, { ...FIRST_SETTINGS, later: 1 }])
    ends[0]!.onmessage?.({ data } as MessageEvent<unknown>);
  expect(one.getState().settings).toEqual(FIRST_SETTINGS);
  const early = createAppStore();
  const end: Besides = { postMessage: () => {}, onmessage: null };
  heedBesides(end, early);
  end.onmessage?.({ data: { ...FIRST_SETTINGS, theme: "dark" } } as MessageEvent<unknown>);
  expect(early.getState().isStarted).toBe(false);
});
