import type { Page } from "@playwright/test";
import { openSample, positionOf, throwTo } from "./acts.ts";
import { exerciseFile } from "./exerciseFile.ts";
import { expect, story } from "./story.ts";

/** Height of something, and how far it reaches down, in pixels of the window. */
async function boxOf(page: Page, what: string): Promise<{ readonly height: number; readonly bottom: number }> {
  const box = await page.locator(what).boundingBox();
  if (!box) throw new Error(`${what} is not shown`);
  return { height: box.height, bottom: box.y + box.height };
}

/** True where no two things of the bar lie on each other. */
function barIsClear(page: Page): Promise<boolean> {
  return page.evaluate(() => {
    const things = [...document.querySelectorAll<HTMLElement>(".bar button:not(.popover-card *)")];
    const boxes = things.map((thing) => thing.getBoundingClientRect()).filter(({ width }) => width > 0);
    return boxes.every((one, index) =>
      boxes
        .slice(index + 1)
        .every(
          (other) =>
            one.right <= other.left + 1 ||
            other.right <= one.left + 1 ||
            one.bottom <= other.top + 1 ||
            other.bottom <= one.top + 1,
        ),
    );
  });
}

story("at twice the size every page can be reached, however long the title of the one shown", async ({ program }) => {
  const { page } = program;
  await openSample(page, "Exterior lights");
  await page.setViewportSize({ width: 640, height: 400 });
  const other = page.getByRole("navigation", { name: "Pages" }).getByRole("button", { name: /Rear and brake lamps/ });
  await page.getByRole("button", { name: "More pages" }).click();
  await other.click();
  await expect(page.getByRole("application", { name: /Rear and brake lamps/ })).toBeVisible();
  expect(await barIsClear(page)).toBe(true);

  // A page that is the only one gives way as well, and what is found is in the window.
  await page.keyboard.press("Control+w");
  await openSample(page, "Horn");
  expect(await barIsClear(page)).toBe(true);
  await page.keyboard.press("Control+f");
  await page.keyboard.type("E1");
  await expect(page.locator(".find-card")).toBeInViewport({ ratio: 1 });
});

story("at twice the size a learner reaches all that stands below the drawing, the verdict too", async ({ program }) => {
  const { page, folder } = program;
  const file = await exerciseFile(folder, "4-horn", "low-horn", "W15:open");
  await program.chooses(file, () => page.keyboard.press("Control+o"));
  await page.locator(".learner-head").waitFor();
  await page.setViewportSize({ width: 640, height: 400 });
  const views = page.getByRole("navigation", { name: "Views" });
  for (const view of ["Done so far", "On the vehicle", "Verdict"])
    await views.getByRole("button", { name: view }).click();
  const wrong = page.getByRole("combobox", { name: /^What is wrong|^What is faulty/ });
  await wrong.click();
  await expect(wrong).toBeInViewport({ ratio: 1 });
  await expect(page.getByRole("button", { name: "Save your hand-in" })).toBeAttached();
  await page.getByRole("textbox", { name: "Your name" }).click();
  await expect(page.getByRole("textbox", { name: "Your name" })).toBeInViewport({ ratio: 1 });
});

story(
  "in a small window and at twice the size the drawing keeps its share and every control can be thrown",
  async ({ program }) => {
    const { page } = program;
    await openSample(page, "Roof vents");
    const size = async (width: number, height: number): Promise<void> => {
      await page.setViewportSize({ width, height });
      await expect.poll(() => page.evaluate(() => innerWidth)).toBe(width);
    };

    await size(853, 533);
    expect((await boxOf(page, ".bench")).height).toBeGreaterThanOrEqual(319);
    expect((await boxOf(page, ".strip")).bottom).toBeLessThanOrEqual(533 - 32 + 1);
    await page.getByRole("button", { name: /^Rear vent closes from its own/ }).scrollIntoViewIfNeeded();

    await size(640, 400);
    await page.locator(".app").evaluate((app) => app.scrollTo(0, 0));
    expect((await boxOf(page, ".bench")).height).toBeGreaterThanOrEqual(240);
    expect(await barIsClear(page)).toBe(true);
    await throwTo(page, "S6", "open");

    await size(420, 800);
    expect((await boxOf(page, ".status")).height).toBeLessThan(40);
    await page.getByRole("button", { name: /^Key:/ }).click();
    await expect(page.getByRole("list", { name: "Wires on this page by state" })).toContainText("grounded");
    await page.keyboard.press("Escape");
    expect(await barIsClear(page)).toBe(true);

    await size(1280, 800);
    await page.getByRole("button", { name: "Settings" }).click();
    await page.getByRole("button", { name: /200/ }).click();
    await page.keyboard.press("Escape");
    expect((await boxOf(page, ".bench")).height).toBeGreaterThanOrEqual(479);
    expect(await barIsClear(page)).toBe(true);
    await throwTo(page, "S1", "on");
    await throwTo(page, "S6", "close");
  },
);

story(
  "a throw moves no control on the strip, and one thrown under More comes out when More closes",
  async ({ program }) => {
    const { page } = program;
    await openSample(page, "Roof vents");
    await page.setViewportSize({ width: 1280, height: 800 });
    const key = positionOf(page, "S1", "on");
    const places = () =>
      page.locator(".strip-row > .control").evaluateAll((all) => all.map((each) => each.getBoundingClientRect().left));
    await expect(key).toBeVisible();
    const before = await places();
    await throwTo(page, "S1", "on");
    expect(await places()).toEqual(before);
    await throwTo(page, "S1", "off");
    expect(await places()).toEqual(before);

    await page.getByRole("button", { name: /^More controls/ }).click();
    const here = page.getByRole("region", { name: "This page" });
    await here.locator(".control", { hasText: "S6" }).locator('[data-position="open"]').click();
    await expect(here.locator(".control", { hasText: "S6" })).toBeVisible();
    await expect(page.getByRole("region", { name: "Page 4, Rain closer" })).toContainText("Rain sensor");
    await page.keyboard.press("Escape");
    await expect(page.locator(".strip-row > .control", { hasText: "S6" })).toBeVisible();
  },
);
