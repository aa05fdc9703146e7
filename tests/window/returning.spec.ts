import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { openSample } from "./acts.ts";
import { exerciseFile } from "./exerciseFile.ts";
import { ROOT } from "./machine.ts";
import { expect, story } from "./story.ts";

story(
  "the keys stay where the work is: on the drawing, on what was opened, on the next after one deleted",
  async ({ program }) => {
    const { page } = program;
    const drawing = page.getByRole("application");
    const opens = (title: string) => page.locator(".entry-open", { hasText: title });

    await page.getByRole("button", { name: "New circuit" }).focus();
    await page.keyboard.press("Enter");
    await expect(drawing).toBeFocused();
    await page.keyboard.press("Control+w");
    await expect(opens("Circuit without a title")).toBeFocused();

    // A sample that is left has them again, though circuits stand before it.
    const tile = page.locator(".tile", { hasText: "Horn" });
    await tile.focus();
    await page.keyboard.press("Enter");
    await expect(drawing).toBeFocused();
    await page.keyboard.press("Control+w");
    await expect(tile).toBeFocused();

    // Three circuits; the one that is neither first nor last is renamed and deleted.
    for (const title of ["Circuit without a title", "Circuit without a title (copy)"]) {
      await page.getByRole("button", { name: `More for ${title}`, exact: true }).click();
      await page.getByRole("button", { name: "Duplicate" }).click();
      await page.keyboard.press("Escape");
    }
    const entries = page.locator(".entry-open");
    await expect(entries).toHaveCount(3);
    const middle = page.locator(".entry").nth(1);
    await middle.getByRole("button", { name: /^More for/ }).click();
    await page.getByRole("button", { name: "Rename" }).click();
    await page.keyboard.press("Control+a");
    await page.keyboard.type("Middle");
    await page.keyboard.press("Enter");
    await expect(opens("Middle")).toBeFocused();
    const at = await entries.allTextContents().then((all) => all.findIndex((each) => each.includes("Middle")));
    const after =
      (await entries
        .nth(at === 2 ? 1 : at + 1)
        .locator("b")
        .textContent()) ?? "";
    await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
    await page.getByRole("button", { name: "Delete", exact: true }).focus();
    await page.keyboard.press("Enter");
    await expect(entries).toHaveCount(2);
    await expect(page.locator(":focus b")).toHaveText(after);

    // Long after its note has gone it can still be brought back.
    await page.getByRole("button", { name: "Put away" }).click();
    await page.locator("summary", { hasText: "Deleted" }).click();
    await expect(page.locator(".deleted-row")).toContainText(/Middle.*Deleted just now, kept until/);
    await page.getByRole("button", { name: "Bring Middle back" }).click();
    await expect(entries).toHaveCount(3);
    await expect(page.locator(".deleted")).toHaveCount(0);
  },
);

story(
  "what was noted on a sample outlasts its note: it stands under Deleted until it is brought back",
  async ({ program }) => {
    await openSample(program.page, "Horn");
    await program.page.getByRole("button", { name: "Low horn sounds" }).click();
    await expect(program.page.locator(".side")).not.toContainText("What does not work?");
    // Killed in the middle, it is as it was.
    await program.page.waitForTimeout(1000);
    await program.kill();
    await expect(program.page).toHaveTitle(/Horn/);
    await program.page.getByRole("button", { name: /back to the library/ }).click();
    await expect(program.page.getByRole("region", { name: "Notes" })).toContainText("the complaint");
    await program.restart();
    await program.page.locator("summary", { hasText: "Deleted" }).click();
    await program.page.getByRole("button", { name: /^Bring .*Horn.* back$/ }).click();
    await program.page.locator(".entry-open", { hasText: "Horn" }).click();
    await expect(program.page.locator(".side")).toContainText("Low horn sounds");
    await expect(program.page.locator(".side")).not.toContainText("What does not work?");
  },
);

story(
  "a title of one long word, one written from the right and one of tags keep to their place",
  async ({ program }) => {
    const horn = JSON.parse(readFileSync(join(ROOT, "samples/4-horn.circuit.json"), "utf8"));
    const titles = ["W".repeat(160), "צופר של הרכב \u202Egpj.exe", '<img src=x onerror="document.title=1"> & co'];
    const { page } = program;
    const isWithin = () => page.evaluate(() => document.documentElement.scrollWidth <= innerWidth);
    for (const [at, title] of titles.entries()) {
      const [first, ...others] = horn.pages;
      const file = join(program.folder, `title-${at}.circuit.json`);
      const pages = [{ ...first, title }, ...others];
      writeFileSync(file, JSON.stringify({ ...horn, title, vehicle: title, pages }));
      await program.chooses(file, () => page.keyboard.press("Control+o"));
      await expect(page.locator(".tab-title").first()).toHaveText(title);
      expect(await isWithin()).toBe(true);
      // What the bar has after the tabs can be pressed: nothing lies over it.
      await page.getByRole("button", { name: "Print", exact: true }).click({ trial: true, timeout: 2000 });
      await page.keyboard.press("Control+w");
      await expect(page.locator(".entry-words b", { hasText: title })).toHaveText(title);
      expect(await isWithin()).toBe(true);
    }
    for (const entry of await page.locator(".entry").all())
      expect((await entry.boundingBox())?.height ?? 1000).toBeLessThan(140);
  },
);

story("whoever began with the file of an exercise has the keys in the library on the way back", async ({ program }) => {
  const file = await exerciseFile(program.folder, "4-horn", "low-horn", "W15:open");
  await program.restart(file);
  await program.page.locator(".learner-head").waitFor();
  await program.page.getByRole("button", { name: "back to the library" }).focus();
  await program.page.keyboard.press("Enter");
  await expect(program.page.locator(".entry-open.is-exercise")).toBeFocused();
});
