import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { type Job, jobAbout } from "../../core/diagnose/job.ts";
import { beginJob } from "../../core/edit/commands/beginJob.ts";
import { changeJob } from "../../core/edit/commands/changeJob.ts";
import { fileVerdict } from "../../core/edit/commands/fileVerdict.ts";
import { observeCheck } from "../../core/edit/commands/observeCheck.ts";
import { putJobAway } from "../../core/edit/commands/putJobAway.ts";
import { setBatteryVolts } from "../../core/edit/commands/setBatteryVolts.ts";
import { throwControl } from "../../core/edit/commands/throwControl.ts";
import type { Command } from "../../renderer/state/action.ts";
import { openFile } from "../../renderer/state/openFile.ts";
import { weighingNow } from "../../renderer/state/weighingNow.ts";
import { formatJob, readJob } from "../../schemas/job.ts";
import { got, VENTS } from "../edit/given.ts";
import { openIn, pageOn, pageWithVents } from "./stage.ts";

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});
const settle = () => vi.advanceTimersByTimeAsync(1_000);
const JOB: Job = {
  ...jobAbout("j1"),
  vehicle: "B-AD 1",
  complaint: "middle-open-own",
  observed: {},
  readings: [],
  batteryVolts: 12.5,
  when: [],
};
const noticesOf = (page: {
  readonly store: { getState(): { notices: readonly { title: string; words: string }[] } };
}) => page.store.getState().notices.map(({ title, words }) => `${title} ${words}`);

/** A page with the roof vents and a way to make edits on it. */
async function atTheBench() {
  const page = await pageWithVents();
  const make = (...commands: readonly Command[]) => {
    for (const command of commands) page.store.dispatch({ do: "make", command });
  };
  const jobs = async () => got(await page.host.ask("jobs.list", {})).rows;
  return { ...page, make, jobs };
}

describe("the job in hand", () => {
  test("is kept with its last edit, though it is put away at once", async () => {
    const { make, jobs, host, id } = await atTheBench();
    make((bench) => beginJob(bench, "j1", { vehicle: "B-AD 1" }));
    make((bench) => setBatteryVolts(bench, "12.4"), putJobAway);
    await settle();
    expect(await jobs()).toMatchObject([{ id: "j1", vehicle: "B-AD 1", circuit: id }]);
    expect(got(await host.ask("jobs.read", { circuit: id, id: "j1" })).job.batteryVolts).toBe(12.4);
  });

  test("is listed once it is kept, and not anew by saves that change nothing of it", async () => {
    const { make, sent } = await atTheBench();
    make((bench) => beginJob(bench, "j1"));
    await settle();
    const throws = async (times: number) => {
      for (let time = 0; time < times; time++) {
        make((bench) => throwControl(bench, "S1", bench.condition.set?.S1 === "on" ? "off" : "on"));
        await settle();
      }
      return sent("jobs.list").filter(({ circuit }) => circuit !== undefined).length;
    };
    const listed = await throws(2);
    expect(await throws(4)).toBe(listed);
    make(
      (bench) => setBatteryVolts(bench, "12.4"),
      (bench) => observeCheck(bench, "rear-open-own", "works"),
    );
    await settle();
    expect(await throws(0)).toBe(listed + 1);
  });

  test("is kept where several are put away between two saves, and none is where it was undone", async () => {
    const { make, jobs, store } = await atTheBench();
    make(
      (bench) => beginJob(bench, "j1"),
      putJobAway,
      (bench) => beginJob(bench, "j2"),
      putJobAway,
    );
    make((bench) => beginJob(bench, "j3"));
    store.dispatch({ do: "undo" });
    await settle();
    expect((await jobs()).map(({ id }) => id).toSorted()).toEqual(["j1", "j2"]);
  });

  test("is kept by the next save where one failed", async () => {
    const { make, jobs, refuse } = await atTheBench();
    refuse("benches.save", "store-full");
    make((bench) => beginJob(bench, "j1"), putJobAway);
    await settle();
    expect(await jobs()).toEqual([]);
    refuse("benches.save", null);
    await vi.advanceTimersByTimeAsync(5_000);
    expect((await jobs()).map(({ id }) => id)).toEqual(["j1"]);
  });

  test("takes nothing away from what other done jobs found, and does not count itself", async () => {
    const { make, store } = await atTheBench();
    const verdict = { suspect: "W13:open", share: 0.9, time: null };
    make(
      (bench) => beginJob(bench, "j1"),
      (bench) => fileVerdict(bench, verdict),
    );
    make((bench) => changeJob(bench, { done: "new wire" }));
    await settle();
    const solved = () => weighingNow(openIn(store), { shop: [] }).solved;
    expect(solved()).toEqual([]);
    make(putJobAway);
    await settle();
    expect(solved()).toEqual(["W13:open"]);
  });
});

describe("a job from the library or a file", () => {
  test("is taken up with its circuit, what was in hand is kept", async () => {
    const { make, store, id } = await atTheBench();
    make(
      (bench) => beginJob(bench, "j1", { told: "first" }),
      putJobAway,
      (bench) => beginJob(bench, "j2"),
    );
    await settle();
    store.dispatch({ do: "open-job", circuit: id, id: "j1" });
    await settle();
    expect(openIn(store).desk.bench.job).toMatchObject({ id: "j1", told: "first" });
    store.dispatch({ do: "close" });
    await settle();
    store.dispatch({ do: "open-job", circuit: id, id: "j2" });
    await settle();
    expect(openIn(store).desk.bench.job?.id).toBe("j2");
  });

  test("that is gone says so", async () => {
    const page = await atTheBench();
    page.store.dispatch({ do: "open-job", circuit: page.id, id: "j9" });
    await settle();
    expect(noticesOf(page)).toEqual(["That job was not taken up. This job is no longer in the library."]);
  });

  test("out of a file is found its circuit by its wiring, and without it says which to open", async () => {
    const page = pageOn();
    await page.host.ask("circuits.create", { circuit: { ...VENTS, wires: VENTS.wires.slice(1) } });
    const right = got(await page.host.ask("circuits.create", { circuit: VENTS }));
    const dropped = new File([formatJob(VENTS, JOB)], "x.job.json");
    await openFile(page.store, dropped);
    await settle();
    expect(openIn(page.store)).toMatchObject({ id: right.id, desk: { bench: { complaint: JOB.complaint } } });
    const bare = pageOn();
    await openFile(bare.store, dropped);
    await settle();
    expect(bare.store.getState().open).toBeNull();
    expect(noticesOf(bare)[0]).toContain('Its circuit "Roof vents" is not in the library');
  });

  test("of another circuit is taken up on the one that is open, and what has no place there is named", async () => {
    const page = await atTheBench();
    const other = { ...VENTS, title: "Other", wires: VENTS.wires.slice(1) };
    const text = formatJob(other, { ...JOB, complaint: "gone" });
    page.store.dispatch({ do: "open-job-text", name: "x.job.json", text });
    await settle();
    expect(openIn(page.store).desk.bench.job?.id).toBe("j1");
    expect(noticesOf(page)[0]).toMatch(/not all of it.*another circuit, "Other".*no function check gone/);
  });

  test("goes out as it stands, and is refused in one sentence where it is damaged or there is none", async () => {
    const page = await atTheBench();
    page.store.dispatch({ do: "save-job" });
    page.store.dispatch({ do: "open-job-text", name: "x.job.json", text: '{"format":"wirefathom/job","version":9}' });
    await settle();
    expect(noticesOf(page).map((words) => words.slice(0, 40))).toEqual([
      expect.stringContaining("Not saved. No job is in hand"),
      expect.stringContaining("x.job.json was not opened."),
    ]);
    page.make((bench) => beginJob(bench, "j1", { vehicle: "B-AD 1" }));
    page.store.dispatch({ do: "save-job" });
    await settle();
    expect(page.downloads[0]?.name).toBe("B-AD 1 Roof vents.job.json");
    expect(got(readJob(page.downloads[0]!.content)).job).toMatchObject({ id: "j1", vehicle: "B-AD 1" });
  });
});
