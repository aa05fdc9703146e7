import { existsSync, readFileSync } from "node:fs";

/** What came of the stories in one host. */
export interface StoryTally {
  readonly host: string;
  readonly passed: number;
  /** How many of those that passed did so only at the second try. */
  readonly retold: number;
  readonly failed: number;
  /** What ran the page, as it said itself: `Electron 45.4.1`, or `stand-in with Chromium 156.0.8078.79`. */
  readonly engines: readonly string[];
}

interface Test {
  readonly projectName: string;
  readonly status: "expected" | "unexpected" | "flaky" | "skipped";
  readonly annotations: readonly { readonly type: string; readonly description?: string }[];
}

interface Suite {
  readonly suites?: readonly Suite[];
  readonly specs?: readonly { readonly tests: readonly Test[] }[];
}

/** Reads the report of the stories. A host in which no story passed counts as one that failed. */
export function storyTallies(file: string, hosts: readonly string[]): readonly StoryTally[] {
  const report: Suite = existsSync(file) ? JSON.parse(readFileSync(file, "utf8")) : {};
  const tests = testsOf(report);
  return hosts.map((host) => {
    const own = tests.filter(({ projectName }) => projectName === host);
    const passed = own.filter(({ status }) => status === "expected" || status === "flaky");
    const retold = own.filter(({ status }) => status === "flaky").length;
    const failed = own.filter(({ status }) => status === "unexpected").length;
    const said = passed.flatMap(({ annotations }) => annotations.filter(({ type }) => type === "engine"));
    const engines = [...new Set(said.map(({ description = "" }) => description))];
    return { host, passed: passed.length, retold, failed: Math.max(failed, engines.length === 0 ? 1 : 0), engines };
  });
}

function testsOf({ suites = [], specs = [] }: Suite): readonly Test[] {
  return [...specs.flatMap(({ tests }) => tests), ...suites.flatMap(testsOf)];
}
