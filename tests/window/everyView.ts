import { expect, type Page } from "@playwright/test";
import { openSample } from "./acts.ts";
import { exerciseFile } from "./exerciseFile.ts";
import { openView } from "./views.ts";

/** Every view beside the drawing, by the words of its tab. */
export const VIEWS = [
  "Probe order",
  "Suspects",
  "Readings",
  "What works",
  "Straight branch",
  "Instruments",
  "Shared paths",
  "Faults",
  "Fault cupboard",
  "Position table",
  "Condition",
  "Class",
  "List",
  "Circuit",
  "Printed pages",
] as const;

/** What is looked at in each view, by the words that name where it was. */
export type Look = (where: string) => Promise<void>;

/** What a worker may take on a busy machine, milliseconds. */
const WORKER_MS = 40_000;

/** Goes through all that the program shows, on a small sample, and has a look at each. Ends in the library. */
export async function everyView(page: Page, folder: string, look: Look): Promise<void> {
  await look("library");
  await page.getByRole("button", { name: "Hand-ins" }).click();
  await expect(page.getByRole("heading", { name: "Hand-ins" })).toBeVisible();
  await look("hand-ins");
  await page.getByRole("button", { name: "Back", exact: true }).click();
  await openSample(page, "Horn");
  await openView(page, "Probe order");
  await page.locator("aside").getByRole("button", { name: "Low horn sounds" }).click();
  await expect(page.locator(".step").first()).toBeVisible({ timeout: WORKER_MS });
  await expect(page.locator(".is-old")).toHaveCount(0, { timeout: WORKER_MS });
  for (const view of VIEWS) {
    await openView(page, view);
    await expect(page.getByRole("region", { name: view, exact: true })).toBeVisible();
    await look(view);
  }
  await dialogs(page, look);
  await page.getByRole("button", { name: "back to the library" }).click();
  await learner(page, folder, look);
  await look("library with work in it");
}

/** What opens over the bench, and what stands in its place. */
async function dialogs(page: Page, look: Look): Promise<void> {
  await openView(page, "Class");
  await page.keyboard.press("F5");
  await page.locator(".wall-sheet").first().waitFor();
  await page.keyboard.press("q");
  await look("class wall");
  await page.keyboard.press("Escape");
  for (const [key, name] of [
    ["F1", "Help"],
    ["Shift+F1", "Keys and commands"],
  ] as const) {
    await page.keyboard.press(key);
    await expect(page.getByRole("dialog", { name, exact: true })).toBeVisible();
    await look(name);
    await page.keyboard.press("Escape");
  }
  await page.keyboard.press("Control+f");
  await page.keyboard.type("E1");
  await look("find");
  // Whoever looked elsewhere has closed it.
  await page.keyboard.press("Escape");
  await page.keyboard.press("Control+f");
  await page.keyboard.type("E1");
  await page.keyboard.press("Enter");
  await page.getByRole("toolbar", { name: "What is chosen" }).getByRole("button", { name: "Edit" }).click();
  await expect(page.getByRole("button", { name: "Done" })).toBeVisible();
  await look("part editor");
  await page.getByRole("button", { name: "Done" }).click();
  await page.getByRole("application").focus();
  await page.keyboard.press("ContextMenu");
  await look("menu of a part");
  await page.keyboard.press("Escape");
  await page.getByRole("button", { name: "Add a part" }).click();
  await look("catalogue");
  await page.keyboard.press("Escape");
  await page.getByRole("button", { name: "Settings" }).click();
  await look("settings");
  await page.keyboard.press("Escape");
  await page.keyboard.press("Control+p");
  await expect(page.locator(".print-page").first()).toBeVisible({ timeout: WORKER_MS });
  await look("print");
  await page.getByRole("button", { name: "Export a page, pictures or lists" }).click();
  await look("export");
  await page.keyboard.press("Escape");
}

/** An exercise on the learner's bench, in each of its views. */
async function learner(page: Page, folder: string, look: Look): Promise<void> {
  const file = await exerciseFile(folder, "4-horn", "low-horn", "W15:open", { hints: { count: 2, minutes: 5 } });
  const [chooser] = await Promise.all([page.waitForEvent("filechooser"), page.keyboard.press("Control+o")]);
  await chooser.setFiles(file);
  await page.locator(".learner-head").waitFor();
  await page.getByRole("textbox", { name: "Type what you do" }).fill("try low-horn");
  await page.keyboard.press("Enter");
  await look("learner's bench");
  await page.getByRole("application").focus();
  for (const key of ["Home", "Enter"]) await page.keyboard.press(key);
  await look("what a learner can do there");
  await page.keyboard.press("Escape");
  for (const view of ["Done so far", "Verdict"]) {
    await page.getByRole("navigation", { name: "Views" }).getByRole("button", { name: view }).click();
    await look(`learner's ${view}`);
  }
  await page.getByRole("button", { name: "back to the library" }).click();
  await expect(page.locator(".entry-open.is-exercise")).toBeFocused();
}
