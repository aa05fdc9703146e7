import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { INSTALL } from "./reference/ngspice.ts";

/** What a run came to. */
interface Tally {
  readonly passed: number;
  readonly failed: number;
}

const ROOT = fileURLToPath(new URL("..", import.meta.url));
const TOOLS = { tsc: "typescript/bin/tsc", biome: "@biomejs/biome/bin/biome", vitest: "vitest/vitest.mjs" } as const;

/** Runs a program of this project's own; true where it ended well. */
function run(tool: keyof typeof TOOLS, ...words: readonly string[]): boolean {
  const script = join(ROOT, "node_modules", TOOLS[tool]);
  return spawnSync(process.execPath, [script, ...words], { cwd: ROOT, stdio: "inherit" }).status === 0;
}

function has(program: string): boolean {
  return spawnSync(program, ["--version"], { stdio: "ignore" }).error === undefined;
}

/** The reference solver: there already, or installed on Debian by root. */
function hasReference(): boolean {
  if (has("ngspice")) return true;
  if (!existsSync("/etc/debian_version") || process.getuid?.() !== 0) return false;
  const apt = (...words: readonly string[]) =>
    spawnSync("apt-get", words, { stdio: "inherit", env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" } });
  apt("update");
  apt("install", "-y", "--no-install-recommends", "ngspice");
  return has("ngspice");
}

/** One check by a tool, counted as a test is. */
function check(name: string, isGood: boolean): Tally {
  console.log(`${name}: ${isGood ? "good" : "FAILED"}`);
  return { passed: isGood ? 1 : 0, failed: isGood ? 0 : 1 };
}

/** All tests; a file that does not load counts as a failed one. */
function tests(): Tally {
  const room = mkdtempSync(join(tmpdir(), "wirefathom-tests-"));
  try {
    const file = join(room, "report.json");
    const isGood = run(
      "vitest",
      "run",
      "--config",
      "tests/vitest.config.ts",
      "--reporter=default",
      "--reporter=json",
      `--outputFile.json=${file}`,
    );
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

if (!hasReference()) {
  console.error(INSTALL);
  process.exit(1);
}
const tallies = [
  check("types of core", run("tsc", "-p", "core")),
  check("types", run("tsc", "-p", ".")),
  check("lint", run("biome", "check", "--error-on-warnings", ".")),
  tests(),
];
const passed = tallies.reduce((sum, tally) => sum + tally.passed, 0);
const failed = tallies.reduce((sum, tally) => sum + tally.failed, 0);
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed === 0 ? 0 : 1);
