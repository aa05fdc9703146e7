import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { sentence } from "../../core/base/words.ts";
import { wiringHash } from "../../core/circuit/wiringHash.ts";
import { type Job, jobAbout } from "../../core/diagnose/job.ts";
import { misfitsOf } from "../../core/diagnose/jobFits.ts";
import { misfitWords } from "../../core/diagnose/misfitWords.ts";
import { parseReading } from "../../core/diagnose/readingText.ts";
import { formatJob, isJobText, readJob } from "../../schemas/job.ts";
import { codeOf, got, VENTS } from "../edit/given.ts";

const READING = got(parseReading(VENTS, "X5-6 @ S1=on : 0.02V"));
/** One of every sort that is no volts: ohms, a clamp, an act, a look. */
const OTHERS = [
  "X32-1b/X32-2b @ apart:X32 : 1.2ohm",
  "X5-6 @ S1=on,S5=open : 3.1A",
  "M3 fed direct @ : works",
  "F4 @ : whole",
].map((text) => got(parseReading(VENTS, text)));
const JOB: Job = {
  ...jobAbout("j1"),
  vehicle: "B-AD 1",
  told: "middle vent dead since the wash",
  when: ["wet"],
  complaint: "middle-open-own",
  observed: { "middle-open-own": "dead", "rear-open-own": "works" },
  readings: [READING, { ...READING, standing: "struck", time: "2026-03-02T08:00:00Z" }, ...OTHERS],
  batteryVolts: 12.5,
  verdict: { suspect: "W13:open", share: 0.97, time: "2026-03-02T09:00:00Z" },
  done: "new wire",
  after: [{ ...READING, volts: 12.4 }],
};

describe("a job file", () => {
  const text = formatJob(VENTS, JOB);

  test("comes back as it was written, in the same bytes", () => {
    const read = got(readJob(text));
    expect(read.job).toEqual(JOB);
    expect(read.circuit).toEqual({ title: VENTS.title, hash: wiringHash(VENTS) });
    expect(formatJob(VENTS, read.job)).toBe(text);
    expect(isJobText(text)).toBe(true);
    expect(isJobText(readFileSync("samples/1-roof-vents.circuit.json", "utf8"))).toBe(false);
  });

  const file = JSON.parse(text);
  const changed = (job: object) => JSON.stringify({ ...file, job: { ...file.job, ...job } });
  test.each([
    ["a circuit file", "job-format", JSON.stringify({ format: "wirefathom/circuit" })],
    ["no format", "job-format", "{}"],
    ["a newer version", "file-newer", JSON.stringify({ ...file, version: 2 })],
    ["a picture", "file-not-text", Uint8Array.from([0x89, 0x50, 0x4e, 0x47])],
    ["an empty file", "file-empty", " "],
    ["a file cut off", "file-json", text.slice(0, 300)],
    ["an unknown field", "file-field-unknown", JSON.stringify({ ...file, colour: 1 })],
    ["a missing field", "file-field-missing", changed({ told: undefined })],
    ["an unknown circumstance", "file-choice", changed({ when: ["windy"] })],
    ["a text too long", "file-limit", changed({ told: "x".repeat(1_001) })],
    ["a reading without leads", "file-field-missing", changed({ readings: [{ volts: 1 }] })],
    ["a share over one", "file-limit", changed({ verdict: { suspect: "W1:open", share: 2, time: null } })],
    ["no id", "file-limit", changed({ id: "" })],
  ])("%s is refused with one sentence", (_, code, content) => {
    const read = readJob(content as string | Uint8Array);
    expect(codeOf(read)).toBe(code);
    if (!read.ok) expect(sentence(read.refusal)).toMatch(/^\S.*\.$/);
  });
});

describe("a job on another drawing", () => {
  const less = { ...VENTS, connectors: VENTS.connectors.filter(({ id }) => id !== "X5"), checks: [] };

  test("names the readings, checks and verdict that have no place, and nothing where all fits", () => {
    expect(misfitsOf(VENTS, JOB)).toEqual({ readings: [], checks: [], verdict: null });
    const verdict = { suspect: "X5-6:backed-out", share: 0.9, time: null };
    expect(misfitsOf(less, { ...JOB, verdict })).toEqual({
      readings: [1, 2, 4],
      checks: ["middle-open-own", "rear-open-own"],
      verdict: "X5-6:backed-out",
    });
  });

  test("says plainly that it is another circuit or another version", () => {
    const from = { title: VENTS.title, hash: wiringHash(VENTS) };
    expect(misfitWords(VENTS, JOB, from)).toEqual([]);
    expect(misfitWords({ ...VENTS, pages: [...VENTS.pages] }, JOB, from)).toEqual([]);
    const rewired = { ...VENTS, wires: VENTS.wires.slice(0, -1) };
    expect(misfitWords(rewired, JOB, from)[0]).toContain("another version");
    expect(misfitWords({ ...less, title: "Other" }, JOB, from)[0]).toContain('another circuit, "Roof vents"');
    expect(misfitWords({ ...less, title: "Other" }, JOB, from)[1]).toContain("1 (X5-6), 2 (X5-6)");
  });

  test("counts as the same where only labels, colours and places differ", () => {
    const tidied = {
      ...VENTS,
      title: "Vents",
      parts: VENTS.parts.map((part) => ({ ...part, label: "x" })),
      wires: VENTS.wires.map(({ colour: _, ...wire }) => wire),
    };
    expect(wiringHash(tidied)).toBe(wiringHash(VENTS));
    const moved = { ...VENTS, wires: VENTS.wires.map((wire, index) => (index === 0 ? { ...wire, metres: 99 } : wire)) };
    expect(wiringHash(moved)).not.toBe(wiringHash(VENTS));
  });
});
