import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import Database from "better-sqlite3";
import { expect, it, onTestFinished } from "vitest";
import { ok } from "../../core/base/outcome.ts";
import { type Job, jobAbout } from "../../core/diagnose/job.ts";
import { emptyBin } from "../../electron/store/sqlite/circuits.ts";
import { jobAt, listJobs } from "../../electron/store/sqlite/jobs.ts";
import { closeStore, openStore, STORE_FILE } from "../../electron/store/sqlite/open.ts";
import { ask, code, got, hostOn, MORNING, ownFolder, value } from "./library.ts";
import { sample } from "./sample.ts";

const ABOUT = { complaint: null, observed: {}, readings: [], batteryVolts: null, when: [] };
const jobOn = (id: string, more: Partial<Job> = {}): Job => ({
  ...jobAbout(id),
  ...ABOUT,
  vehicle: `B-${id}`,
  ...more,
});
const SOLVED = { verdict: { suspect: "W3:open", share: 0.97, time: null }, done: "new wire" };
const ids = (rows: readonly { readonly id: string }[]) => rows.map(({ id }) => id);

it("keeps jobs with the bench they stand on, and lists open ones first, newest first", async () => {
  const folder = ownFolder();
  const host = hostOn(folder);
  const { id } = await got(host, "circuits.create", {
    circuit: sample("Horn"),
    bench: "1",
    jobs: [jobOn("a", SOLVED)],
  });
  const later = (minutes: number) => host.setNow(new Date(MORNING.getTime() + minutes * 60_000));
  later(1);
  await got(host, "benches.save", { id, version: 1, bench: "2", benchVersion: 1, jobs: [jobOn("b")] });
  later(2);
  const circuit = sample("Horn, second");
  const save = { id, version: 1, circuit, bench: "3", benchVersion: 2, name: "Rename", jobs: [jobOn("c")] };
  await got(host, "circuits.save", save);
  later(3);
  // As it was: nothing of it is new.
  await got(host, "benches.save", { id, version: 2, bench: "4", benchVersion: 3, jobs: [jobOn("b")] });
  await host.keeper.close();

  const again = hostOn(folder);
  const { rows, count } = await got(again, "jobs.list", {});
  expect([ids(rows), count]).toEqual([["c", "b", "a"], 3]);
  expect(rows[2]).toMatchObject({
    circuit: id,
    title: "Horn, second",
    suspect: "W3:open",
    share: 0.97,
    isSolved: true,
  });
  expect(await got(again, "jobs.read", { circuit: id, id: "a" })).toEqual({ job: jobOn("a", SOLVED) });
});

it("keeps a job beside where the bench was changed elsewhere, and nothing of it where a look is refused", async () => {
  const host = hostOn(ownFolder());
  const { id } = await got(host, "circuits.create", { circuit: sample("Horn"), bench: "1", jobs: [jobOn("a")] });
  const stale = { id, version: 1, bench: "2", benchVersion: 0, jobs: [jobOn("a", { told: "other" })] };
  expect(code(await ask(host, "benches.save", { ...stale, isSight: true }))).toBe("bench-changed-elsewhere");
  expect(code(await ask(host, "benches.save", { ...stale, version: 7, benchVersion: 1, isSight: true }))).toBe(
    "circuit-changed-elsewhere",
  );
  const beside = await got(host, "benches.save", stale);
  expect((await got(host, "jobs.read", { circuit: beside.id, id: "a" })).job.told).toBe("other");
  expect((await got(host, "jobs.read", { circuit: id, id: "a" })).job.told).toBe("");
});

it("finds a job by vehicle, what was told, its circuit, verdict and what was done, within one circuit or all", async () => {
  const host = hostOn(ownFolder());
  const jobs = [jobOn("a", { ...SOLVED, vehicle: "M-XY 77", told: "Hupe stumm" }), jobOn("b")];
  const { id } = await got(host, "circuits.create", { circuit: sample("Horn"), bench: "1", jobs });
  const other = await got(host, "circuits.create", { circuit: sample("Blower"), bench: "1", jobs: [jobOn("b")] });
  const found = async (search: string, circuit: string | null = null) =>
    (await got(host, "jobs.list", { search, circuit })).rows.map((row) => `${row.title} ${row.id}`);
  expect(await found("m-xy")).toEqual(["Horn a"]);
  expect(await found("stum hup")).toEqual(["Horn a"]);
  expect(await found("W3")).toEqual(["Horn a"]);
  expect(await found("new wire")).toEqual(["Horn a"]);
  expect(await found("blow")).toEqual(["Blower b"]);
  expect(await found("...")).toEqual([]);
  expect(await found("", other.id)).toEqual(["Blower b"]);
  expect((await found("", id)).toSorted()).toEqual(["Horn a", "Horn b"]);
});

it("goes to the bin and back; changed on a bench it comes back by itself; after 30 days it is gone", async () => {
  const folder = ownFolder();
  const host = hostOn(folder);
  const { id } = await got(host, "circuits.create", { circuit: sample("Horn"), bench: "1", jobs: [jobOn("a")] });
  const place = { circuit: id, id: "a" };
  expect(await got(host, "jobs.remove", place)).toMatchObject({ removed: MORNING.toISOString() });
  expect(code(await ask(host, "jobs.read", place))).toBe("job-unknown");
  expect(code(await ask(host, "jobs.remove", place))).toBe("job-unknown");
  expect((await got(host, "jobs.list", { where: "bin" })).count).toBe(1);
  await got(host, "jobs.restore", place);
  expect((await got(host, "jobs.list", {})).count).toBe(1);
  await got(host, "jobs.remove", place);
  const changed = [jobOn("a", { told: "again" })];
  await got(host, "benches.save", { id, version: 1, bench: "2", benchVersion: 1, jobs: changed });
  expect((await got(host, "jobs.list", {})).count).toBe(1);
  await got(host, "jobs.remove", place);
  const store = value(await host.keeper.store());
  emptyBin(store, new Date(MORNING.getTime() + 31 * 86_400_000));
  expect((await got(host, "jobs.list", { where: "bin" })).count).toBe(0);
  expect((await got(host, "jobs.list", { search: "again", where: "bin" })).count).toBe(0);
});

it("goes with its circuit", async () => {
  const host = hostOn(ownFolder());
  const { id } = await got(host, "circuits.create", { circuit: sample("Horn"), bench: "1", jobs: [jobOn("a")] });
  await got(host, "circuits.remove", { id });
  expect((await got(host, "jobs.list", {})).count).toBe(0);
  await got(host, "circuits.restore", { id });
  expect((await got(host, "jobs.list", { search: "horn" })).count).toBe(1);
  await got(host, "circuits.remove", { id, isForGood: true });
  const store = value(await host.keeper.store());
  expect(store.connection.prepare("SELECT count(*) FROM jobs").pluck().get()).toBe(0);
});

it("refuses at the door what is no job", async () => {
  const host = hostOn(ownFolder());
  const { id } = await got(host, "circuits.create", { circuit: sample("Horn") });
  for (const wrong of [{ ...jobOn("a"), when: ["windy"] }, { ...jobOn("a"), id: "" }, { id: "a" }])
    expect(
      code(await ask(host, "benches.save", { id, version: 1, bench: "1", benchVersion: 0, jobs: [wrong as Job] })),
    ).toBe("call-argument");
});

it("says that a job is damaged whose bytes changed on the disk", async () => {
  const host = hostOn(ownFolder());
  const { id } = await got(host, "circuits.create", { circuit: sample("Horn"), bench: "1", jobs: [jobOn("a")] });
  const store = value(await host.keeper.store());
  store.connection.exec("UPDATE jobs SET state = x'00'");
  expect(code(await ask(host, "jobs.read", { circuit: id, id: "a" }))).toBe("job-damaged");
});

it("reads a library that has jobs already", async () => {
  const folder = join(ownFolder(), "library");
  mkdirSync(folder);
  const written = new Database(join(folder, STORE_FILE));
  written.unsafeMode();
  written.exec(readFileSync(new URL("libraries/004-jobs.sql", import.meta.url), "utf8"));
  written.close();
  const store = value(await openStore(folder, MORNING));
  onTestFinished(() => closeStore(store));
  const all = { search: "lamp", where: "library", circuit: null, from: 0, limit: 10 } as const;
  const [row] = listJobs(store, all).rows;
  expect(row).toMatchObject({ id: "j1", vehicle: "B-AD 1", title: "Fixture of a library", isSolved: false });
  expect(value(jobAt(store, { circuit: row!.circuit, id: "j1" })).told).toBe("rear lamp dead");
});

it("hands a chosen job file to the page, by the name of the file, and refuses one that is no text", async () => {
  const folder = ownFolder();
  const path = join(folder, "vent.job.json");
  const host = hostOn(join(folder, "library"), { chooseFile: async () => ok({ path }) });
  writeFileSync(path, '{"format":"wirefathom/job"}');
  expect(await got(host, "files.open", {})).toEqual({
    done: "job",
    name: "vent.job.json",
    text: '{"format":"wirefathom/job"}',
  });
  host.requests.add({ file: path });
  expect((await got(host, "nextRequest", {})).request).toMatchObject({ ask: "job", name: "vent.job.json" });
  writeFileSync(path, Uint8Array.from([0x89, 0x50, 0x4e, 0x47]));
  expect(code(await ask(host, "files.open", {}))).toBe("file-not-text");
});
