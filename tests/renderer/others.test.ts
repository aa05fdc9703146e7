import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { ok } from "../../core/base/outcome.ts";
import { changeTitle } from "../../core/edit/commands/changeTitle.ts";
import type { Host } from "../../renderer/host/host.ts";
import { SAVE_AFTER_MS } from "../../renderer/state/autosave.ts";
import { watchOthers } from "../../renderer/state/others.ts";
import { VENTS } from "../edit/given.ts";
import { openIn, pageOn, pageWithVents, watched } from "./stage.ts";

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

const retitle = ({ store }: ReturnType<typeof pageOn>, title: string) =>
  store.dispatch({ do: "make", command: (bench) => changeTitle(bench, title) });

describe("what somebody else does to the open circuit", () => {
  test("is told once, and shown when it is asked for; then the next is told", async () => {
    const page = await pageWithVents();
    const { store, host, id } = page;
    const watch = watchOthers(host);
    await watch(store);
    expect(store.getState().notices).toEqual([]);
    await host.ask("circuits.rename", { id, title: "Other" });
    for (let time = 0; time < 3; time++) await watch(store);
    expect(store.getState().notices).toMatchObject([{ isError: false, isOfOthers: true }]);
    store.dispatch(store.getState().notices[0]!.offers![0]!.action);
    await vi.advanceTimersByTimeAsync(0);
    expect(openIn(store)).toMatchObject({ version: 2, desk: { bench: { circuit: { title: "Other" } } } });
    await host.ask("circuits.remove", { id });
    await watch(store);
    expect(store.getState().notices.map(({ title }) => title)).toEqual(["Other was deleted elsewhere."]);
  });

  test("is not asked for while an edit waits here, nor without a circuit, and no answer is no news", async () => {
    const page = await pageWithVents();
    const { store, host, sent, fail } = page;
    const watch = watchOthers(host);
    retitle(page, "Mine");
    await watch(store);
    expect(sent("circuits.standing")).toHaveLength(0);
    await vi.advanceTimersByTimeAsync(SAVE_AFTER_MS);
    fail(true);
    await watch(store);
    expect(sent("circuits.standing")).toHaveLength(1);
    expect(store.getState().notices).toEqual([]);
    fail(false);
    store.dispatch({ do: "close" });
    await watch(store);
    expect(sent("circuits.standing")).toHaveLength(1);
  });

  test("does not stop an edit here: it is kept beside, told, and gone on with there", async () => {
    const seen = watched();
    const [first, other] = await Promise.all(
      ["Vents", "Beside"].map((title) => seen.host.ask("circuits.create", { circuit: { ...VENTS, title } })),
    );
    if (!first?.ok || !other?.ok) throw new Error("refused");
    const { id } = first.value;
    const beside = { by: "ann", saved: "2026-01-01T00:00:00Z", isRemoved: false };
    // What a library answers to an edit of a version that is not the newest.
    const kept = { id: other.value.id, version: 1, benchVersion: 0, saved: beside.saved, beside };
    const ask: Host["ask"] = async (name, argument) => {
      const isLate = name === "circuits.save" && (argument as { id: string }).id === id;
      return isLate ? (ok(kept) as never) : seen.host.ask(name, argument);
    };
    const page = pageOn({ ...seen, host: { name: "memory", ask } });
    page.store.dispatch({ do: "open-circuit", id });
    await vi.advanceTimersByTimeAsync(0);
    retitle(page, "Mine");
    await vi.advanceTimersByTimeAsync(SAVE_AFTER_MS);
    expect(openIn(page.store)).toMatchObject({ id: other.value.id, version: 1, saved: "saved" });
    const [notice] = page.store.getState().notices;
    expect(notice?.offers?.map(({ action }) => action)).toEqual([{ do: "open-circuit", id }]);
    retitle(page, "Mine, and more");
    await vi.advanceTimersByTimeAsync(SAVE_AFTER_MS);
    expect(page.sent("circuits.save")).toMatchObject([{ id: other.value.id, version: 1 }]);
    expect(page.sent("circuits.save")[0]!.page).toMatch(/./);
  });
});
