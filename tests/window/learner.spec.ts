import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "@playwright/test";
import { verdictOf } from "../../core/lesson/attempt.ts";
import { readHandin } from "../../schemas/handin.ts";
import { got } from "../edit/given.ts";
import { positionOf } from "./acts.ts";
import { axeFinds } from "./axe.ts";
import { exerciseFile } from "./exerciseFile.ts";
import { expect, story } from "./story.ts";

/** What no place may hold before the verdict: the fault's text and its title. */
const SECRETS = ["W15:open", "W15 broken"];

/** Secrets that stand in the page, in what a browser keeps for it, or in the bytes of the library. */
async function shownIn(page: Page, folder: string): Promise<readonly string[]> {
  const inPage = await page.evaluate(async () => {
    const databases = await indexedDB.databases();
    const fields = [...document.querySelectorAll("input")].map(({ value }) => value);
    return [document.documentElement.outerHTML, ...fields, JSON.stringify({ ...localStorage, databases })].join("\n");
  });
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((each) => each.isFile());
  const bytes = files.map((each) => readFileSync(join(each.parentPath, each.name)).toString("latin1"));
  return SECRETS.filter((secret) => [inPage, ...bytes].some((text) => text.includes(secret)));
}

const lastShown = (page: Page) => page.locator(".learner-last .learner-shown");

story(
  "a learner opens an exercise, works on the vehicle by mouse, goes on after a restart, and hands in what proves it",
  { tag: "@both" },
  async ({ program }) => {
    const { folder } = program;
    const file = await exerciseFile(folder, "4-horn", "low-horn", "W15:open", {
      title: "Thin horn",
      told: "since the wash",
      hints: { count: 1, minutes: 5 },
    });
    await program.chooses(file, () => program.page.getByRole("button", { name: "Open a file" }).click());
    const { page } = program;
    await expect(page).toHaveTitle("Thin horn – Wirefathom");
    await expect(page.getByRole("heading", { name: "Low horn sounds: dead" })).toBeVisible();
    await positionOf(page, "S1", "pressed").click();
    await expect(lastShown(page)).toContainText("Low horn sounds: dead");
    await page.locator('[data-move="open bumper"]').click();
    await expect(page.locator(".learner-cost b")).toHaveText("12.1 min");

    // Found by the box, so that it stands in the middle; then clicked where it stands.
    await page.getByRole("button", { name: "Find" }).click();
    await page.getByRole("combobox", { name: /^Find/ }).fill("H1");
    await page.getByRole("option").first().click();
    await page.keyboard.press("Enter");
    const card = page.getByRole("dialog");
    await card.getByRole("button", { name: /^Feed H1 by a fused jumper/ }).click();
    await expect(lastShown(page)).toHaveText("works");
    await page.getByRole("textbox", { name: "Type what you do" }).fill("probe X11-1");
    await expect(page.locator(".learner-meant")).toContainText(/Volts at X11-1: \d.*min/);
    await page.keyboard.press("Enter");
    await expect(lastShown(page)).toContainText("V");
    await page.getByRole("button", { name: /^Hint/ }).click();
    await expect(lastShown(page)).toContainText("Next:");
    await expect(page.getByText("no hint left")).toBeVisible();
    const minutes = await page.locator(".learner-cost b").textContent();
    expect(await shownIn(page, folder)).toEqual([]);

    await program.kill();
    await expect(program.page.locator(".learner-cost b")).toHaveText(minutes ?? "");
    await program.page.reload();
    await program.page.getByRole("button", { name: "Done so far" }).click();
    await expect(program.page.locator(".learner-step")).toHaveCount(5);
    await program.page.getByRole("button", { name: "Verdict", exact: true }).click();
    const form = program.page.getByRole("region", { name: "Verdict" });
    await form.getByRole("combobox", { name: /^What is faulty/ }).fill("W15");
    await form.getByRole("checkbox").first().check();
    await form.getByRole("button", { name: "File the verdict" }).click();
    await form.getByRole("button", { name: "Yes, file it" }).click();
    await expect(form.getByText("Right: W15 broken.")).toBeVisible();
    await form.getByRole("textbox", { name: "Your name" }).fill("Ann");
    const saved = await program.saved(() => form.getByRole("button", { name: "Save your hand-in" }).click());
    expect(saved.name).toBe("Ann, Thin horn.handin.json");
    const handin = got(await readHandin(saved.bytes));
    expect([handin.learner, verdictOf(handin)]).toEqual(["Ann", { do: "verdict", suspect: "W15:open", proof: [1] }]);
    await program.page.getByRole("button", { name: "back to the library" }).click();
    await expect(program.page.locator(".entry-open.is-exercise")).toContainText("Verdict filed");
  },
);

story("the same by the keyboard alone, and the checker for accessibility finds nothing", async ({ program }) => {
  const { folder } = program;
  const file = await exerciseFile(folder, "4-horn", "low-horn", "W15:open", { tellsAtOnce: false });
  await program.restart(file);
  const { page } = program;
  const press = async (...keys: readonly string[]): Promise<void> => {
    for (const key of keys) await page.keyboard.press(key);
  };
  /** Goes on with Tab until what is wanted has the focus. */
  const tabTo = async (name: string): Promise<void> => {
    for (let tries = 0; tries < 60; tries++) {
      const now = await page.evaluate(() => {
        const { activeElement: at } = document;
        return `${at?.getAttribute("aria-label") ?? ""} ${at?.textContent ?? ""}`;
      });
      if (now.includes(name)) return;
      await press("Tab");
    }
    throw new Error(`Tab does not come to ${name}`);
  };
  // The drawing has the focus: the first point, what can be done there, and the first of it.
  await expect(page.getByRole("application")).toBeFocused();
  await press("Home", "Enter");
  await expect(page.getByRole("dialog")).toContainText("Cannot be reached yet");
  const found = [...(await axeFinds(page, "what can be done"))];
  await press("Enter");
  await expect(page.locator(".learner-last")).toContainText("Bonnet open");
  await expect(page.getByRole("application")).toBeFocused();
  await press("Enter");
  await expect(page.getByRole("dialog").getByRole("button").first()).toBeFocused();
  await press("Enter");
  await expect(lastShown(page)).toContainText("12.6");
  await tabTo("Type what you do");
  await page.keyboard.type("open bumper");
  await press("Enter");
  await expect(page.locator(".learner-last")).not.toContainText("Volts");
  await page.keyboard.type("probe X11-1 @ S1=pressed");
  await press("Enter");
  await expect(page.locator(".learner-last")).toContainText("Volts at X11-1");
  await page.keyboard.type("probe X11-9");
  await expect(page.locator(".learner-meant")).toContainText("X11");
  await press("Control+a", "Delete");
  await press("Shift+Tab");
  await tabTo("Verdict");
  await press("Enter");
  await tabTo("What is faulty");
  await page.keyboard.type("W15");
  await tabTo("Volts at X11-1");
  await press(" ");
  await tabTo("File the verdict");
  await press("Enter", "Enter");
  await expect(page.getByText("The verdict is filed.", { exact: false })).toBeVisible();
  expect(await shownIn(page, folder)).toEqual(["W15 broken"]);
  found.push(...(await axeFinds(page, "filed")));
  await tabTo("Your name");
  await page.keyboard.type("Ben");
  const saved = await program.saved(() => press("Enter"));
  expect(got(await readHandin(saved.bytes)).learner).toBe("Ben");
  await page.emulateMedia({ colorScheme: "dark" });
  found.push(...(await axeFinds(page, "dark", "colours")));
  expect(found).toEqual([]);
});
