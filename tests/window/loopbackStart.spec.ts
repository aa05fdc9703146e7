import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "@playwright/test";
import { isBuilt } from "../../electron/build.ts";
import { sampleText } from "../electron/sample.ts";
import { ROOT } from "./machine.ts";

/** Starts the program as `npm start` does where there is no screen, and gives the address it says. */
async function started(
  folder: string,
  file: string,
): Promise<{ readonly child: ChildProcess; readonly address: string }> {
  const { DISPLAY: _, WAYLAND_DISPLAY: __, ...env } = process.env;
  const words = [join(ROOT, "electron", "run.cjs"), "open", file];
  const child = spawn(process.execPath, words, {
    env: { ...env, WIREFATHOM_DATA: folder },
    stdio: ["ignore", "pipe", "inherit"],
  });
  let said = "";
  for await (const piece of child.stdout) {
    said += piece;
    const address = /http:\S+\?t=\S+/.exec(said)?.[0];
    if (address) return { child, address };
  }
  throw new Error(`no address was said, but: ${said}`);
}

test("a start with a file and no screen says where to look; a second one opens its file beside the first", async ({
  page,
  context,
}) => {
  test.skip(process.platform !== "linux", "elsewhere there is always a screen");
  // It would be built by the start, under the other stories' feet.
  expect(isBuilt(ROOT), "the sources are those that were built").toBe(true);
  const folder = mkdtempSync(join(tmpdir(), "wirefathom-story-"));
  const files = ["First by start", "Second by start"].map((title, index) => {
    const file = join(folder, `${index}.circuit.json`);
    writeFileSync(file, sampleText().replace(/"title": "[^"]*"/, `"title": "${title}"`));
    return file;
  });
  const first = await started(folder, files[0]!);
  await page.goto(first.address);
  await expect(page).toHaveTitle("First by start – Wirefathom");

  const second = await started(folder, files[1]!);
  expect(await once(second.child, "exit")).toEqual([0, null]);
  const beside = await context.newPage();
  await beside.goto(second.address);
  await expect(beside).toHaveTitle("Second by start – Wirefathom");
  await expect(page).toHaveTitle("First by start – Wirefathom");

  // A setting that is changed in one holds in the other at once.
  await expect(page.locator("html")).toHaveAttribute("data-theme", "light");
  await beside.getByRole("button", { name: "Change to dark" }).click();
  await expect(page.locator("html")).toHaveAttribute("data-theme", "dark");

  await page.close();
  await beside.close();
  first.child.kill("SIGINT");
  expect(await once(first.child, "exit")).toEqual([0, null]);
  rmSync(folder, { recursive: true, force: true });
});
