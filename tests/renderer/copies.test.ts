import { expect, test } from "vitest";
import { duplicateThings } from "../../core/edit/commands/duplicateThings.ts";
import { makeCopies } from "../../renderer/state/makeCopies.ts";
import { createAppStore } from "../../renderer/state/store.ts";
import { VENTS } from "../edit/given.ts";
import { openIn } from "./stage.ts";

function storeWithVents() {
  const store = createAppStore();
  const opened = { id: "c1", version: 1, circuit: VENTS, bench: null, benchVersion: 0, known: false };
  store.dispatch({ do: "opened", opened });
  store.dispatch({ do: "choose", thing: { is: "part", id: "S3" } });
  return store;
}

test("copies are chosen when they come, in place of what they were copied from", () => {
  const store = storeWithVents();
  const before = new Set(VENTS.parts.map(({ id }) => id));
  makeCopies(store, (bench) => duplicateThings(bench, ["S3", "M1"], 4, 0));
  const { chosen, also } = openIn(store);
  const ids = [chosen!, ...also].map(({ id }) => id);
  expect(ids).toHaveLength(2);
  expect(ids.filter((id) => before.has(id))).toEqual([]);
});

test("where no copy is made, what was chosen stays", () => {
  const store = storeWithVents();
  makeCopies(store, (bench) => duplicateThings(bench, ["S99"], 4, 0));
  expect(openIn(store).chosen).toEqual({ is: "part", id: "S3" });
});
