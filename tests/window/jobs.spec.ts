import { openSample } from "./acts.ts";
import { entryText, planted } from "./planted.ts";
import { expect, story } from "./story.ts";
import { openView } from "./views.ts";

story(
  "a job is begun, read, put away, found by search after a restart, taken up again, and its verdict filed",
  { tag: "@both" },
  async ({ program }) => {
    story.slow();
    const { page } = program;
    await openSample(page, "Roof vents");
    await openView(page, "Probe order");
    await page.getByRole("button", { name: "Begin a job" }).click();
    await page.getByRole("textbox", { name: "Vehicle", exact: true }).fill("B-AD 1234");
    await page.getByRole("textbox", { name: "What was told" }).fill("middle vent dead since the car wash");
    await page.getByRole("checkbox", { name: "Wet" }).check();
    await page.locator(".job-line").click();
    await page.getByRole("button", { name: "Middle vent opens from its own switch" }).click();
    const field = page.locator(".reading-field input");
    const row = planted("1-roof-vents", "middle-open-own", "W13:open").next()!;
    await expect(page.locator(".step.is-active .step-head b").first()).toHaveText(row.point, { timeout: 20_000 });
    await field.fill(entryText(row.shows));
    await page.keyboard.press("Enter");
    await openView(page, "Readings");
    await expect(page.locator(".reading-row").first()).toBeVisible();
    const count = await page.locator(".reading-row").count();

    // Put away within the moment before it is kept: nothing of it is lost, and nothing of it is left.
    await page.locator(".job-line").click();
    await page.getByRole("button", { name: "Put the job away" }).click();
    await expect(page.getByText("No job in hand.")).toBeVisible();
    await expect(page.getByText("Nothing was read yet")).toBeVisible();
    await page.getByRole("button", { name: "Begin a job" }).click();
    await page.getByRole("textbox", { name: "Vehicle", exact: true }).fill("M-XY 77");
    await page.getByRole("textbox", { name: "Vehicle", exact: true }).press("Enter");
    await page.waitForTimeout(1_000);
    await program.kill();

    await expect(program.page.locator(".job-line")).toContainText("M-XY 77", { timeout: 20_000 });
    await program.page.getByRole("button", { name: "back to the library" }).click();
    const entries = program.page.locator(".entry-open.is-job");
    await expect(entries).toHaveCount(2);
    await program.page.getByRole("searchbox").fill("car wash");
    await expect(entries).toHaveCount(1);
    await entries.first().click();
    await expect(program.page.getByText("middle vent dead since the car wash")).toBeVisible({ timeout: 20_000 });
    await openView(program.page, "Readings");
    await expect(program.page.locator(".reading-row")).toHaveCount(count);

    // Any suspect may be filed; what speaks against it is said.
    await openView(program.page, "Suspects");
    await program.page.locator(".job-line").click();
    const verdict = program.page.getByRole("combobox", { name: "Verdict" });
    await verdict.fill("W99:open");
    await verdict.press("Enter");
    await expect(program.page.getByText(/W99:open is nothing that can be wrong/)).toBeVisible();
    await verdict.fill("M3:seized");
    await verdict.press("Enter");
    await expect(program.page.locator(".job-against")).toBeVisible({ timeout: 20_000 });
    await program.page.getByRole("textbox", { name: "What was done" }).fill("new motor");
    await verdict.focus();
    await expect(program.page.locator(".job-stands")).toHaveText("done");
    const file = await program.saved(() => program.page.getByRole("button", { name: "Save to a file" }).click());
    expect(file.name).toBe("B-AD 1234 Roof vents.job.json");
    await program.page.waitForTimeout(1_000);
    await program.restart();
    await expect(program.page.locator(".job-stands")).toHaveText("done", { timeout: 20_000 });

    // What a done job found weighs more in the next one on this circuit, and it is said.
    await program.page.locator(".job-line").click();
    await program.page.getByRole("button", { name: "Put the job away" }).click();
    await program.page.getByRole("button", { name: "Begin a job" }).click();
    await program.page.locator(".job-line").click();
    await program.page.getByRole("button", { name: "Middle vent opens from its own switch" }).click();
    await program.page.getByRole("button", { name: /^M3 seized/ }).click({ timeout: 20_000 });
    await expect(program.page.getByText("Found here in 1 earlier job.")).toBeVisible();
  },
);
