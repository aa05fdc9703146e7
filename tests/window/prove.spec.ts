import AxeBuilder from "@axe-core/playwright";
import { openSample } from "./acts.ts";
import { entryText, planted } from "./planted.ts";
import { expect, story } from "./story.ts";
import { openView } from "./views.ts";

story("what was found is proven before and after, and handed over on a page for the owner", async ({ program }) => {
  story.slow();
  const { page } = program;
  await openSample(page, "Roof vents");
  await openView(page, "Probe order");
  await page.getByRole("button", { name: "Middle vent opens from its own switch" }).click();
  const field = page.locator(".reading-field input");
  await expect(field).toBeVisible({ timeout: 20_000 });

  // While the search goes on there is nothing to prove, and nothing of it to print.
  await expect(page.getByRole("region", { name: "Prove it" })).toHaveCount(0);
  await page.keyboard.press("Control+p");
  const print = page.getByRole("dialog", { name: "Print" });
  await expect(print.getByText("Drop budget")).toBeVisible();
  await expect(print.getByText("Handover page")).toHaveCount(0);
  await page.keyboard.press("Escape");

  const vehicle = planted("1-roof-vents", "middle-open-own", "W13:open");
  for (let row = vehicle.next(); row !== null; row = vehicle.next()) {
    await expect(page.locator(".step.is-active .step-head b").first()).toHaveText(row.point, { timeout: 20_000 });
    await expect(page.locator(".is-old")).toHaveCount(0, { timeout: 20_000 });
    await field.fill(entryText(row.shows));
    await page.keyboard.press("Enter");
  }
  const taken = vehicle.count();

  // After "Found" the row that proves it has fields; what is read before counts as a reading.
  const prove = page.getByRole("region", { name: "Prove it" });
  await expect(prove).toBeVisible({ timeout: 20_000 });
  const before = prove.getByRole("textbox", { name: "Read before the repair in row 1 of the proof" });
  await before.fill("400");
  await page.keyboard.press("Enter");
  await expect(prove.locator(".value-trouble")).toContainText("400");
  await expect(before).toHaveValue("400");
  await before.fill("12.58");
  await page.keyboard.press("Enter");
  await openView(page, "Readings");
  await expect(page.locator(".reading-row")).toHaveCount(taken + 1);

  // After the repair: outside the window is masked, inside is mended.
  await openView(page, "Suspects");
  await expect(prove).toBeVisible({ timeout: 20_000 });
  await expect(prove.getByText("12.58\u00a0V read")).toBeVisible();
  const after = prove.getByRole("textbox", { name: /^Read after the repair/ });
  const rows = await after.count();
  await after.first().fill("1.5");
  await page.keyboard.press("Enter");
  await expect(prove.getByText(/outside, so masked or not mended/)).toBeVisible();
  for (let row = 0; row < rows; row++) {
    await after.nth(row).fill("ok");
    await page.keyboard.press("Enter");
  }
  await expect(prove.getByRole("status")).toContainText("Every row lies in its window");
  await expect(prove.getByText(/end stops/)).toBeVisible();
  for (const colorScheme of ["dark", "light"] as const) {
    await page.emulateMedia({ colorScheme });
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id }) => id)).toEqual([]);
  }

  await page.keyboard.press("Control+p");
  await print.getByText("Handover page").click();
  await print.getByLabel("What was done").fill("New wire W13 to the switch S5, tied up away from the frame.");
  const sheet = print.locator(".print-pages svg").first();
  await expect(sheet).toContainText("middle vent switch, tied up", { timeout: 20_000 });
  await expect(sheet).not.toContainText("W13");
  expect((await new AxeBuilder({ page }).analyze()).violations.map(({ id }) => id)).toEqual([]);
  const pdf = await program.saved(() => print.getByRole("button", { name: "Save as PDF" }).click());
  expect(pdf.bytes.subarray(0, 5).toString()).toBe("%PDF-");
});
