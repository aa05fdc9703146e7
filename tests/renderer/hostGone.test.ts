import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { addUnderlay } from "../../core/edit/commands/addUnderlay.ts";
import { changeLength } from "../../core/edit/commands/changeLength.ts";
import type { Action } from "../../renderer/state/action.ts";
import { SAVE_AFTER_MS } from "../../renderer/state/autosave.ts";
import { readCircuit } from "../../schemas/circuit.ts";
import { SHEET } from "../circuit/printed.ts";
import { got, VENTS } from "../edit/given.ts";
import { openIn, pageOn, pageWithVents, watched } from "./stage.ts";

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

const LENGTHEN: Action = { do: "make", command: (bench) => changeLength(bench, "W13", "4") };

test("what is not kept is offered as a file, which the page hands out itself", async () => {
  const { store, fail, downloads } = await pageWithVents();
  fail(true);
  store.dispatch(LENGTHEN);
  await vi.advanceTimersByTimeAsync(SAVE_AFTER_MS);
  const [notice] = store.getState().notices;
  expect(notice!.offers).toMatchObject([{ words: "Save a copy to a file" }]);
  store.dispatch(notice!.offers![0]!.action);
  await vi.advanceTimersByTimeAsync(0);
  expect(got(readCircuit(downloads[0]!.content))).toEqual(openIn(store).desk.bench.circuit);
  expect(store.getState().notices.map(({ title }) => title)).toContain("Handed to the browser.");
});

test("a file that comes without its printed pages says so", async () => {
  const { store, fail, downloads } = await pageWithVents();
  const { title, image } = SHEET;
  const { page } = openIn(store);
  store.dispatch({ do: "make", command: (bench) => addUnderlay(bench, page, { title, image }) });
  fail(true);
  store.dispatch({ do: "save-file" });
  await vi.advanceTimersByTimeAsync(0);
  expect(downloads).toMatchObject([{ name: "Roof vents.circuit.json", encoding: "text" }]);
  expect(store.getState().notices.map((notice) => notice.title)).toEqual([
    "Handed to the browser.",
    "Saved without its printed pages and photos.",
  ]);
});

test("the program's own window, which hands out no files, does not say that it did", async () => {
  const seen = watched();
  const page = pageOn({ ...seen, host: { ...seen.host, name: "electron" } });
  page.store.dispatch({ do: "sample-opened", circuit: VENTS });
  page.fail(true);
  page.store.dispatch({ do: "save-file" });
  await vi.advanceTimersByTimeAsync(0);
  expect(page.downloads).toEqual([]);
  expect(page.store.getState().notices).toMatchObject([{ title: "No answer.", isError: true }]);
});
