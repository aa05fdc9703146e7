import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, readFileSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { ownFolder } from "./library.ts";
import { ROOT } from "./sample.ts";

const SAMPLE = join(ROOT, "samples", "4-horn.circuit.json");
const VERSION = join("core", "base", "words", "circuit.ts");

/** A copy of the sources in a folder of its own, with the packages beside it. */
function ownSources(): string {
  const root = ownFolder();
  mkdirSync(root, { recursive: true });
  for (const name of ["core", "schemas", "electron", "package.json", "package-lock.json", "tsconfig.json"]) {
    cpSync(join(ROOT, name), join(root, name), { recursive: true });
  }
  symlinkSync(join(ROOT, "node_modules"), join(root, "node_modules"));
  return root;
}

function run(root: string, ...words: readonly string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [join(root, "electron", "run.cjs"), ...words], {
    encoding: "utf8",
  });
  return { status, stdout, stderr };
}

function newest(root: string): string {
  return JSON.parse(readFileSync(join(root, "out", "terminal", "newest.json"), "utf8")).folder;
}

describe("what begins the command line", () => {
  it("bundles it once, and anew where a source of it changed", () => {
    const root = ownSources();
    const first = run(root, "check", SAMPLE);
    expect(first).toMatchObject({ status: 0, stderr: "" });
    const bundled = newest(root);
    expect(run(root, "check", SAMPLE)).toEqual(first);
    expect(newest(root)).toBe(bundled);
    const words = join(root, VERSION);
    writeFileSync(words, `${readFileSync(words, "utf8")}\n`);
    expect(run(root, "check", SAMPLE)).toEqual(first);
    expect(newest(root)).not.toBe(bundled);
  });

  it("runs the sources as they are where they cannot be bundled, and says what is wrong with them", () => {
    const root = ownSources();
    writeFileSync(join(root, "electron", "launch", "bundle.ts"), "export const nothing = 1;\n");
    expect(run(root, "check", SAMPLE)).toMatchObject({ status: 0, stderr: "" });
    writeFileSync(join(root, "electron", "terminal", "process.ts"), "export const = 1;\n");
    const broken = run(root, "check", SAMPLE);
    expect(broken.status).toBe(1);
    expect(broken.stderr).toContain("process.ts");
  });
});
