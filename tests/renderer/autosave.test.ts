import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { changeLength } from "../../core/edit/commands/changeLength.ts";
import type { Action } from "../../renderer/state/action.ts";
import { SAVE_AFTER_MS, TRY_AGAIN_MS } from "../../renderer/state/autosave.ts";
import { LIMITS } from "../../schemas/limits.ts";
import { VENTS } from "../edit/given.ts";
import { openIn, pageWithVents } from "./stage.ts";

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

const KEY_ON: Action = { do: "throw", control: "S1", position: "on" };
const OPEN: Action = { do: "throw", control: "S6", position: "open" };
const lengthen = (metres: string): Action => ({
  do: "make",
  command: (bench) => changeLength(bench, "W13", metres),
});
const lengthOf = ({ wires }: Circuit): number | undefined => wires.find(({ id }) => id === "W13")?.metres;

/** What the host has of a circuit. */
async function kept({ host }: Awaited<ReturnType<typeof pageWithVents>>, id: string) {
  const found = await host.ask("circuits.open", { id });
  if (!found.ok) throw new Error(found.refusal.code);
  return found.value;
}

describe("an open bench", () => {
  test("what was only opened is not kept anew", async () => {
    const { calls } = await pageWithVents();
    await vi.advanceTimersByTimeAsync(10_000);
    expect(calls).toEqual([]);
  });

  test("an edit waits for the next, and both are kept once, the later as it is", async () => {
    const { store, sent } = await pageWithVents();
    store.dispatch(KEY_ON);
    await vi.advanceTimersByTimeAsync(SAVE_AFTER_MS - 1);
    expect(sent("benches.save")).toEqual([]);
    store.dispatch(OPEN);
    await vi.advanceTimersByTimeAsync(1);
    expect(sent("benches.save")).toHaveLength(1);
    expect(JSON.parse(sent("benches.save")[0]!.bench).bench.condition.set).toEqual({ S1: "on", S6: "open" });
  });

  test("every one of many edits reaches the host within a second", async () => {
    const { store, sent } = await pageWithVents();
    const begun = Date.now();
    const keptAt: number[] = [];
    for (let edit = 1; edit <= 60; edit++) {
      store.dispatch(lengthen(String(edit)));
      await vi.advanceTimersByTimeAsync(50);
      while (keptAt.length < sent("circuits.save").length) keptAt.push(Date.now() - begun);
    }
    await vi.advanceTimersByTimeAsync(SAVE_AFTER_MS);
    while (keptAt.length < sent("circuits.save").length) keptAt.push(Date.now() - begun);
    const lengths = sent("circuits.save").map(({ circuit }) => lengthOf(circuit)!);
    for (let edit = 1; edit <= 60; edit++) {
      const save = lengths.findIndex((metres) => metres >= edit);
      expect(save).toBeGreaterThanOrEqual(0);
      expect(keptAt[save]! - (edit - 1) * 50).toBeLessThan(1000);
    }
  });

  test("a changed circuit goes with its bench and the name of the edit, and makes a version", async () => {
    const { store, sent, id } = await pageWithVents();
    store.dispatch(lengthen("4"));
    await vi.advanceTimersByTimeAsync(SAVE_AFTER_MS);
    const [save] = sent("circuits.save");
    expect(save).toMatchObject({ id, version: 1, name: openIn(store).desk.history.done[0]!.edit.name });
    expect(lengthOf(save!.circuit)).toBe(4);
    expect(openIn(store)).toMatchObject({ version: 2, saved: "saved" });
    store.dispatch(KEY_ON);
    await vi.advanceTimersByTimeAsync(SAVE_AFTER_MS);
    expect(sent("benches.save")).toMatchObject([{ id, version: 2 }]);
  });

  test("a name longer than the host takes is cut", async () => {
    const { store, sent } = await pageWithVents();
    const long = "x".repeat(LIMITS.labelLength + 1);
    store.dispatch({
      do: "make",
      command: (bench) => {
        const edit = changeLength(bench, "W13", "4");
        return edit.ok ? { ok: true, value: { ...edit.value, name: long } } : edit;
      },
    });
    await vi.advanceTimersByTimeAsync(SAVE_AFTER_MS);
    expect(sent("circuits.save")[0]!.name).toHaveLength(LIMITS.labelLength);
  });

  test("what is in sight is kept too", async () => {
    const { store, sent } = await pageWithVents();
    store.dispatch({ do: "show-page", page: "p3" });
    await vi.advanceTimersByTimeAsync(SAVE_AFTER_MS);
    expect(JSON.parse(sent("benches.save")[0]!.bench).sight.page).toBe("p3");
  });

  test("what is chosen or hovered is not", async () => {
    const { store, calls } = await pageWithVents();
    store.dispatch({ do: "choose", thing: { is: "part", id: "S6" } });
    store.dispatch({ do: "hover", thing: { is: "wire", id: "W1" } });
    await vi.advanceTimersByTimeAsync(1000);
    expect(calls).toEqual([]);
  });

  test("flush keeps at once, and with nothing to keep does nothing", async () => {
    const { store, saving, calls } = await pageWithVents();
    await saving.flush();
    expect(calls).toEqual([]);
    store.dispatch(KEY_ON);
    expect(saving.isAllKept()).toBe(false);
    await saving.flush();
    expect(calls.map(({ name }) => name)).toEqual(["benches.save"]);
    expect(saving.isAllKept()).toBe(true);
    await vi.advanceTimersByTimeAsync(1000);
    expect(calls).toHaveLength(1);
  });

  test("an edit made while a save is under way is kept after it, on the version it made", async () => {
    const page = await pageWithVents();
    const { store, hold, sent, saving, id } = page;
    const letGo = hold("circuits.save");
    store.dispatch(lengthen("4"));
    await vi.advanceTimersByTimeAsync(SAVE_AFTER_MS);
    store.dispatch(lengthen("5"));
    const flushes = Promise.all([saving.flush(), saving.flush()]);
    await vi.advanceTimersByTimeAsync(1000);
    expect(sent("circuits.save")).toHaveLength(1);
    letGo();
    await flushes;
    expect(sent("circuits.save").map(({ version }) => version)).toEqual([1, 2]);
    expect(lengthOf((await kept(page, id)).circuit)).toBe(5);
  });

  test("undo reaches the host like any edit", async () => {
    const page = await pageWithVents();
    page.store.dispatch(lengthen("4"));
    await vi.advanceTimersByTimeAsync(SAVE_AFTER_MS);
    page.store.dispatch({ do: "undo" });
    await vi.advanceTimersByTimeAsync(SAVE_AFTER_MS);
    expect((await kept(page, page.id)).circuit).toEqual(VENTS);
  });
});

describe("a save that fails", () => {
  test("is told once, tried again, and keeps what was edited meanwhile", async () => {
    const page = await pageWithVents();
    const { store, fail, sent, id } = page;
    fail(true);
    store.dispatch(lengthen("4"));
    await vi.advanceTimersByTimeAsync(SAVE_AFTER_MS);
    expect(openIn(store).saved).toBe("failed");
    expect(store.getState().notices).toMatchObject([
      { title: "Your last changes to Roof vents are not kept yet.", isError: true },
    ]);
    store.dispatch(lengthen("5"));
    await vi.advanceTimersByTimeAsync(TRY_AGAIN_MS * 2);
    expect(sent("circuits.save").length).toBeGreaterThan(1);
    expect(store.getState().notices).toHaveLength(1);
    fail(false);
    await vi.advanceTimersByTimeAsync(TRY_AGAIN_MS);
    expect(openIn(store)).toMatchObject({ saved: "saved", version: 2 });
    expect(store.getState().notices).toEqual([]);
    expect(lengthOf((await kept(page, id)).circuit)).toBe(5);
  });

  test("a refusal of the library is told in its own sentence", async () => {
    const { store, refuse } = await pageWithVents();
    refuse("benches.save", "store-full");
    store.dispatch(KEY_ON);
    await vi.advanceTimersByTimeAsync(SAVE_AFTER_MS);
    expect(store.getState().notices.map(({ words }) => words)).toEqual([
      "The disk is full, so the last change was not kept. Make room: what is on the bench is kept by itself then.",
    ]);
  });

  test.each(["circuit-changed-elsewhere", "circuit-unknown"])(
    "%s is not tried again but offers a copy",
    async (code) => {
      const page = await pageWithVents();
      const { store, refuse, sent, id } = page;
      refuse("circuits.save", code);
      store.dispatch(lengthen("4"));
      await vi.advanceTimersByTimeAsync(SAVE_AFTER_MS);
      store.dispatch(lengthen("5"));
      await vi.advanceTimersByTimeAsync(TRY_AGAIN_MS * 3);
      expect(sent("circuits.save")).toHaveLength(1);
      const [notice] = store.getState().notices;
      store.dispatch(notice!.offers![0]!.action);
      await vi.advanceTimersByTimeAsync(SAVE_AFTER_MS);
      const copy = openIn(store).id!;
      expect((await kept(page, copy)).circuit.title).toBe("Roof vents (copy)");
      expect(copy).not.toBe(id);
      expect(lengthOf((await kept(page, copy)).circuit)).toBe(5);
      expect((await kept(page, id)).circuit).toEqual(VENTS);
      expect(store.getState().notices).toEqual([]);
      // From here on the copy is the one that is kept.
      store.dispatch(KEY_ON);
      await vi.advanceTimersByTimeAsync(SAVE_AFTER_MS);
      expect(sent("benches.save")).toMatchObject([{ id: copy }]);
    },
  );
});

describe("a bench that is put away", () => {
  test("is kept to its last edit, though it is closed at once", async () => {
    const page = await pageWithVents();
    page.store.dispatch(lengthen("4"));
    page.store.dispatch({ do: "close" });
    await vi.advanceTimersByTimeAsync(0);
    expect(lengthOf((await kept(page, page.id)).circuit)).toBe(4);
    expect(page.saving.isAllKept()).toBe(true);
  });

  test("is kept before it is brought out again", async () => {
    const { store, hold, id } = await pageWithVents();
    const letGo = hold("circuits.save");
    store.dispatch(lengthen("4"));
    store.dispatch({ do: "close" });
    store.dispatch({ do: "open-circuit", id });
    await vi.advanceTimersByTimeAsync(1000);
    expect(store.getState().open).toBeNull();
    letGo();
    await vi.advanceTimersByTimeAsync(0);
    expect(openIn(store)).toMatchObject({ id, version: 2 });
    expect(lengthOf(openIn(store).desk.bench.circuit)).toBe(4);
  });

  test("is kept when another takes its place, and the other is not touched", async () => {
    const page = await pageWithVents();
    const other = await page.host.ask("circuits.create", { circuit: { ...VENTS, title: "Other" } });
    if (!other.ok) throw new Error(other.refusal.code);
    const letGo = page.hold("circuits.save");
    page.store.dispatch(lengthen("4"));
    await vi.advanceTimersByTimeAsync(SAVE_AFTER_MS);
    page.store.dispatch(lengthen("5"));
    page.store.dispatch({ do: "opened", opened: other.value });
    letGo();
    await vi.advanceTimersByTimeAsync(1000);
    expect(lengthOf((await kept(page, page.id)).circuit)).toBe(5);
    expect(openIn(page.store)).toMatchObject({ id: other.value.id, version: 1, saved: "saved" });
    expect((await kept(page, other.value.id)).circuit.title).toBe("Other");
    expect(page.sent("circuits.create")).toHaveLength(1);
  });

  test("is tried again until the host answers", async () => {
    const page = await pageWithVents();
    page.fail(true);
    page.store.dispatch(lengthen("4"));
    page.store.dispatch({ do: "close" });
    await vi.advanceTimersByTimeAsync(TRY_AGAIN_MS * 2);
    expect(page.saving.isAllKept()).toBe(false);
    page.fail(false);
    await vi.advanceTimersByTimeAsync(TRY_AGAIN_MS);
    expect(page.saving.isAllKept()).toBe(true);
    expect(lengthOf((await kept(page, page.id)).circuit)).toBe(4);
    expect(page.store.getState().notices.some(({ isUntilKept }) => isUntilKept)).toBe(false);
  });

  test("does not make the next one wait while it fails", async () => {
    const page = await pageWithVents();
    page.refuse("circuits.save", "store-full");
    page.store.dispatch(lengthen("4"));
    page.store.dispatch({ do: "close" });
    await vi.advanceTimersByTimeAsync(0);
    page.store.dispatch({ do: "sample-opened", circuit: VENTS });
    page.store.dispatch(KEY_ON);
    await vi.advanceTimersByTimeAsync(SAVE_AFTER_MS);
    expect(page.sent("circuits.create")).toHaveLength(1);
  });

  test("and was changed elsewhere goes into the library as a copy, and that is said", async () => {
    const page = await pageWithVents();
    await page.host.ask("circuits.rename", { id: page.id, title: "Renamed" });
    page.store.dispatch(lengthen("4"));
    page.store.dispatch({ do: "close" });
    await vi.advanceTimersByTimeAsync(0);
    const [copy] = page.sent("circuits.create");
    expect(lengthOf(copy!.circuit)).toBe(4);
    expect((await kept(page, page.id)).circuit.title).toBe("Renamed");
    expect(page.store.getState().notices).toMatchObject([
      { title: "Your changes are kept as Roof vents (copy).", isError: false },
    ]);
    expect(page.store.getState().shelf.circuits).toHaveLength(2);
  });
});
