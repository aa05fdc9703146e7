import { join } from "node:path";
import { defineConfig } from "@playwright/test";
import { isLong } from "../long.ts";
import { chromiumProgram, ROOT } from "./machine.ts";
import type { HostName } from "./opened.ts";

const chromium = chromiumProgram();
if (chromium === null) throw new Error("There is no Chromium on this machine: apt-get install chromium");
const report = process.env.STORIES_REPORT;

/** Of the stories of the page, the program's own window tells in `npm test` those that need what only a host does. */
const IN_THE_WINDOW = /\belectron[A-Z]\w*\.spec\.ts|@both/;

/** Stories are told in a browser with the loopback host, and in the program's own window. */
// biome-ignore lint/style/noDefaultExport: the runner takes it so
export default defineConfig<{ host: HostName }>({
  testDir: import.meta.dirname,
  testMatch: "*.spec.ts",
  outputDir: join(ROOT, "out", "stories"),
  workers: 2,
  fullyParallel: true,
  // A second try tells a busy machine from a fault; the run says how many needed it.
  retries: 1,
  forbidOnly: true,
  // The tests compute meanwhile.
  timeout: 120_000,
  expect: { timeout: 20_000 },
  reporter: report ? [["list"], ["json", { outputFile: report }]] : [["list"]],
  use: { launchOptions: { executablePath: chromium }, viewport: { width: 1280, height: 800 } },
  projects: [
    { name: "loopback", use: { host: "loopback" }, testIgnore: "electron*.spec.ts" },
    {
      name: "electron",
      use: { host: "electron" },
      testIgnore: "loopback*.spec.ts",
      ...(!isLong && { grep: IN_THE_WINDOW }),
    },
  ],
});
