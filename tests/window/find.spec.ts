import { spawnSync } from "node:child_process";
import { openSample, throwTo } from "./acts.ts";
import { expect, story } from "./story.ts";
import { openView } from "./views.ts";

/** The words of a PDF. The program that reads them is one that the tests need, as the reference solver is. */
function textOf(pdf: Buffer): string {
  const { stdout, error } = spawnSync("pdftotext", ["-layout", "-", "-"], { input: pdf, encoding: "utf8" });
  if (error) throw new Error("pdftotext is missing: apt-get install poppler-utils");
  return stdout;
}

story(
  "a complaint gives a probe order, it is followed on the drawing, and goes on paper",
  { tag: "@both" },
  async ({ program }) => {
    const { page } = program;
    await openSample(page, "Roof vents");
    await openView(page, "Probe order");
    await page.getByRole("searchbox").last().fill("middle vent opens");
    await page.getByRole("button", { name: "Middle vent opens from its own switch" }).click();
    const steps = page.locator(".step");
    await expect(steps.first()).toBeVisible({ timeout: 20_000 });
    const many = await steps.count();

    // What works clears what it shares: fewer steps remain.
    await openView(page, "What works");
    for (const words of ["Rear vent opens from its own switch", "Front left vent opens from its own switch"])
      await page.getByRole("checkbox", { name: `${words}: works` }).check();
    await openView(page, "Probe order");
    await expect(page.getByText("2 checks ticked as working.")).toBeVisible();
    await expect.poll(() => steps.count(), { timeout: 20_000 }).toBeLessThan(many);
    await expect(page.getByText(/Black stays on battery/)).toBeVisible();

    // A row is opened and its point found on the drawing.
    const second = steps.nth(1);
    const point = await second.locator(".step-head b").textContent();
    await second.locator(".step-head").click();
    await expect(second).toHaveClass(/is-active/);
    await expect(page.locator("main [role=status]").first()).toContainText(point ?? "never");

    await page.keyboard.press("Control+p");
    await page.getByRole("dialog").getByRole("button", { name: "Checklist", exact: true }).click();
    const save = page.getByRole("button", { name: "Save as PDF" });
    await expect(save).toBeEnabled({ timeout: 20_000 });
    const { bytes } = await program.saved(() => save.click());
    const words = textOf(bytes);
    expect(words).toContain("Middle vent opens from its own switch");
    expect(words).toContain(point);
    expect(words).toMatch(/procedure/);
  },
);

story("a position table tells each pin plugged in and unplugged", async ({ program }) => {
  const { page } = program;
  await openSample(page, "Roof vents");
  await throwTo(page, "S1", "on");
  await openView(page, "Position table");
  await page.locator(".table-choice select").selectOption({ label: "X5, Plug of S5" });
  await expect(page.getByRole("columnheader", { name: /X5-6/ })).toBeVisible({ timeout: 20_000 });
  await expect(page.getByRole("row", { name: /S5 open/ }).first()).toContainText("V");
  await page.getByRole("button", { name: "Unplugged" }).click();
  await expect(page.getByText(/drifts/).first()).toBeVisible();
});
