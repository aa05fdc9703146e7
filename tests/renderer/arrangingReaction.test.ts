import { describe, expect, test } from "vitest";
import type { Attempt } from "../../core/edit/arranging.ts";
import { moveThings } from "../../core/edit/commands/moveThings.ts";
import { pinParts } from "../../core/edit/commands/pinParts.ts";
import type { Drafting } from "../../renderer/arrange/arrange.ts";
import type { ElkGraph } from "../../renderer/arrange/elkGraph.ts";
import type { Action } from "../../renderer/state/action.ts";
import { arrangingReaction } from "../../renderer/state/arranging.ts";
import { createAppStore } from "../../renderer/state/store.ts";
import { SMALL } from "../edit/given.ts";
import { openIn } from "./stage.ts";

const M1 = SMALL.placement.parts.M1!;
const settle = () => new Promise<void>((resolve) => setTimeout(resolve, 0));
const figures = (bends: number) => ({ broken: 0, crossings: 1, bends, length: 9 });

function attempt(before: number, after: number): Attempt {
  return {
    places: { M1: { ...M1, x: M1.x + 1 } },
    compared: { before: figures(before), after: figures(after), isBetter: after < before },
  };
}

/** A window whose layouts come to this attempt once they are let go. */
function arranging(outcome: Attempt | null | Error) {
  const gate = Promise.withResolvers<void>();
  let ended = 0;
  const drafted = async (): Promise<Attempt | null> => {
    await gate.promise;
    if (outcome instanceof Error) throw outcome;
    return outcome;
  };
  const drafting: Drafting = {
    layOut: (graph: ElkGraph) => Promise.resolve(graph),
    attempt: drafted,
    refine: drafted,
    end: () => {
      ended += 1;
    },
  };
  const store = createAppStore("light", [arrangingReaction(() => drafting)]);
  store.dispatch({
    do: "opened",
    opened: { id: "c1", version: 1, circuit: SMALL, bench: null, benchVersion: 0, known: false },
  });
  return {
    store,
    finish: async (): Promise<void> => {
      gate.resolve();
      for (let turns = 0; turns < 4; turns++) await settle();
    },
    ended: () => ended,
    xOfM1: () => openIn(store).desk.bench.circuit.placement.parts.M1!.x,
  };
}

const PAGE: Action = { do: "arrange", what: "page" };

describe("arranging in the window", () => {
  test("tells which attempt is under way, takes what is better in one step, and its notice offers to undo it", async () => {
    const { store, finish, ended, xOfM1 } = arranging(attempt(8, 3));
    store.dispatch(PAGE);
    expect(store.getState().arranging).toBe(1);
    await finish();
    expect(store.getState().arranging).toBeNull();
    expect(ended()).toBe(1);
    expect(xOfM1()).toBe(M1.x + 1);
    const [notice] = store.getState().notices;
    expect(notice!.words).toContain("3\u00A0bends");
    expect(notice!.words).toContain("8\u00A0bends");
    store.dispatch(notice!.offers![0]!.action);
    expect(openIn(store).desk.bench.circuit).toEqual(SMALL);
    expect(store.getState().notices).toEqual([]);
  });

  test("leaves what is no better as it was, says the figures, and takes it when told to", async () => {
    const { store, finish, xOfM1 } = arranging(attempt(3, 8));
    store.dispatch(PAGE);
    await finish();
    expect(openIn(store).desk.bench.circuit).toBe(SMALL);
    const [notice] = store.getState().notices;
    expect(notice!.words).toMatch(/3\u00A0bends.*8\u00A0bends/);
    store.dispatch(notice!.offers![0]!.action);
    expect(xOfM1()).toBe(M1.x + 1);
    expect(openIn(store).desk.history.done).toHaveLength(1);
  });

  test("is given up by cancel at once, and what comes late is not taken", async () => {
    const { store, finish, ended } = arranging(attempt(8, 3));
    store.dispatch(PAGE);
    store.dispatch({ do: "cancel-arrange" });
    expect(store.getState().arranging).toBeNull();
    expect(ended()).toBe(1);
    await finish();
    expect(openIn(store).desk.bench.circuit).toBe(SMALL);
    expect(store.getState().notices).toEqual([]);
  });

  test("is given up when the drawing is changed, and says so; a throw does not change the drawing", async () => {
    const { store, finish, ended, xOfM1 } = arranging(attempt(8, 3));
    store.dispatch(PAGE);
    store.dispatch({ do: "throw", control: "S1", position: "on" });
    expect(ended()).toBe(0);
    store.dispatch({ do: "make", command: (bench) => moveThings(bench, ["M1"], 0, 1) });
    expect(ended()).toBe(1);
    expect(store.getState().notices).toHaveLength(1);
    await finish();
    expect(xOfM1()).toBe(M1.x);
  });

  test("does not begin twice, nor where all is pinned, and the program's own error is told", async () => {
    const { store, finish, ended } = arranging(new Error("broken"));
    store.dispatch(PAGE);
    store.dispatch(PAGE);
    await finish();
    expect(ended()).toBe(1);
    expect(store.getState().notices[0]).toMatchObject({ isError: true, words: "broken" });
    store.dispatch({ do: "make", command: (bench) => pinParts(bench, ["M1"], true) });
    store.dispatch({ do: "choose", thing: { is: "part", id: "M1" } });
    store.dispatch({ do: "arrange", what: "chosen" });
    expect(store.getState().arranging).toBeNull();
    expect(store.getState().notices.at(-1)).toMatchObject({ isError: true });
  });

  test("says where no attempt found room", async () => {
    const { store, finish } = arranging(null);
    store.dispatch(PAGE);
    await finish();
    expect(store.getState().notices).toHaveLength(1);
    expect(openIn(store).desk.bench.circuit).toBe(SMALL);
  });
});
