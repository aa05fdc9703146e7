import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { extractAll } from "@electron/asar";
import { expect, test } from "@playwright/test";
import { manifestOf, pack, type Target } from "../../electron/packaging/pack.ts";
import { standInArchive } from "../electron/archives.ts";
import { openSample } from "./acts.ts";
import { openElectron, programOfElectron } from "./electronHost.ts";
import { chromiumProgram, hasElectron, ROOT } from "./machine.ts";

const TARGET: Target = { platform: "linux", arch: process.arch === "arm64" ? "arm64" : "x64" };

// Packed once, for both.
test.describe.configure({ mode: "default" });
test.skip(process.platform !== "linux", "what is packed for Linux runs on Linux");

let room: string;
let program: string;

test.beforeAll(async () => {
  room = mkdtempSync(join(tmpdir(), "wirefathom-packed-"));
  standInArchive(room, TARGET, manifestOf(ROOT).devDependencies.electron);
  const folder = await pack({ root: ROOT, out: join(room, "out"), target: TARGET, archives: room });
  program = join(room, "program");
  extractAll(join(folder, "resources", "app.asar"), program);
});

test.afterAll(() => rmSync(room, { recursive: true, force: true, maxRetries: 3 }));

test("what was packed starts by itself, shows a sample and prints it", async () => {
  expect(readdirSync(join(program, "node_modules"))).toEqual(["better-sqlite3"]);
  expect(existsSync(join(program, "core"))).toBe(false);
  const library = join(room, "library");
  const opened = await openElectron(library, null, program);
  const { page } = opened;
  const faults: string[] = [];
  page.on("pageerror", (error) => faults.push(error.message));
  await openSample(page, "Roof vents");
  await page.keyboard.press("Control+p");
  const dialog = page.getByRole("dialog", { name: "Print" });
  const printed = await opened.saved(() => dialog.getByRole("button", { name: "Save as PDF" }).click());
  expect(printed.bytes.subarray(0, 5).toString("latin1")).toBe("%PDF-");
  expect(printed.bytes.toString("latin1")).toContain("IBMPlexSansCond");
  await page.keyboard.press("Escape");
  await opened.close();
  expect(faults).toEqual([]);
});

test("the terminal is in it, and says in its exit code what it found", () => {
  const env = { ...process.env, STANDIN_CHROMIUM: chromiumProgram() ?? "", WIREFATHOM_DATA: join(room, "library") };
  const run = (...words: readonly string[]) =>
    spawnSync(programOfElectron(), [...(hasElectron() ? ["--no-sandbox"] : []), program, ...words], {
      cwd: room,
      env,
      encoding: "utf8",
      timeout: 60_000,
    });
  const sample = join(program, "samples", "1-roof-vents.circuit.json");
  const check = run("check", sample);
  expect([check.status, check.stdout]).toEqual([0, expect.stringContaining("No problems")]);
  expect(run("check", "missing.circuit.json").status).toBe(2);
  const home = run("export", sample, "--what", "takehome", "--out", "home.html");
  expect([home.status, existsSync(join(room, "home.html"))]).toEqual([0, true]);
  expect(run("lesson").stdout).toContain("10-power-and-ground");
  expect(run("print", sample, "--what", "sheet", "--out", "sheet.pdf").status).toBe(0);
});
