import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { ok } from "../../core/base/outcome.ts";
import { emptyBin } from "../../electron/store/sqlite/circuits.ts";
import type { Argument } from "../../schemas/calls.ts";
import { formatExercise } from "../../schemas/exercise.ts";
import { ROUNDS_LIMITS } from "../../schemas/seal.ts";
import { exerciseWith, LAMP, worked } from "../lesson/given.ts";
import { ask, code, got, hostOn, MORNING, ownFolder, value } from "./library.ts";
import { sampleText } from "./sample.ts";

const given = exerciseWith(LAMP, "W4:open", { title: "Dark lamp" });
const hidden = { fault: "W4:open", seed: null, note: "" };
const text = value(await formatExercise(given.exercise, hidden, "correct horse", ROUNDS_LIMITS.least));
const route = worked(given, "throw S1=on", "probe F1.2", "verdict W4:open by 1")
  .route as Argument<"attempts.add">["moves"];

it("keeps an exercise with its route, lists it, and brings it back at the next start", async () => {
  const folder = ownFolder();
  const host = hostOn(folder);
  const { id, ...taken } = await got(host, "attempts.take", { text });
  expect(taken).toEqual({ text, learner: "", route: [], wasDeleted: false });
  await got(host, "attempts.add", { id, from: 0, moves: route.slice(0, 2), learner: "Ann" });
  await host.keeper.close();

  const again = hostOn(folder);
  expect(await got(again, "start", {})).toMatchObject({ open: null, exercise: { id } });
  const { rows } = await got(again, "attempts.list", {});
  expect(rows).toMatchObject([
    { id, title: "Dark lamp", complaint: "The lamp lights", minutes: 0.6, moves: 2, isOver: false },
  ]);
  expect(await got(again, "attempts.open", { id })).toEqual({ id, text, learner: "Ann", route: route.slice(0, 2) });
  await got(again, "attempts.add", { id, from: 2, moves: route.slice(2), learner: "Ann" });
  expect((await got(again, "attempts.take", { text })).route).toEqual(route);
  expect((await got(again, "attempts.list", {})).rows[0]).toMatchObject({ isOver: true, moves: 3 });
});

it("is no longer brought back once it was left or a circuit was opened", async () => {
  const host = hostOn(ownFolder());
  await got(host, "attempts.take", { text });
  await got(host, "circuits.import", { text: sampleText() });
  expect((await got(host, "start", {})).exercise).toBeNull();
  await got(host, "attempts.take", { text });
  expect(await got(host, "start", {})).toMatchObject({ open: null, exercise: { id: expect.any(String) } });
  await got(host, "circuits.close", {});
  expect((await got(host, "start", {})).exercise).toBeNull();
});

it("keeps no moves of a page that does not know the last ones", async () => {
  const host = hostOn(ownFolder());
  const { id } = await got(host, "attempts.take", { text });
  const add = (from: number) => ask(host, "attempts.add", { id, from, moves: route.slice(0, 1), learner: "" });
  expect((await add(0)).ok).toBe(true);
  expect(code(await add(0))).toBe("attempt-elsewhere");
  expect((await got(host, "attempts.open", { id })).route).toHaveLength(1);
});

it("is begun again with no moves, for the same learner", async () => {
  const host = hostOn(ownFolder());
  const { id } = await got(host, "attempts.take", { text });
  await got(host, "attempts.add", { id, from: 0, moves: route, learner: "Ann" });
  expect(await got(host, "attempts.restart", { id })).toEqual({ id, text, learner: "Ann", route: [] });
  expect((await got(host, "attempts.list", {})).rows[0]).toMatchObject({ moves: 0, minutes: 0, isOver: false });
  await got(host, "attempts.remove", { id });
  expect(code(await ask(host, "attempts.restart", { id }))).toBe("attempt-unknown");
});

it("goes to the bin and comes back, and is let go after 30 days", async () => {
  const host = hostOn(ownFolder());
  const { id } = await got(host, "attempts.take", { text });
  await got(host, "attempts.remove", { id });
  expect(code(await ask(host, "attempts.open", { id }))).toBe("attempt-unknown");
  expect((await got(host, "attempts.list", { where: "bin" })).rows).toHaveLength(1);
  await got(host, "attempts.restore", { id });
  await got(host, "attempts.open", { id });
  await got(host, "attempts.remove", { id });
  // Its file taken in again, it comes back with what was done, and that is said.
  expect((await got(host, "attempts.take", { text })).wasDeleted).toBe(true);
  expect((await got(host, "attempts.take", { text })).wasDeleted).toBe(false);
  await got(host, "attempts.remove", { id });
  emptyBin(value(await host.keeper.store()), new Date(MORNING.getTime() + 31 * 86_400_000));
  expect(code(await ask(host, "attempts.restore", { id }))).toBe("attempt-unknown");
});

it("refuses what is no exercise, and a row whose bytes changed", async () => {
  const host = hostOn(ownFolder());
  expect(code(await ask(host, "attempts.take", { text: sampleText() }))).toBe("exercise-format");
  expect(code(await ask(host, "attempts.take", { text: text.replace('"version": 1', '"version": 2') }))).toBe(
    "file-newer",
  );
  const { id } = await got(host, "attempts.take", { text });
  value(await host.keeper.store()).connection.exec("UPDATE attempts SET route = x'00'");
  expect(code(await ask(host, "attempts.open", { id }))).toBe("attempt-damaged");
});

it("hands an exercise's file to the page by name, as chosen, as given at start and as it comes from the desktop", async () => {
  const folder = ownFolder();
  const path = join(folder, "lamp.exercise.json");
  writeFileSync(path, text);
  const host = hostOn(join(folder, "library"), { chooseFile: async () => ok({ path }) });
  const file = { name: "lamp.exercise.json", text };
  expect(await got(host, "files.open", {})).toEqual({ done: "exercise", ...file });
  host.requests.setStartFile(path);
  expect(await got(host, "start", {})).toMatchObject({ open: null, exercise: file, notices: [] });
  host.requests.add({ file: path });
  expect((await got(host, "nextRequest", {})).request).toEqual({ ask: "exercise", ...file });
});
