import { openSample, positionOf, throwTo } from "./acts.ts";
import { openLoopback } from "./loopbackHost.ts";
import { expect, story } from "./story.ts";

story(
  "a library that the program's own window has is read in a browser, which says that it keeps nothing until the window is closed",
  async ({ program, context }) => {
    await program.page.getByRole("button", { name: "New circuit" }).click();
    await expect(program.page.getByRole("application")).toBeVisible();
    await program.page.keyboard.press("Control+w");
    await openSample(program.page, "Horn");
    await throwTo(program.page, "S2", "open");
    await program.page.waitForTimeout(1_000);

    const second = await openLoopback(context, program.folder, null);
    const { page } = second;
    const notes = page.getByRole("region", { name: "Notes" });
    await expect(notes).toContainText("Another Wirefathom has this library open");
    // It shows what the window has on its bench, its last edit included.
    await expect(page).toHaveTitle(/Horn/);
    await expect(positionOf(page, "S2", "open")).toHaveAttribute("aria-pressed", "true");
    await throwTo(page, "S2", "shut");
    await expect(notes).toContainText("are not kept yet");
    await expect(notes.getByRole("button", { name: "Save a copy to a file" })).toBeVisible();
    await expect(positionOf(program.page, "S2", "open")).toHaveAttribute("aria-pressed", "true");
    await page.screenshot({ path: story.info().outputPath("looked-at.png") });

    await program.app?.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.close());
    await expect(notes).not.toContainText("are not kept yet", { timeout: 60_000 });
    await page.waitForTimeout(1_000);
    await second.close();
    await program.restart();
    await expect(positionOf(program.page, "S2", "shut")).toHaveAttribute("aria-pressed", "true");
  },
);
