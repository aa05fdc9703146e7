import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { pdf } from "./printedFiles.ts";
import { expect, story } from "./story.ts";

story("an empty library offers a sample, a printed page to redraw, a lesson and the cautions", async ({ program }) => {
  const { page, folder } = program;
  await page.getByRole("button", { name: "Before you probe" }).click();
  await expect(page.getByRole("article")).toHaveAccessibleName("Before you probe");
  await page.keyboard.press("Escape");
  await page.getByRole("button", { name: "Open a sample" }).click();
  await expect(page.locator(".samples.are-vehicles button").first()).toBeFocused();

  const file = join(folder, "factory.pdf");
  writeFileSync(file, await pdf(1));
  const chooser = page.waitForEvent("filechooser");
  await page.getByRole("button", { name: "Redraw a printed page" }).click();
  await (await chooser).setFiles(file);
  await page.getByRole("button", { name: "Bring in 1 page" }).click();
  await page.getByRole("navigation", { name: "Views" }).getByRole("button", { name: "More views" }).click();
  await page.getByRole("button", { name: "Printed pages", exact: true }).click();
  await expect(page.getByRole("list", { name: /^Printed pages under this page/ }).getByRole("listitem")).toHaveCount(1);
});
