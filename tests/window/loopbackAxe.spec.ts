import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { openSample } from "./acts.ts";
import { axeFinds } from "./axe.ts";
import { photograph } from "./printedFiles.ts";
import { expect, story } from "./story.ts";
import { openView } from "./views.ts";

const VIEWS = [
  "Probe order",
  "Suspects",
  "Readings",
  "What works",
  "Faults",
  "Fault cupboard",
  "Position table",
  "Condition",
  "Class",
  "List",
  "Straight branch",
  "Circuit",
  "Printed pages",
];

for (const theme of ["light", "dark"] as const) {
  story(`the checker for accessibility finds nothing, ${theme}`, async ({ program }) => {
    story.slow();
    const { page } = program;
    // The dark look is the same page in other colours.
    const found = (where: string): Promise<readonly string[]> =>
      axeFinds(page, where, theme === "dark" ? "colours" : undefined);
    await page.emulateMedia({ colorScheme: theme });
    const all = [...(await found("first start"))];
    await openSample(page, "Exterior lights");
    for (const view of VIEWS) {
      await openView(page, view);
      await page.waitForTimeout(300);
      all.push(...(await found(view)));
    }
    const file = join(program.folder, "bench.jpg");
    writeFileSync(file, photograph().jpeg);
    const [field] = await Promise.all([
      page.waitForEvent("filechooser"),
      page.getByRole("button", { name: "Bring in printed pages" }).click(),
    ]);
    await field.setFiles(file);
    const bring = page.getByRole("button", { name: "Bring in 1 page" });
    await expect(bring).toBeEnabled();
    all.push(...(await found("bringing in")));
    await bring.click();
    await page.getByRole("button", { name: "Make square" }).click();
    await page.waitForTimeout(300);
    all.push(...(await found("making square")));
    await page.getByRole("button", { name: "Leave it" }).click();
    await page.getByRole("button", { name: "Settings" }).click();
    all.push(...(await found("settings")));
    await page.keyboard.press("Escape");
    await page.keyboard.press("Shift+F1");
    await page.getByRole("button", { name: "Change the key of Mirror" }).click();
    await page.keyboard.press("Enter");
    all.push(...(await found("a key that cannot be given")));
    await page.keyboard.press("t");
    await expect(page.getByRole("button", { name: "Swap" })).toBeFocused();
    all.push(...(await found("a key that another has")));
    await page.keyboard.press("Enter");
    all.push(...(await found("keys")));
    await page.keyboard.press("Escape");
    await page.getByRole("button", { name: "Add a part" }).click();
    all.push(...(await found("catalogue")));
    await page.keyboard.press("Escape");
    await page.getByRole("application").focus();
    await page.keyboard.press("PageDown");
    await page.keyboard.press("ContextMenu");
    await page.locator(".menu-values summary").click();
    all.push(...(await found("menu of a part")));
    await page.keyboard.press("Escape");
    await page.getByRole("button", { name: "Edit", exact: true }).click();
    await expect(page.getByRole("button", { name: "Done" })).toBeVisible();
    all.push(...(await found("part editor")));
    await page.getByRole("button", { name: "Done" }).click();
    await page.keyboard.press("Control+p");
    await expect(page.locator(".print-page").first()).toBeVisible();
    all.push(...(await found("print")));
    expect(all).toEqual([]);
  });
}
