import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, it, onTestFinished } from "vitest";
import { storyTallies } from "./stories.ts";

function tallies(report: object | null) {
  const folder = mkdtempSync(join(tmpdir(), "wirefathom-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const file = join(folder, "report.json");
  if (report) writeFileSync(file, JSON.stringify(report));
  return storyTallies(file, ["loopback", "electron"]);
}

const story = (projectName: string, status: string, engine: string) => ({
  tests: [{ projectName, status, annotations: [{ type: "engine", description: engine }] }],
});

it("counts the stories of each host, and names what ran those that passed", () => {
  const suites = [
    { specs: [story("loopback", "expected", "Chromium 1"), story("loopback", "unexpected", "Chromium 2")] },
    { suites: [{ specs: [story("electron", "expected", "stand-in with Chromium 1")] }] },
  ];
  expect(tallies({ suites })).toEqual([
    { host: "loopback", passed: 1, retold: 0, failed: 1, engines: ["Chromium 1"] },
    { host: "electron", passed: 1, retold: 0, failed: 0, engines: ["stand-in with Chromium 1"] },
  ]);
});

it("says how many passed only at the second try", () => {
  const suites = [{ specs: [story("loopback", "flaky", "Chromium 1"), story("loopback", "expected", "Chromium 1")] }];
  expect(tallies({ suites })[0]).toEqual({
    host: "loopback",
    passed: 2,
    retold: 1,
    failed: 0,
    engines: ["Chromium 1"],
  });
});

it("takes a host in which nothing ran for one that failed", () => {
  expect(tallies(null).map(({ failed }) => failed)).toEqual([1, 1]);
  const suites = [{ specs: [story("loopback", "expected", "Chromium 1"), story("electron", "skipped", "Electron 1")] }];
  expect(tallies({ suites }).map(({ failed }) => failed)).toEqual([0, 1]);
});
