import { openSample } from "./acts.ts";
import { axeFinds } from "./axe.ts";
import { expect, story } from "./story.ts";

story(
  "F1 opens the help at what is in front, it is searched, draws its symbols, and says what the program is",
  { tag: "@both" },
  async ({ program }) => {
    const { page, folder } = program;
    const help = page.getByRole("dialog", { name: "Help", exact: true });
    const article = help.getByRole("article");
    await page.getByRole("button", { name: "Help", exact: true }).click();
    await expect(article).toHaveAccessibleName("How to begin");
    await page.keyboard.press("Escape");

    await openSample(page, "Roof vents");
    await page.getByRole("navigation", { name: "Views" }).getByRole("button", { name: "Suspects" }).click();
    await page.getByRole("application").focus();
    await page.keyboard.press("F1");
    await expect(article).toHaveAccessibleName("Suspects");
    await expect(article.locator("kbd").first()).toHaveText("N");
    await help.getByRole("button", { name: "Symbols of parts" }).click();
    expect(await article.locator("svg").count()).toBeGreaterThan(25);
    await help.getByRole("button", { name: "Lines and signs" }).click();
    await expect(article.getByText("powered through a load")).toBeVisible();
    await help.getByRole("searchbox").fill("airbag");
    await expect(article).toHaveAccessibleName("Before you probe");
    await help.getByRole("searchbox").fill("teapot");
    await expect(help.getByText("Nothing in the help says that.")).toBeVisible();
    await help.getByRole("searchbox").fill("");
    await help.getByRole("button", { name: "About Wirefathom" }).click();
    await expect(article).toContainText(folder);
    await article.getByText(/^react \d/).click();
    await expect(article.locator("details[open] pre")).toContainText("Permission is hereby granted");
    expect(await axeFinds(page, "help")).toEqual([]);
    await page.keyboard.press("Escape");
    await expect(help).toHaveCount(0);
    await expect(page.getByRole("application")).toBeFocused();
    await expect(page.getByRole("region", { name: "Suspects" })).toBeVisible();
  },
);
