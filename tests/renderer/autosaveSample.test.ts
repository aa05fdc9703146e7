import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { type Reading, readingOf } from "../../core/diagnose/reading.ts";
import { changeLength } from "../../core/edit/commands/changeLength.ts";
import { chooseComplaint } from "../../core/edit/commands/chooseComplaint.ts";
import { observeCheck } from "../../core/edit/commands/observeCheck.ts";
import { setBatteryVolts } from "../../core/edit/commands/setBatteryVolts.ts";
import { takeReadings } from "../../core/edit/commands/takeReadings.ts";
import type { Action } from "../../renderer/state/action.ts";
import { SAVE_AFTER_MS } from "../../renderer/state/autosave.ts";
import { VENTS } from "../edit/given.ts";
import { openIn, pageOn } from "./stage.ts";

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

const KEY_ON: Action = { do: "throw", control: "S1", position: "on" };
const lengthen = (metres: string): Action => ({
  do: "make",
  command: (bench) => changeLength(bench, "W13", metres),
});
const FEED_READ: Reading = readingOf(
  {
    red: "X5-6",
    black: "battery -",
    instrument: "meter volts",
    lampTo: null,
    condition: { set: { S1: "on" } },
  },
  { volts: 12.3, word: null },
);

describe("a sample that was only tried", () => {
  const listed = async ({ host }: ReturnType<typeof pageOn>) => {
    const list = await host.ask("circuits.list", {});
    return list.ok ? list.value.count : Number.NaN;
  };
  const deleted = ({ store }: ReturnType<typeof pageOn>) => store.getState().shelf.deleted.length;

  test("is kept once something is done with it, and is gone when it is closed", async () => {
    const page = pageOn();
    page.store.dispatch({ do: "open-sample", sample: "vents" });
    await vi.advanceTimersByTimeAsync(1000);
    expect(await listed(page)).toBe(0);
    page.store.dispatch(KEY_ON);
    await vi.advanceTimersByTimeAsync(SAVE_AFTER_MS);
    expect(await listed(page)).toBe(1);
    page.store.dispatch({ do: "close" });
    await vi.advanceTimersByTimeAsync(0);
    expect(await listed(page)).toBe(0);
    // Nobody misses a few switches that were thrown.
    expect(deleted(page)).toBe(0);
  });

  test("is gone too where it is closed while it is being kept", async () => {
    const page = pageOn();
    page.store.dispatch({ do: "open-sample", sample: "vents" });
    await vi.advanceTimersByTimeAsync(0);
    const letGo = page.hold("circuits.create");
    page.store.dispatch(KEY_ON);
    await vi.advanceTimersByTimeAsync(SAVE_AFTER_MS);
    page.store.dispatch({ do: "close" });
    page.store.dispatch({ do: "open-sample", sample: "vents" });
    await vi.advanceTimersByTimeAsync(0);
    letGo();
    await vi.advanceTimersByTimeAsync(1000);
    expect(await listed(page)).toBe(0);
    expect(openIn(page.store)).toMatchObject({ id: null, isTrial: true });
  });

  test("on which something was noted is offered when it is closed, and comes back as a circuit with all of it", async () => {
    const page = pageOn();
    page.store.dispatch({ do: "open-sample", sample: "vents" });
    await vi.advanceTimersByTimeAsync(0);
    const [complaint, other] = VENTS.checks;
    page.store.dispatch({ do: "make", command: (bench) => chooseComplaint(bench, complaint!.id) });
    page.store.dispatch({ do: "make", command: (bench) => observeCheck(bench, other!.id, "works") });
    page.store.dispatch({ do: "close" });
    await vi.advanceTimersByTimeAsync(0);
    expect(await listed(page)).toBe(0);
    expect(deleted(page)).toBe(1);
    const [notice] = page.store.getState().notices;
    expect(notice).toMatchObject({
      words: "What you noted on it stands under Deleted for 30 days: the complaint and 1\u00A0tick.",
      isError: false,
    });
    page.store.dispatch(notice!.offers![0]!.action);
    await vi.advanceTimersByTimeAsync(0);
    const [row] = page.store.getState().shelf.circuits;
    page.store.dispatch({ do: "open-circuit", id: row!.id });
    await vi.advanceTimersByTimeAsync(0);
    expect(openIn(page.store).desk.bench).toMatchObject({
      complaint: complaint!.id,
      observed: { [other!.id]: "works" },
    });
    page.store.dispatch({ do: "close" });
    await vi.advanceTimersByTimeAsync(0);
    expect(await listed(page)).toBe(1);
  });

  test("on which only readings were taken is offered too", async () => {
    const page = pageOn();
    page.store.dispatch({ do: "open-sample", sample: "vents" });
    await vi.advanceTimersByTimeAsync(0);
    page.store.dispatch({ do: "make", command: (bench) => takeReadings(bench, [FEED_READ, FEED_READ]) });
    page.store.dispatch({ do: "make", command: (bench) => setBatteryVolts(bench, "12.4") });
    page.store.dispatch({ do: "close" });
    await vi.advanceTimersByTimeAsync(0);
    expect(deleted(page)).toBe(1);
    expect(page.store.getState().notices[0]).toMatchObject({
      words: "What you noted on it stands under Deleted for 30 days: 2\u00A0readings and volts of the battery.",
    });
  });

  test("whose circuit was edited stays in the library", async () => {
    const page = pageOn();
    page.store.dispatch({ do: "open-sample", sample: "vents" });
    await vi.advanceTimersByTimeAsync(0);
    page.store.dispatch(lengthen("4"));
    page.store.dispatch({ do: "close" });
    await vi.advanceTimersByTimeAsync(0);
    expect(await listed(page)).toBe(1);
    expect(page.store.getState().shelf.circuits).toHaveLength(1);
  });
});
