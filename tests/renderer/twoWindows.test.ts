import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { changeLength } from "../../core/edit/commands/changeLength.ts";
import { observeCheck } from "../../core/edit/commands/observeCheck.ts";
import type { Host } from "../../renderer/host/host.ts";
import type { Action } from "../../renderer/state/action.ts";
import { SAVE_AFTER_MS } from "../../renderer/state/autosave.ts";
import { got, VENTS } from "../edit/given.ts";
import { openIn, pageOn, pageWithVents, watched } from "./stage.ts";

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

const KEY_ON: Action = { do: "throw", control: "S1", position: "on" };
const LENGTHEN: Action = { do: "make", command: (bench) => changeLength(bench, "W13", "4") };

describe("two windows on one circuit", () => {
  const TICK: Action = { do: "make", command: (bench) => observeCheck(bench, VENTS.checks[1]!.id, "works") };
  const ticksIn = async (host: Host, id: string) =>
    JSON.parse(got(await host.ask("circuits.open", { id })).bench ?? "{}").bench?.observed;

  /** Both have the same stored circuit on the bench; the first has ticked a check since, and that is kept. */
  async function twoWindows() {
    const first = await pageWithVents();
    const second = pageOn(watched(first.host));
    second.store.dispatch({ do: "open-circuit", id: first.id });
    await vi.advanceTimersByTimeAsync(0);
    first.store.dispatch(TICK);
    await vi.advanceTimersByTimeAsync(SAVE_AFTER_MS);
    return { first, second, id: first.id, ticks: { [VENTS.checks[1]!.id]: "works" } };
  }

  test("the later says that its throw is not kept, writes over nothing, and keeps it as a copy on opening again", async () => {
    const { second, id, ticks } = await twoWindows();
    second.store.dispatch(KEY_ON);
    await vi.advanceTimersByTimeAsync(SAVE_AFTER_MS);
    expect(openIn(second.store).saved).toBe("failed");
    const [notice] = second.store.getState().notices;
    expect(notice).toMatchObject({
      words: "Its condition, ticks or faults were changed in another window; open it again, or keep yours as a copy.",
      offers: [{ words: "Keep mine as a copy" }, { words: "Open it again" }],
    });
    expect(await ticksIn(second.host, id)).toEqual(ticks);
    second.calls.length = 0;
    second.store.dispatch(notice!.offers![1]!.action);
    await vi.advanceTimersByTimeAsync(SAVE_AFTER_MS);
    expect(openIn(second.store)).toMatchObject({ id, saved: "saved", desk: { bench: { observed: ticks } } });
    const [copy] = second.sent("circuits.create");
    expect(JSON.parse(copy!.bench!).bench.condition.set).toEqual({ S1: "on" });
    // The host is told last what is on the bench of this window: not the copy.
    const opens = second.calls.filter(({ name }) => name === "circuits.open" || name === "circuits.create");
    expect(opens.at(-1)).toEqual({ name: "circuits.open", argument: { id } });
  });

  test("the later draws: its wire goes beside the first's ticks, never over them", async () => {
    const { second, id, ticks } = await twoWindows();
    second.store.dispatch(LENGTHEN);
    second.store.dispatch({ do: "close" });
    await vi.advanceTimersByTimeAsync(SAVE_AFTER_MS);
    expect(await ticksIn(second.host, id)).toEqual(ticks);
    expect(second.store.getState().notices).toMatchObject([{ title: "Your changes are kept as Roof vents (copy)." }]);
    expect(second.store.getState().shelf.circuits).toHaveLength(2);
  });

  test("the later only looks about: it follows, keeps its page in sight, and makes no copy", async () => {
    const { second, id, ticks } = await twoWindows();
    second.store.dispatch({ do: "show-page", page: "p3" });
    await vi.advanceTimersByTimeAsync(SAVE_AFTER_MS);
    expect(openIn(second.store)).toMatchObject({ id, page: "p3", desk: { bench: { observed: ticks } } });
    expect(second.store.getState().notices).toMatchObject([
      { title: "Roof vents was changed in another window.", isError: false },
    ]);
    second.store.dispatch({ do: "close" });
    await vi.advanceTimersByTimeAsync(SAVE_AFTER_MS);
    expect(second.store.getState().shelf.circuits).toHaveLength(1);
    expect(await ticksIn(second.host, id)).toEqual(ticks);
  });

  test("the later is looked at again: it follows before anything is done in it", async () => {
    const { second, ticks } = await twoWindows();
    await second.saving.look();
    await vi.advanceTimersByTimeAsync(0);
    expect(openIn(second.store).desk.bench.observed).toEqual(ticks);
    second.store.dispatch(KEY_ON);
    await vi.advanceTimersByTimeAsync(SAVE_AFTER_MS);
    expect(openIn(second.store)).toMatchObject({ saved: "saved", desk: { bench: { observed: ticks } } });
  });

  test("the later is put away though it was only looked at: no copy is made, not even of a circuit deleted meanwhile", async () => {
    const { second, id } = await twoWindows();
    await second.host.ask("circuits.remove", { id });
    second.store.dispatch({ do: "show-page", page: "p3" });
    second.store.dispatch({ do: "close" });
    await vi.advanceTimersByTimeAsync(SAVE_AFTER_MS);
    expect(second.sent("circuits.create")).toEqual([]);
    expect(second.saving.isAllKept()).toBe(true);
    expect(second.store.getState().notices).toEqual([]);
  });

  test("both only look about: neither is told of the other", async () => {
    const first = await pageWithVents();
    const second = pageOn(watched(first.host));
    second.store.dispatch({ do: "open-circuit", id: first.id });
    await vi.advanceTimersByTimeAsync(0);
    for (const page of ["p2", "p3"])
      for (const { store } of [first, second]) {
        store.dispatch({ do: "show-page", page });
        await vi.advanceTimersByTimeAsync(SAVE_AFTER_MS);
      }
    expect([first, second].map(({ store }) => store.getState().notices)).toEqual([[], []]);
  });
});
