import { expect, it } from "vitest";
import { type Job, jobAbout } from "../../../core/diagnose/job.ts";
import type { Recorded } from "../../../core/lesson/move.ts";
import type { Library } from "../../../electron/store/library.ts";
import { FIRST_SETTINGS } from "../../../schemas/settings.ts";
import { code, MORNING, value } from "../../electron/library.ts";
import { exerciseWith, LAMP, worked } from "../../lesson/given.ts";
import { begun, daysLater, edit, type Kind, later } from "./given.ts";

const ABOUT = { complaint: null, observed: {}, readings: [], batteryVolts: null, when: [] };
const jobOn = (id: string, more: Partial<Job> = {}): Job => ({
  ...jobAbout(id),
  ...ABOUT,
  vehicle: `B-${id}`,
  ...more,
});
const SOLVED = { verdict: { suspect: "W3:open", share: 0.97, time: null }, done: "new wire" };
const JOBS = { search: "", where: "library", circuit: null, from: 0, limit: 100 } as const;

const jobs = async (
  { jobs: shelf }: Library,
  more: Partial<typeof JOBS> | { readonly [N in keyof typeof JOBS]?: unknown } = {},
) => {
  const { rows, count } = value(await shelf.list({ ...JOBS, ...more } as typeof JOBS));
  return { ids: rows.map(({ id }) => id), rows, count };
};

const given = exerciseWith(LAMP, "W4:open", { title: "Dark lamp" });
const TAKEN = { id: "ab".repeat(32), text: "sealed as it came", exercise: given.exercise };
const ROUTE = worked(given, "throw S1=on", "probe F1.2", "verdict W4:open by 1").route as readonly Recorded[];

/** What every library promises of jobs, exercises, marks, settings and notes. */
export function workContract({ open, hasOwnBenches }: Kind): void {
  it("keeps jobs with the bench they stand on, open ones first, newest first, and shares them", async () => {
    const shared = await open();
    const { ann, ben } = shared;
    const id = await begun(shared);
    const bench = { version: 1, bench: "1" };
    value(await ann.benches.save(id, { ...bench, benchVersion: 1, jobs: [jobOn("a", SOLVED)] }, later(1)));
    value(await ann.benches.save(id, { ...bench, benchVersion: 2, jobs: [jobOn("b")] }, later(2)));
    value(await ann.circuits.save(id, edit(1, "Horn, second", { benchVersion: 3, jobs: [jobOn("c")] }), later(3)));
    // As it was: nothing of it is new.
    value(await ann.benches.save(id, { ...bench, version: 2, benchVersion: 4, jobs: [jobOn("b")] }, later(4)));
    const { ids, rows, count } = await jobs(ben);
    expect([ids, count]).toEqual([["c", "b", "a"], 3]);
    expect(rows[2]).toEqual({
      id: "a",
      circuit: id,
      title: "Horn, second",
      version: 2,
      vehicle: "B-a",
      told: "",
      complaint: "",
      readings: 0,
      suspect: "W3:open",
      share: 0.97,
      isSolved: true,
      made: later(1).toISOString(),
      edited: later(1).toISOString(),
      removed: null,
    });
    expect(value(await ben.jobs.read({ circuit: id, id: "a" }))).toEqual(jobOn("a", SOLVED));
    expect(code(await ben.jobs.read({ circuit: id, id: "nothing" }))).toBe("job-unknown");
    expect((await jobs(ann, { from: 1, limit: 1 })).ids).toEqual(["b"]);
  });

  it("finds a job by vehicle, what was told, its circuit, verdict and what was done", async () => {
    const shared = await open();
    const { ann } = shared;
    const stands = [jobOn("a", { ...SOLVED, vehicle: "M-XY 77", told: "Hupe stumm" }), jobOn("b")];
    const { id } = value(await ann.circuits.create(LAMP, { name: "", bench: "1", jobs: stands }, MORNING));
    const other = await begun(shared, "Blower");
    value(await ann.benches.save(other, { version: 1, bench: "2", benchVersion: 1, jobs: [jobOn("b")] }, later(1)));
    for (const search of ["m-xy", "stum hup", "W3", "new wire"])
      expect((await jobs(ann, { search })).ids).toEqual(["a"]);
    expect((await jobs(ann, { search: "blow" })).ids).toEqual(["b"]);
    expect((await jobs(ann, { search: "..." })).ids).toEqual([]);
    expect((await jobs(ann, { circuit: id })).ids.toSorted()).toEqual(["a", "b"]);
    expect((await jobs(ann, { circuit: other })).ids).toEqual(["b"]);
  });

  it("moves a job to the bin and back, and lets go of it after 30 days or with its circuit", async () => {
    const shared = await open();
    const { ann } = shared;
    const stands = [jobOn("a"), jobOn("b")];
    const { id } = value(await ann.circuits.create(LAMP, { name: "", bench: "1", jobs: stands }, MORNING));
    const place = { circuit: id, id: "a" };
    expect(value(await ann.jobs.remove(place, later(1)))).toMatchObject({ id: "a", removed: later(1).toISOString() });
    expect(code(await ann.jobs.read(place))).toBe("job-unknown");
    expect(code(await ann.jobs.remove(place, later(1)))).toBe("job-unknown");
    expect((await jobs(ann, { where: "bin" })).ids).toEqual(["a"]);
    expect(value(await ann.jobs.restore(place))).toMatchObject({ removed: null });
    value(await ann.jobs.remove(place, later(2)));
    // Changed on a bench it comes back by itself.
    const changed = [jobOn("a", { told: "again" })];
    value(await ann.benches.save(id, { version: 1, bench: "2", benchVersion: 1, jobs: changed }, later(3)));
    expect((await jobs(ann)).count).toBe(2);
    value(await ann.jobs.remove(place, later(4)));
    value(await ann.circuits.remove(id, false, later(5)));
    expect((await jobs(ann)).count).toBe(0);
    value(await ann.circuits.restore(id));
    const late = await shared.again(daysLater(31));
    expect([(await jobs(late)).ids, (await jobs(late, { where: "bin" })).count]).toEqual([["b"], 0]);
    value(await late.circuits.remove(id, true, daysLater(31)));
    expect((await jobs(late, { search: "B-b" })).count).toBe(0);
  });

  it("keeps an exercise as sealed as it came with the route, and knows what is on the bench", async () => {
    const shared = await open();
    const { attempts, recent } = shared.ann;
    expect(value(await attempts.take(TAKEN, MORNING))).toEqual({
      id: TAKEN.id,
      text: TAKEN.text,
      learner: "",
      route: [],
    });
    const added = { id: TAKEN.id, from: 0, moves: ROUTE.slice(0, 2), learner: "Ann" };
    expect(value(await attempts.add(added, later(1)))).toEqual({});
    expect(code(await attempts.add(added, later(2)))).toBe("attempt-elsewhere");
    expect(value(await recent.onBench())).toEqual({ circuit: null, attempt: TAKEN.id });
    const again = await shared.again(later(3));
    expect(value(await again.attempts.open(TAKEN.id))).toEqual({
      id: TAKEN.id,
      text: TAKEN.text,
      learner: "Ann",
      route: ROUTE.slice(0, 2),
    });
    value(await again.attempts.add({ ...added, from: 2, moves: ROUTE.slice(2) }, later(4)));
    expect(value(await again.attempts.list("library"))).toEqual([
      {
        id: TAKEN.id,
        title: "Dark lamp",
        complaint: "The lamp lights",
        minutes: Math.round(ROUTE.reduce((sum, { minutes }) => sum + minutes, 0) * 100) / 100,
        moves: 3,
        isOver: true,
        made: MORNING.toISOString(),
        edited: later(4).toISOString(),
        removed: null,
      },
    ]);
    expect(value(await again.attempts.take(TAKEN, later(5))).route).toHaveLength(3);
    expect(value(await again.attempts.restart(TAKEN.id, later(6)))).toMatchObject({ learner: "Ann", route: [] });
    expect(code(await again.attempts.open("cd".repeat(32)))).toBe("attempt-unknown");
    value(await again.recent.clear());
    expect(value(await again.recent.onBench())).toEqual({ circuit: null, attempt: null });
  });

  it("moves an exercise to the bin and back, and lets go of it after 30 days; taken in once more it is as new", async () => {
    const shared = await open();
    const { attempts } = shared.ann;
    value(await attempts.take(TAKEN, MORNING));
    value(await attempts.add({ id: TAKEN.id, from: 0, moves: ROUTE.slice(0, 1), learner: "Ann" }, later(1)));
    expect(value(await attempts.remove(TAKEN.id, later(2)))).toMatchObject({
      moves: 1,
      removed: later(2).toISOString(),
    });
    expect(code(await attempts.open(TAKEN.id))).toBe("attempt-unknown");
    expect(code(await attempts.restart(TAKEN.id, later(2)))).toBe("attempt-unknown");
    expect(value(await attempts.list("bin"))).toHaveLength(1);
    expect(value(await attempts.restore(TAKEN.id)).removed).toBeNull();
    value(await attempts.remove(TAKEN.id, later(3)));
    const late = await shared.again(daysLater(31));
    expect([value(await late.attempts.list("bin")), value(await late.attempts.list("library"))]).toEqual([[], []]);
    expect(code(await late.attempts.restore(TAKEN.id))).toBe("attempt-unknown");
    expect(value(await late.attempts.take(TAKEN, daysLater(32)))).toMatchObject({ learner: "", route: [] });
  });

  it.runIf(hasOwnBenches)(
    "shares exercises, and leaves each their own work on them, bench, settings and what was open",
    async () => {
      const shared = await open();
      const { ann, ben } = shared;
      const id = await begun(shared);
      value(await ann.attempts.take(TAKEN, MORNING));
      value(await ann.attempts.add({ id: TAKEN.id, from: 0, moves: ROUTE.slice(0, 2), learner: "Ann" }, later(1)));
      expect(value(await ben.attempts.list("library"))).toMatchObject([{ id: TAKEN.id, moves: 0 }]);
      expect(value(await ben.attempts.open(TAKEN.id))).toMatchObject({ learner: "", route: [] });
      value(await ben.attempts.add({ id: TAKEN.id, from: 0, moves: ROUTE.slice(0, 1), learner: "Ben" }, later(2)));
      value(await ben.attempts.remove(TAKEN.id, later(3)));
      expect(value(await ann.attempts.open(TAKEN.id))).toMatchObject({ learner: "Ann", route: ROUTE.slice(0, 2) });
      value(await ben.settings.keep({ theme: "dark" }));
      expect(value(await ann.settings.read()).theme).toBe("system");
      expect(value(await ben.circuits.open(id, later(4)))).toMatchObject({ bench: null, benchVersion: 0 });
      expect(value(await ben.recent.onBench())).toEqual({ circuit: id, attempt: null });
      expect(value(await ann.recent.list(5))).toMatchObject([{ opened: MORNING.toISOString() }]);
      value(await ben.benches.save(id, { version: 1, bench: "ben's", benchVersion: 0, jobs: [] }, later(5)));
      expect(value(await ann.circuits.open(id, later(6))).bench).toBe("as it came");
    },
  );

  it("keeps marks by learner in the order of grading, each hand-in once, and forgets a learner", async () => {
    const { ann, ben } = await open();
    const mark = (id: string, learner: string, isMastered = true) => ({ id, learner, exercise: "Lamp", isMastered });
    value(await ann.marks.keep([mark("2", "Ben"), mark("1", "ann", false)], MORNING));
    const kept = value(await ben.marks.keep([mark("0", "Ben"), mark("1", "ann")], later(1)));
    expect(kept).toEqual([mark("2", "Ben"), mark("0", "Ben"), mark("1", "ann")]);
    expect(value(await ann.marks.forget("Ben"))).toEqual([mark("1", "ann")]);
    expect(value(await ann.marks.list())).toEqual([mark("1", "ann")]);
  });

  it("keeps settings and the host's own notes, apart from each other", async () => {
    const shared = await open();
    const { settings } = shared.ann;
    expect(value(await settings.read())).toEqual(FIRST_SETTINGS);
    expect(value(await settings.keep({ theme: "dark", tasks: "1 lamps\u00002" }))).toMatchObject({ theme: "dark" });
    expect(value(await settings.note("place"))).toBeNull();
    value(await settings.keepNote("place", { x: 1, name: "ä" }));
    value(await settings.keepNote("theme", "of the host"));
    const again = await shared.again(later(1));
    expect(value(await again.settings.note("place"))).toEqual({ x: 1, name: "ä" });
    expect(value(await again.settings.read())).toEqual({ ...FIRST_SETTINGS, theme: "dark", tasks: "1 lamps\u00002" });
  });
}
