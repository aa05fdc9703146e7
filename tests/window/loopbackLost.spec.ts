import { join } from "node:path";
import type { Page } from "@playwright/test";
import { readCircuit } from "../../schemas/circuit.ts";
import { positionOf, throwTo } from "./acts.ts";
import { ROOT } from "./machine.ts";
import { expect, story } from "./story.ts";
import { openView } from "./views.ts";

story.use({ file: join(ROOT, "samples", "4-horn.circuit.json") });

const notes = (page: Page) => page.getByRole("region", { name: "Notes" });
const seen = (page: Page, check: string) => page.getByLabel(`Seen: ${check}`);

/** The view of what works. */
const showWorks = (page: Page) => openView(page, "What works");

story(
  "two tabs on one circuit: none writes over the other, and the one that was only looked at follows",
  async ({ program, context }) => {
    const first = program.page;
    await expect(first).toHaveTitle(/Horn/);
    const second = await context.newPage();
    await second.goto(new URL("/", first.url()).href);
    await expect(second).toHaveTitle(/Horn/);
    await showWorks(second);

    await showWorks(first);
    await seen(first, "Low horn sounds").selectOption("works");
    await second.waitForTimeout(1000);
    // The second is looked at again.
    await second.evaluate(() => window.dispatchEvent(new Event("focus")));
    await expect(seen(second, "Low horn sounds")).toHaveValue("works");
    await expect(notes(second)).toContainText("was changed in another window");
    await expect(seen(second, "High horn sounds")).toBeVisible();

    // Both are worked on: the later goes on beside the other, and nothing of either is lost.
    await seen(first, "High horn sounds").selectOption("dead");
    await first.waitForTimeout(1000);
    await throwTo(second, "S2", "open");
    await expect(notes(second)).toContainText("was changed twice at once");
    await throwTo(second, "S2", "shut");
    await throwTo(second, "S2", "open");
    await notes(second).getByRole("button", { name: "Open the other one" }).click();
    await expect(seen(second, "High horn sounds")).toHaveValue("dead");
    await expect(positionOf(second, "S2", "open")).toHaveAttribute("aria-pressed", "false");
    await second.getByRole("button", { name: /back to the library/ }).click();
    await expect(second.locator(".entry")).toHaveCount(2);
    await second.locator(".entry-open", { hasText: "Kept beside" }).click();
    await expect(positionOf(second, "S2", "open")).toHaveAttribute("aria-pressed", "true");
    await second.close();
  },
);

story("the program behind the page is gone: the circuit goes out of the page as a file", async ({ program }) => {
  const { page } = program;
  await expect(page).toHaveTitle(/Horn/);
  await page.route("**/call/**", (route) => route.abort());
  await throwTo(page, "S2", "open");
  const offer = notes(page).getByRole("button", { name: "Save a copy to a file" });
  await expect(offer).toBeVisible();
  const byNote = await program.saved(() => offer.click());
  const byKey = await program.saved(() => page.keyboard.press("Control+s"));
  for (const { name, bytes } of [byNote, byKey]) {
    expect(name).toMatch(/\.circuit\.json$/);
    expect(readCircuit(bytes.toString("utf8")).ok).toBe(true);
  }
  await expect(notes(page)).toContainText("Handed to the browser.");
  // It answers again, and all is kept.
  await page.unroute("**/call/**");
  await expect(notes(page)).not.toContainText("not kept yet");
  program.faults.length = 0;
});
