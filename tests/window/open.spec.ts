import { openSample, positionOf, throwTo } from "./acts.ts";
import { expect, story } from "./story.ts";

story(
  "a first start shows the samples; one opens, and what was done on it outlasts a reload",
  { tag: "@both" },
  async ({ program }) => {
    const { page } = program;
    await expect(page).toHaveTitle("Wirefathom");
    await expect(page.getByRole("heading", { name: "Start from a sample" })).toBeVisible();
    await expect(page.locator(".tile")).toHaveCount(13);
    const title = await openSample(page, "Roof vents");
    await expect(positionOf(page, "S1", "on")).toHaveAttribute("aria-pressed", "false");
    await throwTo(page, "S1", "on");
    // Every accepted edit is kept within a second.
    await page.waitForTimeout(1_000);
    await page.reload();
    await expect(page).toHaveTitle(`${title} – Wirefathom`);
    await expect(positionOf(page, "S1", "on")).toHaveAttribute("aria-pressed", "true");
  },
);
