import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { changeLength } from "../../core/edit/commands/changeLength.ts";
import type { Action } from "../../renderer/state/action.ts";
import { SAVE_AFTER_MS } from "../../renderer/state/autosave.ts";
import { pageWithVents } from "./stage.ts";

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

const lengthen = (metres: string): Action => ({ do: "make", command: (bench) => changeLength(bench, "W13", metres) });

test("a page that goes sends its last edit though the save before it was not answered, and nothing twice", async () => {
  const { store, saving, sent, hold } = await pageWithVents();
  saving.leave();
  const answer = hold("circuits.save");
  store.dispatch(lengthen("4"));
  await vi.advanceTimersByTimeAsync(SAVE_AFTER_MS);
  saving.leave();
  expect(sent("circuits.save")).toHaveLength(1);
  store.dispatch(lengthen("5"));
  saving.leave();
  const [first, last] = sent("circuits.save");
  expect(last!.circuit.wires.find(({ id }) => id === "W13")?.metres).toBe(5);
  expect(last).toMatchObject({ version: first!.version, page: first!.page });
  answer();
});
