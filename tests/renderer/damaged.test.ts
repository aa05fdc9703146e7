import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { refuse } from "../../core/base/outcome.ts";
import type { Host } from "../../renderer/host/host.ts";
import { got, VENTS } from "../edit/given.ts";
import { openIn, pageOn, watched } from "./stage.ts";

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

/** A page on a library with one circuit of four versions, of which only these can be read. */
async function withVersions(...readable: readonly number[]) {
  const seen = watched();
  const { id } = got(await seen.host.ask("circuits.create", { circuit: VENTS }));
  const damaged = refuse("version-damaged", { version: 4, title: "Roof vents" });
  const answers: Readonly<Record<string, (argument: never) => unknown>> = {
    "circuits.open": (argument: { id: string }) => (argument.id === id ? damaged : null),
    "circuits.versions": () => ({
      ok: true,
      value: { versions: [4, 3, 2, 1].map((version) => ({ version, saved: "2026-01-01T00:00:00Z", name: "Edit" })) },
    }),
    "circuits.version": ({ version }: { version: number }) =>
      readable.includes(version)
        ? { ok: true, value: { circuit: { ...VENTS, vehicle: `As in ${version}` } } }
        : damaged,
  };
  const ask = (async (name, argument) =>
    answers[name]?.(argument as never) ?? (await seen.host.ask(name, argument))) as Host["ask"];
  const page = pageOn({ ...seen, host: { name: "memory", ask } });
  page.store.dispatch({ do: "open-circuit", id });
  await vi.advanceTimersByTimeAsync(0);
  const [notice] = page.store.getState().notices;
  return { ...page, notice: notice!, id };
}

test("a circuit whose newest version is damaged is opened as it was before, as a circuit of its own", async () => {
  const { store, notice, id } = await withVersions(1, 2);
  expect(notice).toMatchObject({
    title: "That circuit was not opened.",
    words: "Version 4 of Roof vents is damaged on the disk.",
    offers: [{ words: "Open an earlier version" }],
  });
  store.dispatch(notice.offers![0]!.action);
  await vi.advanceTimersByTimeAsync(0);
  const open = openIn(store);
  expect(open.id).not.toBe(id);
  expect(open.desk.bench.circuit).toMatchObject({ title: "Roof vents (copy)", vehicle: "As in 2" });
});

test("where no version can be read that is said", async () => {
  const { store, notice } = await withVersions();
  store.dispatch(notice.offers![0]!.action);
  await vi.advanceTimersByTimeAsync(0);
  expect(store.getState().open).toBeNull();
  expect(store.getState().notices.at(-1)!.words).toBe("No version of this circuit can be read any more.");
});

test("a bench that cannot be read any more is told of, and the circuit opens without it", async () => {
  const page = pageOn();
  const opened = { id: "c1", version: 2, circuit: VENTS, bench: null, benchVersion: 3, known: false };
  page.store.dispatch({ do: "opened", opened });
  expect(openIn(page.store).desk.bench.circuit).toEqual(VENTS);
  expect(page.store.getState().notices).toMatchObject([
    { title: "What was noted on Roof vents cannot be read any more.", isError: true },
  ]);
});
