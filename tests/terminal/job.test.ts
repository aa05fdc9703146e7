import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { probeOrder } from "../../core/diagnose/order.ts";
import { checklistSheets } from "../../core/paper/checklist.ts";
import { jobSaved } from "../../electron/terminal/job.ts";
import { readJob } from "../../schemas/job.ts";
import { got, VENTS as VENTS_CIRCUIT } from "../edit/given.ts";
import { run, VENTS } from "./run.ts";

const folder = mkdtempSync(join(tmpdir(), "wirefathom-"));
afterAll(() => rmSync(folder, { recursive: true }));
const path = (name: string) => join(folder, name);
const jobIn = (name: string) => got(readJob(readFileSync(path(name)))).job;

const COMPLAINT = ["--complaint", "middle-open-own", "--observed", "rear-open-own=works"];

describe("order with a job file", () => {
  it("writes what was typed, and goes on from it as if all had been typed", async () => {
    const typed = [...COMPLAINT, "--read", "X5-6 @ S1=on : 0.02V", "--battery", "12.4"];
    const saved = path("vent.job.json");
    const about = ["--vehicle", "B-AD 1", "--told", "middle vent dead"];
    const first = await run("order", VENTS, ...typed, ...about, "--save-job", saved, "--json");
    expect(first.code).toBe(0);
    expect(jobIn("vent.job.json")).toMatchObject({
      vehicle: "B-AD 1",
      told: "middle vent dead",
      complaint: "middle-open-own",
      observed: { "middle-open-own": "dead", "rear-open-own": "works" },
      readings: [{ red: "X5-6", volts: 0.02 }],
      batteryVolts: 12.4,
    });
    const on = await run("order", VENTS, "--job", saved, "--json");
    expect(JSON.parse(on.out)).toEqual(JSON.parse(first.out));
    expect((await run("order", VENTS, "--job", saved)).out).toContain("B-AD 1\nmiddle vent dead\n");
  });

  it("lets what is typed go over the job, adds readings and keeps the job's id", async () => {
    const [one, two] = [path("one.job.json"), path("two.job.json")];
    await run("order", VENTS, ...COMPLAINT, "--read", "X5-6 @ S1=on : 0.02V", "--save-job", one);
    const over = ["--observed", "rear-open-own=dead", "--battery", "12.1", "--read", "X5-6 @ S1=on : dark"];
    await run("order", VENTS, "--job", one, ...over, "--save-job", two);
    const [before, after] = [jobIn("one.job.json"), jobIn("two.job.json")];
    expect(after.id).toBe(before.id);
    expect(after.observed["rear-open-own"]).toBe("dead");
    expect(after.batteryVolts).toBe(12.1);
    expect(after.readings).toHaveLength(2);
  });

  it("says what has no place on the drawing, keeps it, and goes on with the rest", async () => {
    const [one, two] = [path("whole.job.json"), path("less.job.json")];
    await run("order", VENTS, ...COMPLAINT, "--read", "X5-6 @ S1=on : 0.02V", "--save-job", one);
    const file = JSON.parse(readFileSync(one, "utf8"));
    file.job.readings.push({ ...file.job.readings[0], red: "X99-1" });
    file.job.observed.gone = "works";
    file.circuit.hash = "00000000";
    writeFileSync(one, JSON.stringify(file));
    const { out, code } = await run("order", VENTS, "--job", one, "--save-job", two);
    expect(code).toBe(0);
    expect(out).toContain("Reading 2 (X99-1) is kept but does not count");
    expect(out).toContain('another version of "Roof vents"');
    expect(jobIn("less.job.json").readings[1]?.red).toBe("X99-1");
    expect(jobIn("less.job.json").observed.gone).toBe("works");
  });

  it("writes over no job that another command changed since it was read", async () => {
    const file = path("shared.job.json");
    await run("order", VENTS, ...COMPLAINT, "--read", "X5-6 @ S1=on : 0.02V", "--save-job", file);
    const [before, circuit] = [jobIn("shared.job.json"), VENTS_CIRCUIT];
    const check = circuit.checks.find(({ id }) => id === before.complaint)!;
    const seen = { complaint: { check, word: "dead" as const }, others: [] };
    const stands = { seen, readings: before.readings, batteryVolts: 12.2 };
    const said = { width: 80, hasColour: false, write: () => {}, complain: () => {} };
    const mine = { job: file, saveJob: file };
    // Both read it; the other is faster.
    await jobSaved(said, circuit, before, { ...mine, told: "the other's" }, stands);
    await expect(jobSaved(said, circuit, before, { ...mine, told: "mine" }, stands)).rejects.toMatchObject({
      refusal: { code: "job-changed-elsewhere" },
    });
    expect(jobIn("shared.job.json").told).toBe("the other's");
    await jobSaved(said, circuit, jobIn("shared.job.json"), { ...mine, told: "mine" }, stands);
    expect(jobIn("shared.job.json").told).toBe("mine");
  });

  it("refuses with one sentence", async () => {
    const good = path("good.job.json");
    await run("order", VENTS, ...COMPLAINT, "--save-job", good);
    for (const [words, sentence] of [
      [["--job", path("none.job.json")], /There is no file/],
      [["--job", VENTS], /not a job file/],
      [["--job", good, "--save-job", path("x.json")], /must end in \.job\.json/],
      [["--job", good, "--vehicle", "x".repeat(99), "--save-job", good], /at most 80 characters/],
    ] as const) {
      const { code, complaint } = await run("order", VENTS, ...words);
      expect([code, complaint]).toEqual([2, expect.stringMatching(sentence)]);
    }
  });
});

describe("a printed sheet", () => {
  const check = VENTS_CIRCUIT.checks.find(({ id }) => id === "middle-open-own")!;
  const others = [{ check: VENTS_CIRCUIT.checks.find(({ id }) => id === "rear-open-own")!, word: "works" as const }];
  const printed = probeOrder(VENTS_CIRCUIT, { check, word: "dead" }, { others });
  const { code } = checklistSheets({ circuit: VENTS_CIRCUIT, order: printed })[0]!;

  it("is read back row by row, also after other readings were added to the job", async () => {
    const [job, later] = [path("printed.job.json"), path("later.job.json")];
    await run("order", VENTS, ...COMPLAINT, "--save-job", job);
    const two = await run("order", VENTS, "--job", job, "--sheet", code, "--read", "2=0.02", "--save-job", later);
    expect([two.code, jobIn("later.job.json").readings.map(({ red }) => red)]).toEqual([0, [printed.steps[1]!.point]]);
    const sheet = ["--job", later, "--sheet", code.toLowerCase()];
    const both = await run("order", VENTS, ...sheet, "--read", "3=sound", "--save-job", later);
    expect([both.code, jobIn("later.job.json").readings.map(({ red }) => red)]).toEqual([
      0,
      printed.steps.slice(1, 3).map(({ point }) => point),
    ]);
  });

  it.each([
    [["--sheet", "QQQQ", "--read", "2=0.02"], /No checklist or branch sheet of this job has the code QQQQ/],
    [["--sheet", code], /row by row/],
    [["--sheet", code, "--read", "99=1"], /There is no row 99/],
  ])("%j is refused with one sentence", async (words, sentence) => {
    const { code: exit, complaint } = await run("order", VENTS, ...COMPLAINT, ...words);
    expect([exit, complaint]).toEqual([2, expect.stringMatching(sentence)]);
  });
});

describe("what a job keeps", () => {
  it("of places that were moved is weighed again, and goes into its sheet", async () => {
    const job = path("wiggled.job.json");
    const typed = ["--complaint", "middle-open-own", "--observed", "middle-open-own=sometimes"];
    const moved = ["--when", "wet", "--wiggle", "X5 : 2.1..11.8 wet"];
    const first = await run("order", VENTS, ...typed, ...moved, "--save-job", job, "--json");
    expect(jobIn("wiggled.job.json")).toMatchObject({ when: ["wet"], wiggled: [{ place: "X5", min: 2.1, max: 11.8 }] });
    const again = await run("order", VENTS, "--job", job, "--json");
    expect(JSON.parse(again.out).wiggle).toEqual(JSON.parse(first.out).wiggle);
    expect(JSON.parse(again.out).wiggle.guilty).not.toBeNull();
  });

  it("proves the repair of what its readings leave, or of what is named", async () => {
    const job = path("proof.job.json");
    await run("order", VENTS, ...COMPLAINT, "--battery", "12.4", "--save-job", job);
    const named = ["--fault", "X32-1:corroded=20", "--shop", "motor=2: own records", "--json"];
    const proven = await run("proof", VENTS, "--job", job, ...named);
    const typed = await run("proof", VENTS, ...COMPLAINT, "--battery", "12.4", ...named);
    expect(proven.code).toBe(0);
    expect(JSON.parse(proven.out)).toEqual(JSON.parse(typed.out));
  });
});

describe("weights", () => {
  const share = (out: string, id: string): { probability: number; notes: string[] } =>
    JSON.parse(out).suspects.find((each: { id: string }) => each.id === id);

  it("weighs what is typed, and what done jobs on this wiring found, and says so", async () => {
    const done = path("done.job.json");
    await run("order", VENTS, ...COMPLAINT, "--save-job", done);
    const file = JSON.parse(readFileSync(done, "utf8"));
    file.job.verdict = { suspect: "W13:open", share: 0.97, time: null };
    file.job.done = "new wire";
    writeFileSync(done, JSON.stringify(file));
    const open = path("open.job.json");
    writeFileSync(open, JSON.stringify({ ...file, job: { ...file.job, done: "" } }));
    const plain = (await run("order", VENTS, ...COMPLAINT, "--json")).out;
    const typed = [
      "--solved",
      done,
      "--solved",
      open,
      "--weigh",
      "M3:seized=4: bulletin 12",
      "--shop",
      "wire=0.5: own records",
    ];
    const { out } = await run("order", VENTS, ...COMPLAINT, ...typed, "--json");
    expect(share(out, "W13:open").notes).toEqual([
      "Found here in 1 earlier job.",
      "Weighed 0.5 times in this shop (wire): own records.",
    ]);
    const odds = (text: string) => share(text, "M3:seized").probability / share(text, "W13:open").probability;
    expect(odds(out)).toBeCloseTo(4 * odds(plain), 6);
  });

  it("refuses with one sentence what is no weight", async () => {
    const { code, complaint } = await run("order", VENTS, ...COMPLAINT, "--weigh", "M3=3");
    expect([code, complaint]).toEqual([2, expect.stringMatching(/^M3=3 is no weight; write .*\.\n$/)]);
  });
});

it("print makes the job's checklist", async () => {
  const saved = path("print.job.json");
  await run("order", VENTS, ...COMPLAINT, "--read", "X5-6 @ S1=on : 0.02V", "--save-job", saved);
  const [one, two] = [path("one.html"), path("two.html")];
  const typed = [...COMPLAINT, "--read", "X5-6 @ S1=on : 0.02V"];
  expect((await run("print", VENTS, "--what", "checklist", "--job", saved, "--out", one)).code).toBe(0);
  expect((await run("print", VENTS, "--what", "checklist", ...typed, "--out", two)).code).toBe(0);
  const html = (file: string) => readFileSync(file, "utf8");
  expect(html(one)).toBe(html(two));
});
