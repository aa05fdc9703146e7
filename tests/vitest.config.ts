import { availableParallelism } from "node:os";
import { defineConfig } from "vitest/config";
import { trials } from "./long.ts";

/** Tests of what has processes, sockets and files of its own: each file in a process of its own. */
const HOSTS = ["tests/electron/**/*.test.ts", "tests/contracts/library.test.ts"];
/** Nothing computes so long; the machine may be busy with the stories meanwhile, and with more. In the long form one test kills or damages for minutes. */
const testTimeout = trials(300_000, 1_800_000);

export default defineConfig({
  test: {
    root: new URL("..", import.meta.url).pathname,
    maxWorkers: availableParallelism(),
    projects: [
      { test: { name: "hosts", include: HOSTS, testTimeout } },
      {
        // All else computes and keeps nothing but what it remembers by identity; modules are read once for many files.
        test: {
          name: "computed",
          include: ["tests/**/*.test.ts"],
          exclude: HOSTS,
          isolate: false,
          testTimeout,
        },
      },
    ],
  },
});
