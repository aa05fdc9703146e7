import { openSample } from "./acts.ts";
import { expect, story } from "./story.ts";

story(
  "a note of a success leaves by itself unless it is read; an error stays until the next edit",
  async ({ program }) => {
    const { page } = program;
    const notes = page.getByRole("region", { name: "Notes" });
    await openSample(page, "Horn");
    await page.getByRole("application").focus();
    await page.keyboard.press("Delete");
    await expect(notes).toContainText("Nothing is chosen.");
    // Kept in the library, and deleted there.
    await page.clock.install();
    await page.clock.runFor(20_000);
    await expect(notes).toContainText("Nothing is chosen.");
    await page.getByRole("application").focus();
    await page.keyboard.press("b");
    await expect(notes).not.toContainText("Nothing is chosen.");

    await page.keyboard.press("PageDown");
    await page.keyboard.press("t");
    await page.clock.runFor(3000);
    await page.getByRole("button", { name: /back to the library/ }).click();
    await page
      .getByRole("button", { name: /^More for .*[Hh]orn/ })
      .first()
      .click();
    await page.getByRole("button", { name: "Delete", exact: true }).click();
    const note = notes.locator(".notice");
    await expect(note).toContainText("is deleted.");
    await note.hover();
    await page.clock.runFor(30_000);
    await expect(note).toBeVisible();
    // The focus holds it as the pointer does.
    await note.getByRole("button", { name: "Put away" }).focus();
    await page.mouse.move(5, 700);
    await page.clock.runFor(30_000);
    await expect(note).toBeVisible();
    await page.getByRole("searchbox").focus();
    await page.clock.runFor(16_000);
    await expect(note).toHaveCount(0);
  },
);
