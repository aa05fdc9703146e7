import { expect, story } from "./story.ts";

story(
  "a circuit of the library is renamed, doubled, found, deleted and brought back",
  { tag: "@both" },
  async ({ program }) => {
    const { page } = program;
    await page.getByRole("button", { name: "New circuit" }).click();
    await expect(page.getByText("Nothing is drawn on this page yet")).toBeVisible();
    await page.getByRole("button", { name: "back to the library" }).click();
    const entries = page.locator(".entry");
    await expect(entries).toHaveCount(1);

    const more = (title: string) => page.getByRole("button", { name: `More for ${title}` });
    await more("Circuit without a title").click();
    await page.getByRole("button", { name: "Rename" }).click();
    await page.keyboard.press("Control+a");
    await page.keyboard.type("Horn of the blue van");
    await page.keyboard.press("Enter");
    await expect(entries.first()).toContainText("Horn of the blue van");

    await more("Horn of the blue van").click();
    await page.getByRole("button", { name: "Duplicate" }).click();
    await expect(entries).toHaveCount(2);
    await page.getByRole("searchbox").fill("blue");
    await expect(entries).toHaveCount(2);
    await page.getByRole("searchbox").fill("liftgate of nobody");
    await expect(entries).toHaveCount(0);
    await page.getByRole("searchbox").fill("");

    await more("Horn of the blue van").first().click();
    await page.getByRole("button", { name: "Delete" }).click();
    await expect(entries).toHaveCount(1);
    await expect(page.getByText(/is deleted/)).toBeVisible();
    await page.getByRole("button", { name: "Bring it back" }).click();
    await expect(entries).toHaveCount(2);
    await program.restart();
    await expect(program.page.locator(".entry")).toHaveCount(2);
  },
);
