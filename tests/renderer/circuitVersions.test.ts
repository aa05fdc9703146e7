import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { ok } from "../../core/base/outcome.ts";
import { changeTitle } from "../../core/edit/commands/changeTitle.ts";
import { got, VENTS } from "../edit/given.ts";
import { openIn, pageOn, watched } from "./stage.ts";

describe("the versions of an open circuit", () => {
  beforeEach(() => {
    vi.useFakeTimers();
  });
  afterEach(() => {
    vi.useRealTimers();
  });
  const settle = () => vi.advanceTimersByTimeAsync(0);
  const ROWS = [
    { version: 2, saved: "2026-03-12T14:05:00Z", name: "title the circuit", by: "ann" },
    { version: 1, saved: "2026-03-11T09:00:00Z", name: "begin", by: "ann" },
  ];

  /** A page on which the vents stand, with another title, and whose host keeps the version before. */
  async function withVersions() {
    const seen = watched();
    const { host } = seen;
    const ask: typeof host.ask = async (name, argument) => {
      const answer = await host.ask(name, argument);
      if (!answer.ok && answer.refusal.code !== "version-unknown") return answer;
      const said: unknown =
        name === "circuits.versions"
          ? { versions: ROWS, besides: [] }
          : name === "circuits.version"
            ? { circuit: VENTS }
            : null;
      return said === null ? answer : (ok(said) as typeof answer);
    };
    const page = pageOn({ ...seen, host: { name: "memory", ask } });
    const made = got(await seen.host.ask("circuits.create", { circuit: { ...VENTS, title: "Vents" } }));
    page.store.dispatch({ do: "open-circuit", id: made.id });
    await settle();
    return page;
  }

  test("are listed newest first, more of them when asked", async () => {
    const { store } = await withVersions();
    store.dispatch({ do: "list-versions" });
    await settle();
    expect(openIn(store).versions).toMatchObject({ rows: ROWS, trouble: null });
    const { shown } = openIn(store).versions;
    store.dispatch({ do: "show-older" });
    expect(openIn(store).versions.shown).toBeGreaterThan(shown);
  });

  test("that cannot be read are told where they would stand", async () => {
    const page = await withVersions();
    page.refuse("circuits.versions", "store-locked");
    page.store.dispatch({ do: "list-versions" });
    await settle();
    expect(openIn(page.store).versions.trouble).toContain("Wirefathom");
  });

  test("bring the circuit back as one edit with the time in its name, and undo takes it away again", async () => {
    const { store } = await withVersions();
    store.dispatch({ do: "bring-back", row: ROWS[1]! });
    await settle();
    expect(openIn(store).desk.bench.circuit.title).toBe(VENTS.title);
    expect(openIn(store).desk.history.done.at(-1)!.edit.name).toMatch(/^bring back the version of 11 March 2026, /);
    store.dispatch({ do: "undo" });
    expect(openIn(store).desk.bench.circuit.title).toBe("Vents");
  });

  test("are not brought onto a bench that took the place of theirs", async () => {
    const page = await withVersions();
    const letGo = page.hold("circuits.version");
    page.store.dispatch({ do: "bring-back", row: ROWS[1]! });
    page.store.dispatch({ do: "sample-opened", circuit: { ...VENTS, title: "Sample" } });
    letGo();
    await settle();
    expect(openIn(page.store).desk.bench.circuit.title).toBe("Sample");
    expect(openIn(page.store).desk.history.done).toEqual([]);
  });

  test("a version that is as the bench stands is told, one that is damaged too", async () => {
    const page = await withVersions();
    page.store.dispatch({ do: "make", command: (bench) => changeTitle(bench, VENTS.title) });
    page.store.dispatch({ do: "bring-back", row: ROWS[1]! });
    await settle();
    expect(page.store.getState().notices).toMatchObject([{ title: "Nothing differs." }]);
    page.refuse("circuits.version", "version-damaged");
    page.store.dispatch({ do: "bring-back", row: ROWS[1]! });
    await settle();
    expect(page.store.getState().notices.at(-1)).toMatchObject({ title: "Not brought back.", isError: true });
  });
});
