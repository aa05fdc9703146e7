import { spawn } from "node:child_process";
import { once } from "node:events";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { LONG } from "./long.ts";
import { NO_POSTGRES, postgresPrograms } from "./postgres/server.ts";
import { hasProgram, install } from "./programs.ts";
import { INSTALL } from "./reference/ngspice.ts";
import { type StoryTally, storyTallies } from "./stories.ts";
import { chromiumProgram } from "./window/machine.ts";

/** What a run came to. */
interface Tally {
  readonly passed: number;
  readonly failed: number;
}

const ROOT = fileURLToPath(new URL("..", import.meta.url));
const TOOLS = {
  tsc: "typescript/bin/tsc",
  biome: "@biomejs/biome/bin/biome",
  vitest: "vitest/vitest.mjs",
  playwright: "@playwright/test/cli.js",
} as const;
const STORIES = "tests/window/playwright.config.ts";
const NO_CHROMIUM = "Chromium is not installed, and the window's stories need it: apt-get install chromium";
const NO_READER = "pdftotext is not installed, and reading what is printed needs it: apt-get install poppler-utils";

/** Runs a program of this project's own; true where it ended well. */
function run(tool: keyof typeof TOOLS, ...words: readonly string[]): Promise<boolean> {
  return runScript(join("node_modules", TOOLS[tool]), words);
}

async function runScript(script: string, words: readonly string[]): Promise<boolean> {
  const child = spawn(process.execPath, [join(ROOT, script), ...words], { cwd: ROOT, stdio: "inherit" });
  const [code] = await once(child, "exit");
  return code === 0;
}

/** What the tests need besides this project's own packages: a sentence for each that is not there and could not be had. */
function missing(): readonly string[] {
  const hasReference = hasProgram("ngspice") || (install("ngspice") && hasProgram("ngspice"));
  const hasChromium = chromiumProgram() !== null || (install("chromium") && chromiumProgram() !== null);
  const hasReader = hasProgram("pdftotext") || (install("poppler-utils") && hasProgram("pdftotext"));
  const hasServer = postgresPrograms() !== null || (install("postgresql") && postgresPrograms() !== null);
  return [
    ...(hasReference ? [] : [INSTALL]),
    ...(hasChromium ? [] : [NO_CHROMIUM]),
    ...(hasReader ? [] : [NO_READER]),
    ...(hasServer ? [] : [NO_POSTGRES]),
  ];
}

/** One check by a tool, counted as a test is. */
function check(name: string, isGood: boolean): Tally {
  console.log(`${name}: ${isGood ? "good" : "FAILED"}`);
  return { passed: isGood ? 1 : 0, failed: isGood ? 0 : 1 };
}

/** All tests; a file that does not load counts as a failed one. */
async function tests(): Promise<Tally> {
  const room = mkdtempSync(join(tmpdir(), "wirefathom-tests-"));
  try {
    const file = join(room, "report.json");
    const reporters = ["--reporter=default", "--reporter=json", `--outputFile.json=${file}`];
    const words = ["run", "--config", "tests/vitest.config.ts", ...reporters];
    const isGood = await run("vitest", ...words);
    const report = existsSync(file) ? JSON.parse(readFileSync(file, "utf8")) : {};
    const {
      numPassedTests: passed = 0,
      numFailedTests = 0,
      testResults = [],
    } = report as {
      numPassedTests?: number;
      numFailedTests?: number;
      testResults?: readonly { status: string; assertionResults: readonly { status: string }[] }[];
    };
    const unloaded = testResults.filter(
      ({ status, assertionResults }) => status === "failed" && !assertionResults.some((one) => one.status === "failed"),
    );
    const failed = numFailedTests + unloaded.length;
    return { passed, failed: isGood ? failed : Math.max(failed, 1) };
  } finally {
    rmSync(room, { recursive: true, force: true });
  }
}

/** The built page in both hosts. */
async function stories(): Promise<Tally & { readonly hosts: readonly StoryTally[] }> {
  const room = mkdtempSync(join(tmpdir(), "wirefathom-stories-"));
  try {
    const file = join(room, "report.json");
    process.env.STORIES_REPORT = file;
    const isGood = await run("playwright", "test", "--config", STORIES);
    const hosts = storyTallies(file, ["loopback", "electron"]);
    const passed = hosts.reduce((sum, tally) => sum + tally.passed, 0);
    const failed = hosts.reduce((sum, tally) => sum + tally.failed, 0);
    return { hosts, passed, failed: isGood ? failed : Math.max(failed, 1) };
  } finally {
    rmSync(room, { recursive: true, force: true });
  }
}

/** Says what came of the stories in a host, and what ran them. */
function tell({ host, passed, retold, failed, engines }: StoryTally): void {
  const engine = engines.join(" and ") || "nothing";
  console.log(`stories (${host}): ${passed} passed (${retold} at the second try), ${failed} failed, in ${engine}`);
}

/** Builds the page and the window that the stories are told in. */
function build(): Promise<boolean> {
  return runScript(join("electron", "runBuild.ts"), []);
}

const sentences = missing();
if (sentences.length > 0) {
  console.error(sentences.join("\n"));
  process.exit(1);
}
if (process.argv.includes("--long")) process.env[LONG] = "1";
const checks = {
  "types of core": run("tsc", "-p", "core"),
  types: run("tsc", "-p", "."),
  "types of the page": run("tsc", "-p", "renderer"),
  "types of its tests": run("tsc", "-p", "tests/renderer"),
  "types of the stories": run("tsc", "-p", "tests/window"),
  lint: run("biome", "check", "--error-on-warnings", "."),
  build: build(),
};
const checked = Object.entries(checks).map(async ([name, isGood]) => check(name, await isGood));
const good = await Promise.all(checked);
// At once: the tests compute, the stories mostly wait.
const [tested, told] = await Promise.all([tests(), stories()]);
for (const host of told.hosts) tell(host);
const tallies = [...good, tested, told];
const passed = tallies.reduce((sum, tally) => sum + tally.passed, 0);
const failed = tallies.reduce((sum, tally) => sum + tally.failed, 0);
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed === 0 ? 0 : 1);
